package org.castwright.size;

/**
 * One step in which a size changes, in percent of the size before it; above zero it gets smaller.
 *
 * @param name what happens, for people
 * @param percent usual linear shrink
 * @param lowPercent least usual
 * @param highPercent most usual
 */
public record Shrink(String name, double percent, double lowPercent, double highPercent) {

  /** More than this in one step is a slip of the pen, not a shrink. */
  private static final double MOST = 20;

  /**
   * @throws IllegalArgumentException if the values are not in order or beyond 20 %
   */
  public Shrink {
    boolean inOrder = lowPercent <= percent && percent <= highPercent;
    if (!inOrder || !(lowPercent >= -MOST) || !(highPercent <= MOST)) {
      throw new IllegalArgumentException(
          "a shrink lies between its low and high values, all within -20 to 20 %");
    }
  }

  /** Without a band. */
  public Shrink(String name, double percent) {
    this(name, percent, percent, percent);
  }

  /**
   * The linear shrink of a body that shrinks alike in all directions: {@code 1 − (1−v)^(1/3)}.
   *
   * @param volumePercent shrink of the volume
   */
  public static double linearPercent(double volumePercent) {
    return 100 * (1 - Math.cbrt(1 - volumePercent / 100));
  }

  /**
   * The linear shrink between two densities of the same mass.
   *
   * @param before kg/m³, as poured
   * @param after kg/m³, as it ends
   */
  public static double linearPercentOfDensities(double before, double after) {
    return linearPercent(100 * (1 - before / after));
  }

  /**
   * The linear shrink of a warm body that cools, percent.
   *
   * @param expansionPerK linear expansion, 1/K
   * @param byK fall of temperature, K
   */
  public static double coolingPercent(double expansionPerK, double byK) {
    return 100 * expansionPerK * byK;
  }

  /** The factor for a patternmaker's shrink rule, whose allowance is a share of the casting. */
  public static double ruleFactor(double allowancePercent) {
    return 1 + allowancePercent / 100;
  }
}
