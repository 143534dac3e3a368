package org.castwright.proof;

import java.util.Arrays;

/** The stretches of body in each of a number of columns, lowest first. */
final class Spans {

  private final int[] start;
  private double[] low;
  private double[] high;
  private int size;

  Spans(int columns, int expected) {
    start = new int[columns + 1];
    low = new double[Math.max(4, expected)];
    high = new double[low.length];
  }

  void clear() {
    size = 0;
  }

  void add(double lo, double hi) {
    if (size == low.length) {
      low = Arrays.copyOf(low, 2 * size);
      high = Arrays.copyOf(high, 2 * size);
    }
    low[size] = lo;
    high[size++] = hi;
  }

  /** Ends column {@code c}; columns are ended in order. */
  void close(int c) {
    start[c + 1] = size;
  }

  int from(int column) {
    return start[column];
  }

  int to(int column) {
    return start[column + 1];
  }

  boolean isEmpty(int column) {
    return start[column] == start[column + 1];
  }

  double low(int i) {
    return low[i];
  }

  double high(int i) {
    return high[i];
  }

  boolean holds(int column, double w) {
    for (int i = from(column); i < to(column); i++) {
      if (w > low[i] && w < high[i]) {
        return true;
      }
    }
    return false;
  }
}
