package org.castwright.proof;

import java.util.Arrays;

/** Grows a list of surface crossings and turns it into the spans of body in each column. */
final class Crossings {

  private int[] column = new int[1024];
  private boolean[] entering = new boolean[1024];
  private double[] height = new double[1024];
  private int size;

  void clear() {
    size = 0;
  }

  void add(int col, double w, boolean enters) {
    if (size == column.length) {
      column = Arrays.copyOf(column, 2 * size);
      entering = Arrays.copyOf(entering, 2 * size);
      height = Arrays.copyOf(height, 2 * size);
    }
    column[size] = col;
    entering[size] = enters;
    height[size++] = w;
  }

  /** The spans of {@code columns} columns. */
  Spans spans(int columns) {
    int[] start = new int[columns + 1];
    for (int i = 0; i < size; i++) {
      start[column[i] + 1]++;
    }
    for (int c = 0; c < columns; c++) {
      start[c + 1] += start[c];
    }
    double[] w = new double[size];
    boolean[] in = new boolean[size];
    int[] at = Arrays.copyOf(start, columns);
    for (int i = 0; i < size; i++) {
      int k = at[column[i]]++;
      w[k] = height[i];
      in[k] = entering[i];
    }
    Spans out = new Spans(columns, size / 2);
    for (int c = 0; c < columns; c++) {
      sort(w, in, start[c], start[c + 1]);
      pair(w, in, start[c], start[c + 1], out);
      out.close(c);
    }
    return out;
  }

  /** Puts the spans of the one column 0 into {@code out}. */
  void spansInto(Spans out) {
    out.clear();
    sort(height, entering, 0, size);
    pair(height, entering, 0, size, out);
    out.close(0);
  }

  private static void sort(double[] w, boolean[] in, int from, int to) {
    for (int i = from + 1; i < to; i++) {
      double x = w[i];
      boolean b = in[i];
      int j = i - 1;
      while (j >= from && w[j] > x) {
        w[j + 1] = w[j];
        in[j + 1] = in[j];
        j--;
      }
      w[j + 1] = x;
      in[j + 1] = b;
    }
  }

  /** Heights between the first entry and the exit that balances it are body. */
  private static void pair(double[] w, boolean[] in, int from, int to, Spans out) {
    int inside = 0;
    double low = 0;
    for (int i = from; i < to; i++) {
      int before = inside;
      inside += in[i] ? 1 : -1;
      if (before <= 0 && inside > 0) {
        low = w[i];
      } else if (before > 0 && inside <= 0 && w[i] > low) {
        out.add(low, w[i]);
      }
    }
  }
}
