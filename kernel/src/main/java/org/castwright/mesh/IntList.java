package org.castwright.mesh;

import java.util.Arrays;

/** A growing list of ints without boxing; a stack as well. */
public final class IntList {

  private int[] a = new int[64];
  private int n;

  public void add(int v) {
    if (n == a.length) {
      a = Arrays.copyOf(a, 2 * n);
    }
    a[n++] = v;
  }

  /** Takes the last item off. */
  public int pop() {
    return a[--n];
  }

  public int get(int i) {
    return a[i];
  }

  public void set(int i, int v) {
    a[i] = v;
  }

  public int size() {
    return n;
  }

  public void clear() {
    n = 0;
  }

  public int[] toArray() {
    return Arrays.copyOf(a, n);
  }
}
