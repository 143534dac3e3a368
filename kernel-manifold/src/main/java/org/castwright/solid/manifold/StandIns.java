package org.castwright.solid.manifold;

import org.castwright.mesh.TriMesh;

/**
 * Positions that stand in for those of a mesh while its triangles enter the kernel. The kernel
 * takes new meshes in single precision only and tidies them up as it sees fit: it would round the
 * true positions and drop vertices that come together. It therefore first gets made-up positions:
 * every coordinate is a 24-bit whole number times a power of two, exact in single precision; all
 * three are scattered so that no triangle is thin (the kernel turns the edges of thin triangles),
 * and x is a scrambled number of the vertex. Afterwards each vertex is recognized by its x and gets
 * its true position in double precision. {@link #isComplete} tells whether all triangles have come
 * through.
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

  /**
   * Triangles lower than this are thin. The kernel's own bound in single precision is about 2 of
   * these units (2^24 times the float epsilon 1.2e-7); about 4 triangles in 100 000 are lower than
   * this one at first.
   */
  private static final double THIN = 64;

  /** Passes over the triangles to move vertices of thin ones; two are the rule. */
  private static final int MOST_PASSES = 16;

  private final TriMesh mesh;
  private final double unit;
  private final float[] positions;

  /**
   * Makes positions for every vertex of a mesh.
   *
   * @throws EngineStopped if there are too many vertices
   */
  StandIns(TriMesh mesh) {
    int n = mesh.vertexCount();
    if (n > MOST_VERTICES) {
      throw new EngineStopped("a body has " + n + " vertices, more than " + MOST_VERTICES);
    }
    this.mesh = mesh;
    unit = unit(mesh.xyz());
    positions = new float[3 * n];
    for (int i = 0; i < n; i++) {
      scatter(i, 0);
    }
    int pass = 1;
    while (pass < MOST_PASSES && moveThin(pass)) {
      pass++;
    }
  }

  private void scatter(int vertex, int pass) {
    long bits = mixed(((long) pass << 32) + vertex + 1);
    long scrambled = (vertex * SPREAD) & MASK;
    positions[3 * vertex] = (float) (scrambled * unit);
    positions[3 * vertex + 1] = (float) ((bits >>> (Long.SIZE - BITS)) * unit);
    positions[3 * vertex + 2] = (float) ((bits & MASK) * unit);
  }

  /** Moves a vertex of every thin triangle; false if there was none. */
  private boolean moveThin(int pass) {
    int[] tri = mesh.tri();
    boolean moved = false;
    for (int t = 0; t < tri.length; t += 3) {
      if (isThin(3 * tri[t], 3 * tri[t + 1], 3 * tri[t + 2])) {
        scatter(tri[t], pass);
        moved = true;
      }
    }
    return moved;
  }

  /** Whether the triangle of the vertices at three places in the array is lower than the bound. */
  private boolean isThin(int a, int b, int c) {
    double ux = (double) positions[b] - positions[a];
    double uy = (double) positions[b + 1] - positions[a + 1];
    double uz = (double) positions[b + 2] - positions[a + 2];
    double vx = (double) positions[c] - positions[a];
    double vy = (double) positions[c + 1] - positions[a + 1];
    double vz = (double) positions[c + 2] - positions[a + 2];
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    double wx = ux - vx;
    double wy = uy - vy;
    double wz = uz - vz;
    double longest =
        Math.max(
            wx * wx + wy * wy + wz * wz,
            Math.max(ux * ux + uy * uy + uz * uz, vx * vx + vy * vy + vz * vz));
    double bound = THIN * unit;
    return nx * nx + ny * ny + nz * nz < bound * bound * longest;
  }

  /**
   * Whether a mesh of stand-ins, in whatever order, has exactly the triangles of the true mesh. A
   * sum of 64-bit hashes is compared.
   *
   * @param xyz three floats a vertex
   */
  boolean isComplete(float[] xyz, int[] tri) {
    if (tri.length != mesh.tri().length) {
      return false;
    }
    int[] translated = new int[tri.length];
    for (int i = 0; i < tri.length; i++) {
      translated[i] = vertex(xyz[3 * tri[i]]);
    }
    return fingerprint(translated) == fingerprint(mesh.tri());
  }

  /** The same for the same oriented triangles in any order, each begun at any corner. */
  private static long fingerprint(int[] tri) {
    long sum = 0;
    for (int t = 0; t < tri.length; t += 3) {
      int k = TriangleOrder.lowest(tri, t);
      long hash = mixed(tri[t + k] + 1L);
      hash = mixed(hash + tri[t + (k + 1) % 3]);
      sum += mixed(hash + tri[t + (k + 2) % 3]);
    }
    return sum;
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
