package org.castwright.sheet;

/** Free space, points. */
record Gap(float size) implements Element {

  @Override
  public float height(Type type, float width) {
    return size;
  }

  @Override
  public void draw(Pen pen, float x, float y, float width) {
    // nothing is drawn
  }
}
