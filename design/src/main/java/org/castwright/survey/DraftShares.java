package org.castwright.survey;

/**
 * The share of the surface, 0 to 1, whose draft is less than an angle. Draft is the angle between a
 * facet and the pull direction: 0° on a wall along the pull, 90° on a floor across it.
 *
 * @param underHalf share under 0.5°
 * @param underOne share under 1°
 * @param underTwo share under 2°
 * @param underThree share under 3°
 * @param underFive share under 5°
 */
public record DraftShares(
    double underHalf, double underOne, double underTwo, double underThree, double underFive) {

  private static final double[] SINES = {sine(0.5), sine(1), sine(2), sine(3), sine(5)};

  private static double sine(double degrees) {
    return StrictMath.sin(Math.toRadians(degrees));
  }

  static DraftShares of(FacetTable facets, double x, double y, double z) {
    double[] sums = new double[SINES.length];
    for (int f = 0; f < facets.count(); f++) {
      double s = Math.abs(facets.normalDot(f, x, y, z));
      for (int k = SINES.length - 1; k >= 0 && s < SINES[k]; k--) {
        sums[k] += facets.area(f);
      }
    }
    double all = facets.totalArea();
    return new DraftShares(
        sums[0] / all, sums[1] / all, sums[2] / all, sums[3] / all, sums[4] / all);
  }
}
