package org.castwright.cli;

import org.castwright.geom.Vec3;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads three numbers: {@code 1,2,3}, or {@code 220x220x250} for sizes. */
final class Vector implements ITypeConverter<Vec3> {

  @Override
  public Vec3 convert(String value) {
    String[] parts = value.split("[,x]", -1);
    if (parts.length == 3) {
      try {
        Vec3 v =
            new Vec3(
                Double.parseDouble(parts[0].trim()),
                Double.parseDouble(parts[1].trim()),
                Double.parseDouble(parts[2].trim()));
        if (Double.isFinite(v.x() + v.y() + v.z())) {
          return v;
        }
      } catch (NumberFormatException e) {
        throw new TypeConversionException("'" + value + "' is not three numbers, as in 0,0,1");
      }
    }
    throw new TypeConversionException("'" + value + "' is not three numbers, as in 0,0,1");
  }
}
