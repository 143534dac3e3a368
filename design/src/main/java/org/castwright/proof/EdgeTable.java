package org.castwright.proof;

import java.util.Arrays;

/** Finds the half-edge across an edge: open addressing, keyed by the two vertices in order. */
final class EdgeTable {

  private final int[] tri;
  private final int[] slot;
  private final int mask;

  EdgeTable(int[] tri) {
    this.tri = tri;
    int size = Integer.highestOneBit(Math.max(8, tri.length * 2)) * 2;
    mask = size - 1;
    slot = new int[size];
    Arrays.fill(slot, -1);
    for (int h = 0; h < tri.length; h++) {
      int s = first(tri[h], tri[Outline.next(h)]);
      while (slot[s] >= 0) {
        s = (s + 1) & mask;
      }
      slot[s] = h;
    }
  }

  /** The half-edge that runs the other way along the edge of {@code h}, or −1. */
  int opposite(int h) {
    int from = tri[Outline.next(h)];
    int to = tri[h];
    for (int s = first(from, to); slot[s] >= 0; s = (s + 1) & mask) {
      int k = slot[s];
      if (tri[k] == from && tri[Outline.next(k)] == to) {
        return k;
      }
    }
    return -1;
  }

  private int first(int a, int b) {
    // Fibonacci hashing: the odd number nearest to 2^64 divided by the golden ratio (Knuth, TAOCP
    // volume 3, section 6.4)
    long x = ((long) a << 32 | b) * 0x9E3779B97F4A7C15L;
    return (int) (x >>> 40) & mask;
  }
}
