package org.castwright.pictures;

import java.util.List;
import org.castwright.pictures.ChartCanvas.Stand;

/** Lays a chart out: axes with round numbers, curves, level lines, a legend. */
public final class ChartForm {

  private static final int INK = Band.INK;
  private static final int RULE = Rgb.of(214, 216, 218);
  private static final double LEFT = 34;
  private static final double RIGHT = 8;
  private static final double TOP = 16;
  private static final double BOTTOM = 28;

  /** Height of a line of the legend, which stands between title and curves. */
  private static final double LEGEND = 9;

  private static final double TITLE = 8.4;
  private static final double SMALL = 7;

  /** Length of the words over a level line, about. */
  private static final double WORDS = 70;

  private final Chart chart;
  private final ChartCanvas canvas;
  private final double left;
  private final double top;
  private final double head;
  private final double right;
  private final double bottom;

  private ChartForm(Chart chart, ChartCanvas canvas, double x, double y, double w, double h) {
    this.chart = chart;
    this.canvas = canvas;
    left = x + LEFT;
    top = y + TOP + LEGEND * chart.curves().stream().filter(c -> !c.name().isEmpty()).count();
    head = y + TOP - 6;
    right = x + w - RIGHT;
    bottom = y + h - BOTTOM;
  }

  /** Draws a chart into a rectangle. */
  public static void draw(
      Chart chart, ChartCanvas canvas, double x, double y, double width, double height) {
    new ChartForm(chart, canvas, x, y, width, height).draw();
  }

  private void draw() {
    canvas.words(chart.title(), left, head, TITLE, Stand.BEGINS, INK);
    acrossTicks();
    uprightTicks();
    line(left, bottom, right, bottom, INK, 0.8, false);
    line(left, top, left, bottom, INK, 0.8, false);
    chart.levels().forEach(this::level);
    chart.curves().forEach(this::curve);
    legend();
  }

  private void acrossTicks() {
    Chart.Axis a = chart.across();
    double step = Ticks.step(a.low(), a.high());
    for (double v : Ticks.of(a.low(), a.high())) {
      double x = x(v);
      line(x, top, x, bottom, RULE, 0.4, false);
      canvas.words(Ticks.label(v, step), x, bottom + 9, SMALL, Stand.MIDDLE, INK);
    }
    canvas.words(a.title(), (left + right) / 2, bottom + 20, SMALL, Stand.MIDDLE, INK);
  }

  private void uprightTicks() {
    Chart.Axis a = chart.upright();
    double step = Ticks.step(a.low(), a.high());
    for (double v : Ticks.of(a.low(), a.high())) {
      double y = y(v);
      line(left, y, right, y, RULE, 0.4, false);
      canvas.words(Ticks.label(v, step), left - 4, y + 2.5, SMALL, Stand.ENDS, INK);
    }
    canvas.words(a.title(), right, head, SMALL, Stand.ENDS, INK);
  }

  private void level(Chart.Level l) {
    double y = y(l.at());
    line(left, y, right, y, l.rgb(), 0.9, true);
    // words stand above their line, on the side where the curves keep away from them
    boolean begins = nearest(left, left + WORDS, y) > nearest(right - WORDS, right, y);
    canvas.words(
        l.words(),
        begins ? left + 3 : right - 3,
        y - 2.5,
        SMALL,
        begins ? Stand.BEGINS : Stand.ENDS,
        l.rgb());
  }

  /** How near curves come to the words over a level line between two places. */
  private double nearest(double from, double to, double y) {
    double middle = y - SMALL / 2;
    double least = Double.POSITIVE_INFINITY;
    for (Chart.Curve c : chart.curves()) {
      for (Chart.Point p : c.points()) {
        double x = x(p.across());
        if (x >= from && x <= to) {
          least = Math.min(least, Math.abs(y(p.upright()) - middle));
        }
      }
    }
    return least;
  }

  private void curve(Chart.Curve c) {
    double[] xy = new double[2 * c.points().size()];
    for (int i = 0; i < c.points().size(); i++) {
      xy[2 * i] = x(c.points().get(i).across());
      xy[2 * i + 1] = y(c.points().get(i).upright());
    }
    canvas.stroke(xy, c.rgb(), 1.6, false);
  }

  private void legend() {
    List<Chart.Curve> named = chart.curves().stream().filter(c -> !c.name().isEmpty()).toList();
    double y = head + LEGEND + 1;
    for (Chart.Curve c : named) {
      line(left, y - 2.5, left + 14, y - 2.5, c.rgb(), 1.6, false);
      canvas.words(c.name(), left + 18, y, SMALL, Stand.BEGINS, INK);
      y += LEGEND;
    }
  }

  private void line(
      double x0, double y0, double x1, double y1, int rgb, double width, boolean dashed) {
    canvas.stroke(new double[] {x0, y0, x1, y1}, rgb, width, dashed);
  }

  private double x(double value) {
    return left + chart.across().share(value) * (right - left);
  }

  private double y(double value) {
    return bottom - chart.upright().share(value) * (bottom - top);
  }
}
