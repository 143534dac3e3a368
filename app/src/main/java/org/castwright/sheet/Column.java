package org.castwright.sheet;

import java.util.List;

/** Elements below each other. */
record Column(List<? extends Element> parts) implements Element {

  static Column of(Element... parts) {
    return new Column(List.of(parts));
  }

  @Override
  public float height(Type type, float width) {
    float sum = 0;
    for (Element e : parts) {
      sum += e.height(type, width);
    }
    return sum;
  }

  @Override
  public void draw(Pen pen, float x, float y, float width) {
    float at = y;
    for (Element e : parts) {
      e.draw(pen, x, at, width);
      at += e.height(pen.type(), width);
    }
  }
}
