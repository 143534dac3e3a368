package org.castwright.fill;

/**
 * The share of one facet in the volume above a level: the integral of its height over the level,
 * where it lies above, over its shadow on the level, counted positive for facets that look up. Over
 * a closed surface these add up to the volume above the level (divergence theorem).
 */
final class FacetColumn {

  private final double low;
  private final double mid;
  private final double high;
  private final double shadow;

  /**
   * @param shadow signed area of the facet seen from above, mm²
   */
  FacetColumn(double a, double b, double c, double shadow) {
    low = Math.min(a, Math.min(b, c));
    high = Math.max(a, Math.max(b, c));
    mid = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    this.shadow = shadow;
  }

  double low() {
    return low;
  }

  double high() {
    return high;
  }

  /** Integral for levels below the whole facet at level 0; it falls by the shadow for each mm. */
  double atZero() {
    return shadow * (low + mid + high) / 3;
  }

  double shadow() {
    return shadow;
  }

  /** mm³ above a level. */
  double above(double level) {
    if (level >= high) {
      return 0;
    }
    if (level <= low) {
      return atZero() - shadow * level;
    }
    if (level >= mid) {
      double d = high - level;
      return shadow * d * d * d / (3 * (high - low) * (high - mid));
    }
    double d = level - low;
    return atZero() - shadow * level + shadow * d * d * d / (3 * (mid - low) * (high - low));
  }
}
