package org.castwright.sheet;

/** A line with a box to be ticked by hand. */
record Tick(String text) implements Element {

  private static final float BOX = 7.5f;
  private static final float HANG = 14;

  private Words words() {
    return new Words(text, Style.BODY, "", HANG, 3.4f);
  }

  @Override
  public float height(Type type, float width) {
    return words().height(type, width);
  }

  @Override
  public void draw(Pen pen, float x, float y, float width) {
    pen.frame(x + 0.5f, y + 1.4f, BOX, BOX, 1.2f, Style.FAINT, 0.7f);
    words().draw(pen, x, y, width);
  }
}
