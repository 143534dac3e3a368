package org.castwright.cover;

/**
 * What may stay caught in a mold that is said to open. Where moving sideways by no more than {@code
 * widthMm} sets a point free, it lies in a crease and counts as free: a ledge so narrow is a catch
 * in name only. Of the rest both the area and the volume must stay within the limits.
 *
 * @param areaMm2 surface that may stay caught, mm²
 * @param areaShare the same as a share of the casting's surface, 0 to 1; the smaller of the two
 *     counts
 * @param volumeMm3 space of the mold that may stay caught, mm³
 * @param widthMm width of a crease, mm; pictures are made fine enough to tell it, down to a
 *     thousandth of the model
 */
public record CoverTolerance(double areaMm2, double areaShare, double volumeMm3, double widthMm) {

  /**
   * 25 mm² or a thousandth of the surface, 5 mm³, creases of 0.15 mm. Measured on scans and
   * machined parts of 100 mm: one pull fewer than these values ask for leaves 66 to 1300 mm² caught
   * on ledges of 0.6 mm and wider, that is pockets; one more pull only thins out creases. A crease
   * is three times the play of 0.05 mm of a printed and coated mold (common practice, no source):
   * less is what a layer line or a facet of a scan makes.
   */
  public static final CoverTolerance DEFAULT = new CoverTolerance(25, 0.001, 5, 0.15);

  /** Checks the ranges. */
  public CoverTolerance {
    if (!(areaMm2 >= 0) || !(areaShare >= 0) || !(volumeMm3 >= 0) || !(widthMm > 0)) {
      throw new IllegalArgumentException(
          "a tolerance needs an area, a share and a volume of 0 or more and a width above 0");
    }
  }

  /** What counts for a casting with so much surface, mm²: its area holds the share too. */
  CoverTolerance on(double surface) {
    return new CoverTolerance(
        Math.min(areaMm2, areaShare * surface), areaShare, volumeMm3, widthMm);
  }
}
