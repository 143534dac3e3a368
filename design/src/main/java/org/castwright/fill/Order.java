package org.castwright.fill;

/** Vertices from high to low; equal heights by number. */
final class Order {

  private Order() {}

  /** Vertex numbers, sorted by merging runs of twice the length again and again. */
  static int[] descending(double[] height) {
    int n = height.length;
    int[] from = new int[n];
    for (int i = 0; i < n; i++) {
      from[i] = i;
    }
    int[] to = new int[n];
    for (int run = 1; run < n; run *= 2) {
      for (int lo = 0; lo < n; lo += 2 * run) {
        merge(height, from, to, lo, Math.min(lo + run, n), Math.min(lo + 2 * run, n));
      }
      int[] swap = from;
      from = to;
      to = swap;
    }
    return from;
  }

  private static void merge(double[] height, int[] from, int[] to, int lo, int mid, int hi) {
    int i = lo;
    int j = mid;
    for (int k = lo; k < hi; k++) {
      boolean left = j >= hi || (i < mid && height[from[i]] >= height[from[j]]);
      to[k] = left ? from[i++] : from[j++];
    }
  }
}
