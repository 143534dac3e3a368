package org.castwright.pictures;

/** What a chart is drawn on: places to the right and down from the upper left corner. */
public interface ChartCanvas {

  /** How a line of words stands to its place. */
  enum Stand {
    BEGINS,
    MIDDLE,
    ENDS
  }

  /** A stroke through points, {@code x y} packed; dashed strokes are for limits. */
  void stroke(double[] xy, int rgb, double width, boolean dashed);

  /** One line of words with its base line at {@code y}. */
  void words(String text, double x, double y, double size, Stand stand, int rgb);
}
