package org.castwright.parting;

import java.util.Arrays;

/** A growing list of doubles without boxing. */
final class DoubleList {
  private double[] a = new double[64];
  private int n;

  void add(double v) {
    if (n == a.length) {
      a = Arrays.copyOf(a, 2 * n);
    }
    a[n++] = v;
  }

  double get(int i) {
    return a[i];
  }

  void set(int i, double v) {
    a[i] = v;
  }

  int size() {
    return n;
  }

  double[] toArray() {
    return Arrays.copyOf(a, n);
  }
}
