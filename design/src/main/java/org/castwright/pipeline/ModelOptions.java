package org.castwright.pipeline;

import org.castwright.geom.LengthUnit;
import org.castwright.repair.RepairOptions;

/**
 * How a model file is to be taken.
 *
 * @param units of files that state none
 * @param sizeMm longest side to scale to, or 0 to leave it
 * @param scale factor on top of the units, above zero; not together with a size
 * @param up axis of the file that points up
 * @param repair how far healing may go
 */
public record ModelOptions(
    LengthUnit units, double sizeMm, double scale, Up up, RepairOptions repair) {

  /** Millimeters, as most print files are; no scaling; z up; standard healing. */
  public static final ModelOptions DEFAULT =
      new ModelOptions(LengthUnit.MILLIMETER, 0, 1, Up.Z, RepairOptions.DEFAULT);

  /** Checks the values; messages say what is allowed. */
  public ModelOptions {
    if (!(sizeMm >= 0) || Double.isInfinite(sizeMm)) {
      throw new IllegalArgumentException("the size must be above 0 mm");
    }
    if (!(scale > 0) || Double.isInfinite(scale)) {
      throw new IllegalArgumentException("the scale must be above 0");
    }
    if (sizeMm > 0 && scale != 1) {
      throw new IllegalArgumentException("give a size or a scale, not both");
    }
  }

  public ModelOptions withSizeMm(double mm) {
    return new ModelOptions(units, mm, scale, up, repair);
  }

  public ModelOptions withUnits(LengthUnit u) {
    return new ModelOptions(u, sizeMm, scale, up, repair);
  }

  public ModelOptions withRepair(RepairOptions r) {
    return new ModelOptions(units, sizeMm, scale, up, r);
  }
}
