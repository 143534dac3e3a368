package org.castwright.pictures;

import java.util.List;

/**
 * Curves over two axes.
 *
 * @param title over the chart
 * @param across the level axis
 * @param upright the upright one
 * @param curves drawn in order
 * @param levels level lines across the whole chart, each with its words
 */
public record Chart(
    String title, Axis across, Axis upright, List<Curve> curves, List<Level> levels) {

  public Chart {
    curves = List.copyOf(curves);
    levels = List.copyOf(levels);
  }

  /** An axis from its least to its greatest value, with its name and unit. */
  public record Axis(String title, double low, double high) {

    public Axis {
      if (!(low < high) || Double.isInfinite(high - low)) {
        throw new IllegalArgumentException("an axis needs low below high: " + low + ", " + high);
      }
    }

    /** The place of a value, 0 at the beginning and 1 at the end. */
    double share(double value) {
      return (value - low) / (high - low);
    }
  }

  /**
   * A line through points.
   *
   * @param name in the legend; empty for none
   * @param points across and upright values, in order along the line
   */
  public record Curve(String name, int rgb, List<Point> points) {

    public Curve {
      points = List.copyOf(points);
    }
  }

  /** A point of a curve. */
  public record Point(double across, double upright) {}

  /** A dashed line at an upright value. */
  public record Level(double at, String words, int rgb) {}
}
