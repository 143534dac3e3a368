package org.castwright.sheet;

import java.util.List;

/** A strip of figures, each under its name. */
record Facts(List<Fact> facts) implements Element {

  /**
   * One figure.
   *
   * @param share of the width, 1 in sum
   */
  record Fact(String name, String value, float share) {}

  private static final float HEIGHT = 34;
  private static final float AFTER = 8;
  private static final float INSET = 8;
  private static final float LARGEST = 11;

  @Override
  public float height(Type type, float width) {
    return HEIGHT + AFTER;
  }

  @Override
  public void draw(Pen pen, float x, float y, float width) {
    pen.fill(x, y, width, HEIGHT, 3, Style.SHADE);
    float at = x;
    for (int i = 0; i < facts.size(); i++) {
      Fact f = facts.get(i);
      float cell = f.share() * width;
      if (i > 0) {
        pen.line(at, y + 6, at, y + HEIGHT - 6, Style.RULE, 0.6f);
      }
      pen.text(f.name(), at + INSET, y + 13, Style.SMALL);
      float wide = pen.type().width(f.value(), LARGEST);
      float size = Math.min(LARGEST, LARGEST * (cell - 1.5f * INSET) / wide);
      pen.text(f.value(), at + INSET, y + 26.5f, new Style(size, true, Style.INK));
      at += cell;
    }
  }
}
