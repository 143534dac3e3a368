package org.castwright.sheet;

import java.util.List;

/**
 * Elements beside each other.
 *
 * @param shares of the width, one for each part, 1 in sum
 */
record Row(List<Element> parts, List<Float> shares) implements Element {

  private static final float GAP = 16;

  static Row halves(Element left, Element right) {
    return new Row(List.of(left, right), List.of(0.5f, 0.5f));
  }

  private float width(int i, float all) {
    return shares.get(i) * (all - GAP * (parts.size() - 1));
  }

  @Override
  public float height(Type type, float width) {
    float most = 0;
    for (int i = 0; i < parts.size(); i++) {
      most = Math.max(most, parts.get(i).height(type, width(i, width)));
    }
    return most;
  }

  @Override
  public void draw(Pen pen, float x, float y, float width) {
    float at = x;
    for (int i = 0; i < parts.size(); i++) {
      parts.get(i).draw(pen, at, y, width(i, width));
      at += width(i, width) + GAP;
    }
  }
}
