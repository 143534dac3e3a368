package org.castwright.repair;

import java.util.Arrays;

/**
 * Points in cells of one size, for finding what lies within one cell size of a place. Open
 * addressing over the cell, points of one cell chained from the latest to the first.
 */
final class PointGrid {

  /** Bits of a cell index along one axis; beyond 2^21 cells far cells share a key, harmlessly. */
  private static final int BITS = 21;

  private final double[] xyz;
  private final double cell;
  private final long[] keys;
  private final int[] heads;
  private final int[] following;

  /**
   * @param xyz packed coordinates of all points
   * @param cell cell size and largest search distance, above zero
   * @param capacity how many points will be added at most
   */
  PointGrid(double[] xyz, double cell, int capacity) {
    this.xyz = xyz;
    this.cell = cell;
    int size = Integer.highestOneBit(Math.max(8, capacity)) * 4;
    keys = new long[size];
    heads = new int[size];
    Arrays.fill(heads, -1);
    following = new int[xyz.length / 3];
  }

  void add(int p) {
    int slot = slot(key(index(p, 0), index(p, 1), index(p, 2)));
    following[p] = heads[slot];
    heads[slot] = p;
  }

  /** The nearest point within a cell size of point {@code p}, the lowest of equals; -1 if none. */
  int nearest(int p) {
    int best = -1;
    double bestSquare = cell * cell;
    for (long n = 0; n < 27; n++) {
      long i = index(p, 0) + n % 3 - 1;
      long j = index(p, 1) + n / 3 % 3 - 1;
      long k = index(p, 2) + n / 9 - 1;
      for (int q = heads[slot(key(i, j, k))]; q >= 0; q = following[q]) {
        double d = squareDistance(xyz, p, q);
        if (d < bestSquare || (d == bestSquare && (best < 0 || q < best))) {
          best = q;
          bestSquare = d;
        }
      }
    }
    return best;
  }

  static double squareDistance(double[] xyz, int p, int q) {
    double x = xyz[3 * p] - xyz[3 * q];
    double y = xyz[3 * p + 1] - xyz[3 * q + 1];
    double z = xyz[3 * p + 2] - xyz[3 * q + 2];
    return x * x + y * y + z * z;
  }

  private long index(int p, int axis) {
    return (long) Math.floor(xyz[3 * p + axis] / cell);
  }

  private static long key(long i, long j, long k) {
    long mask = (1L << BITS) - 1;
    return ((i & mask) << (2 * BITS)) | ((j & mask) << BITS) | (k & mask);
  }

  /** The slot of a key, which takes it over if it is free. */
  private int slot(long key) {
    int mask = heads.length - 1;
    // Fibonacci hashing: 2^64 / golden ratio (Knuth, The Art of Computer Programming 3, 6.4)
    int s = (int) ((key * 0x9E3779B97F4A7C15L) >>> 40) & mask;
    while (heads[s] >= 0 && keys[s] != key) {
      s = (s + 1) & mask;
    }
    keys[s] = key;
    return s;
  }
}
