package org.castwright.sheet;

/** The heading of a section with a thin rule above it. */
record Head(String text) implements Element {

  private static final float ABOVE = 9;
  private static final float BELOW = 5;

  @Override
  public float height(Type type, float width) {
    return ABOVE + 6 + Style.HEAD.leading() + BELOW;
  }

  @Override
  public void draw(Pen pen, float x, float y, float width) {
    pen.line(x, y + ABOVE, x + width, y + ABOVE, Style.INK, 0.9f);
    pen.text(text, x, y + ABOVE + 5 + Style.HEAD.size(), Style.HEAD);
  }
}
