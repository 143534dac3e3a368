package org.castwright.sheet;

import java.awt.Color;

/**
 * How words look.
 *
 * @param size of the letters, points
 * @param bold heavier strokes
 * @param color of the letters
 */
record Style(float size, boolean bold, Color color) {

  static final Color INK = new Color(28, 30, 34);
  static final Color FAINT = new Color(92, 98, 106);
  static final Color RULE = new Color(200, 204, 208);
  static final Color PANEL = new Color(250, 250, 248);
  static final Color SHADE = new Color(240, 242, 243);

  static final Style BODY = new Style(9, false, INK);
  static final Style STRONG = new Style(9, true, INK);
  static final Style SMALL = new Style(7.6f, false, FAINT);
  static final Style HEAD = new Style(12.5f, true, INK);

  /** Distance of base lines as a share of the size. */
  private static final float LEADING = 1.32f;

  float leading() {
    return size * LEADING;
  }

  Style colored(Color other) {
    return new Style(size, bold, other);
  }
}
