package org.castwright.seams;

import java.util.Arrays;

/** A growing list of ints without boxing. */
final class IntRow {

  private int[] a = new int[32];
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

  int length() {
    return n;
  }

  void clear() {
    n = 0;
  }

  int[] toArray() {
    return Arrays.copyOf(a, n);
  }
}
