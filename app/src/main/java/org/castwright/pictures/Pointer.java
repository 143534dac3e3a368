package org.castwright.pictures;

/**
 * A line from one place of a picture to another, with words at its end.
 *
 * @param x0 where it begins, pixels from the left
 * @param y0 pixels from the top
 * @param x1 where it ends
 * @param y1 pixels from the top
 * @param label a word or number
 * @param rgb its color
 * @param kind how it is drawn
 */
public record Pointer(
    double x0, double y0, double x1, double y1, String label, int rgb, Kind kind) {

  /** What a pointer says. */
  public enum Kind {
    /** This is the thing named at the end. */
    NAMES,
    /** What is named at the beginning moves this way. */
    MOVES,
    /** Something leaves here, named at the end. */
    LEAVES
  }
}
