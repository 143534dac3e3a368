package org.castwright.sheet;

/** Something set on a page: it tells how high it is at a width, and draws itself. Points. */
interface Element {

  float height(Type type, float width);

  void draw(Pen pen, float x, float y, float width);
}
