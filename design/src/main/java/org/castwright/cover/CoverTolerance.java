package org.castwright.cover;

/**
 * What may stay caught in a mold that is said to open. Where moving sideways by no more than {@code
 * widthMm} sets a point free, it lies in a crease and counts as free: a ledge so narrow is a catch
 * in name only. Of the rest both the area and the volume must stay within the limits.
 *
 * @param areaMm2 surface that may stay caught, mm²
 * @param volumeMm3 space of the mold that may stay caught, mm³
 * @param widthMm width of a crease, mm; pictures are made fine enough to tell it, down to a
 *     thousandth of the model
 */
public record CoverTolerance(double areaMm2, double volumeMm3, double widthMm) {

  /** Stand-in until measured. */
  public static final CoverTolerance DEFAULT = new CoverTolerance(10, 5, 0.25);

  /** Checks the ranges. */
  public CoverTolerance {
    if (!(areaMm2 >= 0) || !(volumeMm3 >= 0) || !(widthMm > 0)) {
      throw new IllegalArgumentException(
          "a tolerance needs areas and volumes of 0 or more, width above 0");
    }
  }
}
