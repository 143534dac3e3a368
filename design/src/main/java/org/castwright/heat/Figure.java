package org.castwright.heat;

/**
 * A figure with the range in which sources or products of its class differ.
 *
 * @param low least value
 * @param high greatest value
 * @param source where it comes from, or "from memory: ...", or "common practice, no source"
 */
public record Figure(double low, double high, String source) {

  public Figure {
    if (!(low <= high) || source == null || source.isBlank()) {
      throw new IllegalArgumentException(
          "a figure needs a range and a source, not " + low + " to " + high + " by " + source);
    }
  }

  /** A single value. */
  public static Figure of(double value, String source) {
    return new Figure(value, value, source);
  }

  /** The middle of the range. */
  public double middle() {
    return at(0.5);
  }

  /** A value of the range: 0 the least, 1 the greatest. */
  public double at(double share) {
    return low + (high - low) * share;
  }
}
