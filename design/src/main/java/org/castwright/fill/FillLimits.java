package org.castwright.fill;

/**
 * Which pockets are too small to matter: shaking and the liquid's skin take them.
 *
 * @param leastDepthMm from a pocket's top down to where it opens
 * @param leastVolumeMm3 held by it
 */
public record FillLimits(double leastDepthMm, double leastVolumeMm3) {

  /** Half a millimeter and 5 mm³; common practice, no source. */
  public static final FillLimits DEFAULT = new FillLimits(0.5, 5);

  public FillLimits {
    if (!(leastDepthMm >= 0) || !(leastVolumeMm3 >= 0)) {
      throw new IllegalArgumentException("limits of pockets are 0 or more");
    }
  }

  boolean counts(Pocket p) {
    return p.depthMm() >= leastDepthMm && p.volumeMm3() >= leastVolumeMm3;
  }
}
