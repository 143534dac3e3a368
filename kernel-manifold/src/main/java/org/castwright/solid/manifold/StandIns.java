package org.castwright.solid.manifold;

import org.castwright.mesh.TriMesh;

/**
 * Positions that stand in for those of a mesh while its triangles enter the kernel. The kernel
 * takes new meshes in single precision only and tidies them up as it sees fit: it would round the
 * true positions and drop vertices that come together. It therefore first gets made-up positions:
 * every coordinate is a 24-bit whole number times a power of two, exact in single precision; all
 * three are scattered so that no triangle is thin (the kernel turns the edges of thin triangles),
 * and x is a scrambled number of the vertex. Afterwards each vertex is recognized by its x and gets
 * its true position in double precision.
 *
 * <p>The power of two keeps the stand-ins no larger than the true coordinates, because the kernel
 * derives its smallest tolerance from the largest coordinate it has ever seen in a body.
 */
final class StandIns {

  /** More vertices than one instance can hold. */
  static final int MOST_VERTICES = 1 << 24;

  /** The smallest power of two by which a 24-bit number is still a normal float. */
  private static final int LEAST_EXPONENT = -126;

  private static final int BITS = 24;

  private static final long MASK = (1L << BITS) - 1;

  /** An odd number: multiplying by it scrambles the whole numbers of 24 bits, none twice. */
  private static final long SPREAD = 10368889L;

  private static final long GATHER = inverse(SPREAD);

  private final double unit;
  private final float[] positions;

  /**
   * @param scatter which of many arrangements to take; another one for another try
   * @throws EngineStopped if there are too many vertices
   */
  StandIns(TriMesh mesh, int scatter) {
    int n = mesh.vertexCount();
    if (n > MOST_VERTICES) {
      throw new EngineStopped("a body has " + n + " vertices, more than " + MOST_VERTICES);
    }
    unit = unit(mesh.xyz());
    positions = new float[3 * n];
    for (int i = 0; i < n; i++) {
      long bits = mixed(((long) scatter << 32) + i);
      long scrambled = (i * SPREAD) & MASK;
      positions[3 * i] = (float) (scrambled * unit);
      positions[3 * i + 1] = (float) ((bits >>> (Long.SIZE - BITS)) * unit);
      positions[3 * i + 2] = (float) ((bits & ((1 << BITS) - 1)) * unit);
    }
  }

  /** Three floats a vertex. */
  float[] positions() {
    return positions;
  }

  /** Which vertex stands at {@code x}. */
  int vertex(double x) {
    long scrambled = (long) (x / unit);
    return (int) ((scrambled * GATHER) & MASK);
  }

  /** The number that undoes a multiplication by an odd number, by Newton's iteration. */
  private static long inverse(long odd) {
    long x = 1;
    for (int bits = 1; bits < BITS; bits *= 2) {
      x *= 2 - odd * x;
    }
    return x & MASK;
  }

  private static double unit(double[] xyz) {
    double largest = 0;
    for (double v : xyz) {
      largest = Math.max(largest, Math.abs(v));
    }
    int exponent = largest > 0 ? Math.getExponent(largest) - BITS : 0;
    return Math.scalb(1.0, Math.max(LEAST_EXPONENT, Math.min(exponent, Float.MAX_EXPONENT - BITS)));
  }

  /** The finalizer of MurmurHash3 (Appleby, public domain): every bit depends on every bit. */
  private static long mixed(long value) {
    long z = value;
    z = (z ^ (z >>> 33)) * 0xff51afd7ed558ccdL;
    z = (z ^ (z >>> 33)) * 0xc4ceb9fe1a85ec53L;
    return z ^ (z >>> 33);
  }
}
