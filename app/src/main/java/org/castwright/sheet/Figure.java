package org.castwright.sheet;

import java.awt.Color;
import java.util.List;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.castwright.pictures.Pointer;

/** A picture on a panel with its pointers and a caption. */
record Figure(PDImageXObject image, List<Pointer> pointers, String caption) implements Element {

  private static final float BALLOON = 7.2f;
  private static final float LINE = 1.5f;
  private static final float HALO = 1.6f;
  private static final float TIP = 7;
  private static final float DOT = 1.9f;
  private static final float NUMBER = 8.6f;

  @Override
  public float height(Type type, float width) {
    return pictureHeight(width) + (caption.isEmpty() ? 4 : words().height(type, width) + 6);
  }

  private float pictureHeight(float width) {
    return width * image.getHeight() / image.getWidth();
  }

  private Words words() {
    return Words.of(caption, Style.SMALL);
  }

  @Override
  public void draw(Pen pen, float x, float y, float width) {
    float h = pictureHeight(width);
    pen.image(image, x, y, width, h);
    pen.frame(x, y, width, h, 1, Style.RULE, 0.6f);
    float scale = width / image.getWidth();
    for (Pointer p : pointers) {
      arrow(
          pen,
          p,
          x + (float) p.x0() * scale,
          y + (float) p.y0() * scale,
          x + (float) p.x1() * scale,
          y + (float) p.y1() * scale);
    }
    if (!caption.isEmpty()) {
      words().draw(pen, x, y + h + 3, width);
    }
  }

  private static void arrow(Pen pen, Pointer p, float x0, float y0, float x1, float y1) {
    Color color = new Color(p.rgb());
    pen.line(x0, y0, x1, y1, Color.WHITE, LINE + 2 * HALO);
    pen.line(x0, y0, x1, y1, Style.INK, p.kind() == Pointer.Kind.NAMES ? LINE / 2 : LINE);
    switch (p.kind()) {
      case NAMES -> {
        pen.circle(x0, y0, DOT, Style.INK, Color.WHITE, 0.6f);
        balloon(pen, p.label(), color, x1, y1);
      }
      case MOVES -> {
        tip(pen, x0, y0, x1, y1);
        balloon(pen, p.label(), color, x0, y0);
      }
      case LEAVES -> {
        tip(pen, x0, y0, x1, y1);
        balloon(pen, p.label(), color, x1, y1 - TIP - BALLOON / 2);
      }
    }
  }

  private static void balloon(Pen pen, String label, Color color, float x, float y) {
    float r = label.length() > 1 ? BALLOON * 1.12f : BALLOON;
    pen.circle(x, y, r + 1.2f, Color.WHITE, Color.WHITE, 0.5f);
    pen.circle(x, y, r, Color.WHITE, color, 2.2f);
    Style style = new Style(label.length() > 1 ? NUMBER * 0.86f : NUMBER, true, Style.INK);
    pen.centered(label, x, y + style.size() * 0.36f, style);
  }

  /** A filled head whose point lies a little past the end of the line. */
  private static void tip(Pen pen, float x0, float y0, float x1, float y1) {
    float l = (float) Math.hypot(x1 - x0, y1 - y0);
    if (l == 0) {
      return;
    }
    float ux = (x1 - x0) / l;
    float uy = (y1 - y0) / l;
    pen.triangle(head(x1, y1, ux, uy, TIP + HALO, HALO), Color.WHITE);
    pen.triangle(head(x1, y1, ux, uy, TIP, 0), Style.INK);
  }

  private static float[] head(float x, float y, float ux, float uy, float size, float back) {
    float px = x + ux * size * 0.6f;
    float py = y + uy * size * 0.6f;
    float bx = x - ux * (size * 0.55f + back);
    float by = y - uy * (size * 0.55f + back);
    float half = size * 0.52f;
    return new float[] {px, py, bx - uy * half, by + ux * half, bx + uy * half, by - ux * half};
  }
}
