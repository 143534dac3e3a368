package org.castwright.sheet;

import java.util.List;

/**
 * A paragraph.
 *
 * @param mark what hangs before its first line, such as a bullet or a number; may be empty
 * @param hang how far the lines stand in, points
 * @param after free space below, points
 */
record Words(String text, Style style, String mark, float hang, float after) implements Element {

  private static final float HANG = 11;
  private static final float AFTER = 2.4f;

  static Words of(String text, Style style) {
    return new Words(text, style, "", 0, AFTER);
  }

  static Words item(String text) {
    return new Words(text, Style.BODY, "•", HANG, AFTER);
  }

  static Words step(int number, String text) {
    return new Words(text, Style.BODY, number + ".", HANG + 3, AFTER + 1);
  }

  @Override
  public float height(Type type, float width) {
    return lines(type, width).size() * style.leading() + after;
  }

  @Override
  public void draw(Pen pen, float x, float y, float width) {
    float at = y + style.size();
    if (!mark.isEmpty()) {
      pen.text(mark, x, at, style);
    }
    for (String line : lines(pen.type(), width)) {
      pen.text(line, x + hang, at, style);
      at += style.leading();
    }
  }

  private List<String> lines(Type type, float width) {
    return type.lines(text, style.size(), width - hang);
  }
}
