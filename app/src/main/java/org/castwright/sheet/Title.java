package org.castwright.sheet;

import java.awt.Color;

/** The head of the first page: what this is, and whether it may be used. */
record Title(String name, String under, boolean proved, String verdict) implements Element {

  private static final Color GOOD = new Color(0, 158, 115);
  private static final Color BAD = new Color(213, 94, 0);
  private static final float HEIGHT = 54;
  private static final float VERDICT = 138;
  private static final float LARGEST = 19;

  @Override
  public float height(Type type, float width) {
    return HEIGHT;
  }

  @Override
  public void draw(Pen pen, float x, float y, float width) {
    pen.text("JOB SHEET", x, y + 5.5f, new Style(7.6f, true, Style.FAINT));
    float room = width - VERDICT - 16;
    float size = Math.min(LARGEST, LARGEST * room / pen.type().width(name, LARGEST));
    pen.text(name, x, y + 27, new Style(size, true, Style.INK));
    pen.text(under, x, y + 41, new Style(9.4f, false, Style.FAINT));
    float left = x + width - VERDICT;
    pen.fill(left, y, VERDICT, 40, 4, proved ? GOOD : BAD);
    Style big = new Style(proved ? 15 : 13, true, Color.WHITE);
    pen.centered(proved ? "PROVED" : "NOT PROVED", left + VERDICT / 2, y + 19, big);
    pen.centered(verdict, left + VERDICT / 2, y + 32, new Style(8, true, Color.WHITE));
  }
}
