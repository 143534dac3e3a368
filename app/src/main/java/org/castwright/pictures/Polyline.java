package org.castwright.pictures;

/**
 * A line in space, hidden where a solid item hides it.
 *
 * @param xyz points as packed coordinates, mm; the first is repeated at the end of a closed line
 * @param widthPx width on the sheet, pixels, at most {@link #MAX_WIDTH}
 */
@SuppressWarnings("ArrayRecordComponent") // lines are drawn, never compared
public record Polyline(double[] xyz, int rgb, double widthPx) {

  /** The widest line the renderer's strips can draw without looking at their neighbors. */
  public static final double MAX_WIDTH = 6;

  public Polyline {
    if (xyz.length % 3 != 0) {
      throw new IllegalArgumentException("coordinates come in threes");
    }
    if (!(widthPx > 0 && widthPx <= MAX_WIDTH)) {
      throw new IllegalArgumentException(
          "a line is up to " + MAX_WIDTH + " pixels wide: " + widthPx);
    }
  }
}
