package org.castwright.cli;

import org.castwright.geom.LengthUnit;
import org.castwright.pipeline.ModelOptions;
import org.castwright.pipeline.Up;
import org.castwright.repair.HealMode;
import org.castwright.repair.RepairOptions;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** How the model file is taken; shared by the commands that read one. */
final class ModelArguments {

  @Option(
      names = "--units",
      paramLabel = "mm|cm|m|in",
      defaultValue = "mm",
      converter = Units.class,
      description = "Unit of files that state none (default: ${DEFAULT-VALUE}).")
  private LengthUnit units;

  @Option(
      names = "--size",
      paramLabel = "MM",
      defaultValue = "0",
      description = "Scale the longest side to this many millimeters.")
  private double size;

  @Option(
      names = "--scale",
      paramLabel = "FACTOR",
      defaultValue = "1",
      description = "Scale by this factor on top of the units.")
  private double scale;

  @Option(
      names = "--up",
      paramLabel = "AXIS",
      defaultValue = "z",
      description = "Axis of the file that points up: x, y, z, -x, -y or -z.")
  private String up;

  @Option(
      names = "--heal",
      paramLabel = "none|standard|remesh",
      defaultValue = "standard",
      description = "How far healing may go (default: ${DEFAULT-VALUE}).")
  private HealMode heal;

  @Option(
      names = "--remesh-cell",
      paramLabel = "MM",
      defaultValue = "0",
      description = "Cell of the grid for --heal remesh; bounds how far the surface may move.")
  private double remeshCell;

  @Option(names = "--fill-voids", description = "Fill enclosed hollows, which no mold can cast.")
  private boolean fillVoids;

  ModelOptions options() {
    RepairOptions repair =
        RepairOptions.DEFAULT.withMode(heal).withFillVoids(fillVoids).withRemeshCell(remeshCell);
    return new ModelOptions(units, size, scale, Up.of(up), repair);
  }

  /** Reads a unit by its symbol. */
  static final class Units implements ITypeConverter<LengthUnit> {
    @Override
    public LengthUnit convert(String value) {
      for (LengthUnit u :
          new LengthUnit[] {
            LengthUnit.MILLIMETER, LengthUnit.CENTIMETER, LengthUnit.METER, LengthUnit.INCH
          }) {
        if (u.symbol().equals(value)) {
          return u;
        }
      }
      throw new TypeConversionException("units are mm, cm, m or in, not '" + value + "'");
    }
  }
}
