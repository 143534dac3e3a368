package org.castwright.sheet;

import java.awt.Color;
import org.castwright.pictures.Chart;
import org.castwright.pictures.ChartCanvas;
import org.castwright.pictures.ChartForm;

/** A chart on a panel. */
record Diagram(Chart chart) implements Element {

  /** Height over width. */
  private static final float FORM = 0.7f;

  private static final float AFTER = 6;

  @Override
  public float height(Type type, float width) {
    return FORM * width + AFTER;
  }

  @Override
  public void draw(Pen pen, float x, float y, float width) {
    float h = FORM * width;
    pen.fill(x, y, width, h, 1, Style.PANEL);
    pen.frame(x, y, width, h, 1, Style.RULE, 0.6f);
    ChartForm.draw(chart, new Strokes(pen), x, y + 2, width, h - 2);
  }

  private record Strokes(Pen pen) implements ChartCanvas {

    @Override
    public void stroke(double[] xy, int rgb, double width, boolean dashed) {
      pen.polyline(xy, new Color(rgb), (float) width, dashed);
    }

    @Override
    public void words(String text, double x, double y, double size, Stand stand, int rgb) {
      float wide = pen.type().width(text, (float) size);
      double at =
          switch (stand) {
            case BEGINS -> x;
            case MIDDLE -> x - wide / 2;
            case ENDS -> x - wide;
          };
      pen.text(text, (float) at, (float) y, new Style((float) size, false, new Color(rgb)));
    }
  }
}
