package org.castwright.sheet;

import java.awt.Color;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;

/** Draws on one page. Places are points to the right and down from the upper left corner. */
final class Pen {

  /** Control points of a quarter circle lie at this share of the radius: 4/3 (√2 − 1). */
  private static final float ROUND = 0.5523f;

  private static final float[] DASHES = {4, 3};
  private static final float[] NO_DASHES = {};

  private final PDPageContentStream out;
  private final Type type;
  private final float height;

  Pen(PDPageContentStream out, Type type, float height) {
    this.out = out;
    this.type = type;
    this.height = height;
  }

  Type type() {
    return type;
  }

  /** Writes one line with its base line at {@code y}. */
  void text(String words, float x, float y, Style style) {
    run(
        () -> {
          out.beginText();
          out.setFont(type.face(), style.size());
          out.setNonStrokingColor(style.color());
          if (style.bold()) {
            out.setStrokingColor(style.color());
            out.setLineWidth(style.size() * Type.BOLD);
            out.setRenderingMode(RenderingMode.FILL_STROKE);
          } else {
            out.setRenderingMode(RenderingMode.FILL);
          }
          out.newLineAtOffset(x, height - y);
          out.showText(type.known(words));
          out.endText();
        });
  }

  /** As {@link #text} with the middle of the line at {@code x}. */
  void centered(String words, float x, float y, Style style) {
    text(words, x - type.width(words, style.size()) / 2, y, style);
  }

  void fill(float x, float y, float w, float h, float radius, Color color) {
    run(
        () -> {
          out.setNonStrokingColor(color);
          path(x, y, w, h, radius);
          out.fill();
        });
  }

  void frame(float x, float y, float w, float h, float radius, Color color, float line) {
    run(
        () -> {
          out.setStrokingColor(color);
          out.setLineWidth(line);
          path(x, y, w, h, radius);
          out.stroke();
        });
  }

  private void path(float x, float y, float w, float h, float radius) throws IOException {
    float r = Math.min(radius, Math.min(w, h) / 2);
    float k = r * (1 - ROUND);
    float top = height - y;
    float bottom = top - h;
    float right = x + w;
    out.moveTo(x + r, top);
    out.lineTo(right - r, top);
    out.curveTo(right - k, top, right, top - k, right, top - r);
    out.lineTo(right, bottom + r);
    out.curveTo(right, bottom + k, right - k, bottom, right - r, bottom);
    out.lineTo(x + r, bottom);
    out.curveTo(x + k, bottom, x, bottom + k, x, bottom + r);
    out.lineTo(x, top - r);
    out.curveTo(x, top - k, x + k, top, x + r, top);
    out.closePath();
  }

  void circle(float x, float y, float radius, Color inside, Color rim, float line) {
    fill(x - radius, y - radius, 2 * radius, 2 * radius, radius, inside);
    frame(x - radius, y - radius, 2 * radius, 2 * radius, radius, rim, line);
  }

  void line(float x0, float y0, float x1, float y1, Color color, float width) {
    run(
        () -> {
          out.setStrokingColor(color);
          out.setLineWidth(width);
          out.setLineCapStyle(1);
          out.moveTo(x0, height - y0);
          out.lineTo(x1, height - y1);
          out.stroke();
        });
  }

  /** A line through points, {@code x y} packed. */
  void polyline(double[] xy, Color color, float width, boolean dashed) {
    run(
        () -> {
          out.setStrokingColor(color);
          out.setLineWidth(width);
          out.setLineDashPattern(dashed ? DASHES : NO_DASHES, 0);
          out.moveTo((float) xy[0], height - (float) xy[1]);
          for (int i = 2; i + 1 < xy.length; i += 2) {
            out.lineTo((float) xy[i], height - (float) xy[i + 1]);
          }
          out.stroke();
          out.setLineDashPattern(NO_DASHES, 0);
        });
  }

  /** A filled triangle. */
  void triangle(float[] xy, Color color) {
    run(
        () -> {
          out.setNonStrokingColor(color);
          out.moveTo(xy[0], height - xy[1]);
          out.lineTo(xy[2], height - xy[3]);
          out.lineTo(xy[4], height - xy[5]);
          out.closePath();
          out.fill();
        });
  }

  void image(PDImageXObject image, float x, float y, float w, float h) {
    run(() -> out.drawImage(image, x, height - y - h, w, h));
  }

  private static void run(Stroke stroke) {
    try {
      stroke.make();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private interface Stroke {
    void make() throws IOException;
  }
}
