package org.castwright.cover;

import org.castwright.geom.Vec3;

/**
 * Which samples are free along which directions: one bit a sample for each direction. Both senses
 * of an axis come from one picture.
 */
final class FreeBits {

  private FreeBits() {}

  static int words(int bits) {
    return (bits + Long.SIZE - 1) / Long.SIZE;
  }

  static boolean get(long[] bits, int i) {
    return (bits[i >> 6] >>> i & 1) != 0;
  }

  static void set(long[] bits, int i) {
    bits[i >> 6] |= 1L << i;
  }

  static void clear(long[] bits, int i) {
    bits[i >> 6] &= ~(1L << i);
  }

  /**
   * The samples free along an axis and against it.
   *
   * @param lean facets that lean under the pull by themselves
   * @return two sets of bits
   */
  static long[][] along(Vec3 axis, Samples samples, Shade shade, Lean lean) {
    shade.look(axis);
    int n = samples.count();
    long[] up = new long[words(n)];
    long[] down = new long[words(n)];
    for (int s = 0; s < n; s++) {
      double x = samples.x(s);
      double y = samples.y(s);
      double z = samples.z(s);
      int column = shade.column(x, y, z);
      double height = shade.height(x, y, z);
      int leans = samples.isCell(s) ? 0 : lean.side(samples.id(s), axis);
      if (leans <= 0 && (column < 0 || !shade.caughtDown(column, height))) {
        set(down, s);
      }
      if (leans >= 0 && (column < 0 || !shade.caughtUp(column, height))) {
        set(up, s);
      }
    }
    return new long[][] {up, down};
  }
}
