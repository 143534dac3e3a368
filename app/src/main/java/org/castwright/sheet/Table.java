package org.castwright.sheet;

import java.util.ArrayList;
import java.util.List;

/**
 * Rows of words in columns; cells wrap.
 *
 * @param shares of the width, one for each column, 1 in sum
 * @param head names of the columns
 * @param least least height of a row, points: room to write by hand
 */
record Table(
    List<Float> shares, List<String> head, List<List<String>> rows, Style style, float least)
    implements Element {

  /** Free space above and below the words of a cell, as a share of their size. */
  private static final float PAD = 0.34f;

  private static final float INSET = 4;

  static Table of(List<Float> shares, List<String> head, List<List<String>> rows) {
    return new Table(shares, head, rows, Style.BODY, 0);
  }

  @Override
  public float height(Type type, float width) {
    float sum = headHeight(type, width);
    for (List<String> row : rows) {
      sum += height(type, row, style, width);
    }
    return sum + 5;
  }

  private float headHeight(Type type, float width) {
    return height(type, head, Style.SMALL, width);
  }

  private float height(Type type, List<String> row, Style s, float width) {
    int most = 1;
    for (int i = 0; i < row.size(); i++) {
      most = Math.max(most, lines(type, row.get(i), s, i, width).size());
    }
    float words = most * s.leading() + 2 * PAD * s.size();
    return row == head ? words : Math.max(least, words);
  }

  private List<String> lines(Type type, String cell, Style s, int column, float width) {
    return type.lines(cell, s.size(), shares.get(column) * width - 2 * INSET);
  }

  @Override
  public void draw(Pen pen, float x, float y, float width) {
    float at = y;
    float h = headHeight(pen.type(), width);
    pen.fill(x, at, width, h, 2, Style.SHADE);
    row(pen, head, Style.SMALL, x, at, width);
    at += h;
    for (List<String> row : rows) {
      row(pen, row, style, x, at, width);
      at += height(pen.type(), row, style, width);
      pen.line(x, at, x + width, at, Style.RULE, 0.5f);
    }
    if (least > 0) {
      uprights(pen, x, y, at, width);
    }
  }

  /** Lines between the columns of a form. */
  private void uprights(Pen pen, float x, float y, float end, float width) {
    float at = x;
    for (int i = 0; i + 1 < shares.size(); i++) {
      at += shares.get(i) * width;
      pen.line(at, y, at, end, Style.RULE, 0.5f);
    }
  }

  private void row(Pen pen, List<String> cells, Style s, float x, float y, float width) {
    float at = x;
    for (int i = 0; i < cells.size(); i++) {
      float base = y + (PAD + 1) * s.size();
      for (String line : new ArrayList<>(lines(pen.type(), cells.get(i), s, i, width))) {
        pen.text(line, at + INSET, base, s);
        base += s.leading();
      }
      at += shares.get(i) * width;
    }
  }
}
