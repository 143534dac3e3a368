package org.castwright.blocking;

import java.util.function.IntPredicate;

/** Places of a grid that hang together, by their corners too. */
final class Together {

  private final int nx;
  private final IntPredicate in;
  private final boolean[] seen;

  /** Begins with those gathered last. */
  final int[] places;

  /**
   * @param nx places in a row
   * @param size places in all
   * @param in which of them count
   */
  Together(int nx, int size, IntPredicate in) {
    this.nx = nx;
    this.in = in;
    seen = new boolean[size];
    places = new int[size];
  }

  /** How many hang together with a place, itself included; none if they were gathered before. */
  int gather(int first) {
    int n = add(first, 0);
    for (int k = 0; k < n; k++) {
      for (int s : new int[] {-1, 1, -nx, nx, -nx - 1, -nx + 1, nx - 1, nx + 1}) {
        n = add(places[k] + s, n);
      }
    }
    return n;
  }

  private int add(int p, int n) {
    if (p < 0 || p >= seen.length || seen[p] || !in.test(p)) {
      return n;
    }
    seen[p] = true;
    places[n] = p;
    return n + 1;
  }
}
