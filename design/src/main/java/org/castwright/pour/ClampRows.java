package org.castwright.pour;

/**
 * How an opening force divides between two rows of clamps, one at the base and one at a height
 * above: balance of forces and of moments about either row.
 *
 * @param baseN the lower row carries
 * @param topN the upper row carries; below zero when the force acts below the lower row
 */
public record ClampRows(double baseN, double topN) {

  /**
   * Divides a force.
   *
   * @param forceN what opens
   * @param centerMm height of the center of pressure above the lower row
   * @param apartMm height of the upper row above the lower, above zero
   */
  public static ClampRows of(double forceN, double centerMm, double apartMm) {
    if (!(apartMm > 0)) {
      throw new IllegalArgumentException("two rows of clamps must stand apart");
    }
    double top = forceN * centerMm / apartMm;
    return new ClampRows(forceN - top, top);
  }

  /** How many clamps of a given force hold the opening force with a safety factor. */
  public static int needed(double forceN, double safety, double clampN) {
    if (!(clampN > 0) || !(safety >= 1)) {
      throw new IllegalArgumentException("a clamp needs a force, and a safety factor is 1 or more");
    }
    return (int) Math.ceil(Math.max(0, forceN) * safety / clampN);
  }
}
