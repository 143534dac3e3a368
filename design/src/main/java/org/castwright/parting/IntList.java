package org.castwright.parting;

import java.util.Arrays;

/** A growing list of ints without boxing. */
final class IntList {
  private int[] a = new int[64];
  private int n;

  void add(int v) {
    if (n == a.length) {
      a = Arrays.copyOf(a, 2 * n);
    }
    a[n++] = v;
  }

  int get(int i) {
    return a[i];
  }

  void set(int i, int v) {
    a[i] = v;
  }

  int size() {
    return n;
  }

  void clear() {
    n = 0;
  }

  int[] toArray() {
    return Arrays.copyOf(a, n);
  }
}
