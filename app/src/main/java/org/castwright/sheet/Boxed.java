package org.castwright.sheet;

import java.awt.Color;

/** An element on a tinted panel with a colored bar at its left. */
record Boxed(Element inside, Color bar, Color panel) implements Element {

  private static final float PAD = 7;
  private static final float BAR = 3.5f;
  private static final float AFTER = 6;

  @Override
  public float height(Type type, float width) {
    return inside.height(type, width - 2 * PAD - BAR) + 2 * PAD + AFTER;
  }

  @Override
  public void draw(Pen pen, float x, float y, float width) {
    float h = height(pen.type(), width) - AFTER;
    pen.fill(x, y, width, h, 2, panel);
    pen.fill(x, y, BAR, h, 0, bar);
    inside.draw(pen, x + BAR + PAD, y + PAD, width - 2 * PAD - BAR);
  }
}
