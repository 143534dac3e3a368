package org.castwright.solid.manifold;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * Positions that stand in for those of a mesh while its triangles enter the kernel. The kernel
 * takes new meshes in single precision only and tidies them up as it sees fit: it would round the
 * true positions, drop vertices that come together and turn edges of thin triangles. It therefore
 * first gets made-up positions: every coordinate is a signed 24-bit whole number times a power of
 * two, exact in single precision; all three are scattered at random, and x is a scrambled number of
 * the vertex. Afterwards each vertex is recognized by its x and gets its true position in double
 * precision.
 *
 * <p>Even so the kernel turns an edge about once in some million triangles, where a triangle is
 * thin or two neighbors lie in one plane by chance. {@link #accept} notices and moves the vertices
 * concerned for another try.
 *
 * <p>The power of two keeps the stand-ins no larger than the true coordinates, because the kernel
 * derives its smallest tolerance from the largest coordinate it has ever seen in a body.
 */
final class StandIns {

  /** More vertices than one instance can hold. */
  static final int MOST_VERTICES = 1 << 24;

  private static final int BITS = 24;
  private static final long MASK = (1L << BITS) - 1;
  private static final long HALF = 1L << (BITS - 1);

  /** The smallest power of two by which a whole number is still a normal float. */
  private static final int LEAST_EXPONENT = -126;

  /** An odd number: multiplying by it scrambles the whole numbers of 24 bits, none twice. */
  private static final long SPREAD = 10368889L;

  private static final long GATHER = inverse(SPREAD);

  private final TriMesh mesh;
  private final double unit;
  private final float[] positions;
  private int round;

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
      scatter(i);
    }
  }

  /** Three floats a vertex. */
  float[] positions() {
    return positions;
  }

  /** Which vertex stands at {@code x}. */
  int vertex(double x) {
    long scrambled = (long) (x / unit) + HALF;
    return (int) ((scrambled * GATHER) & MASK);
  }

  /**
   * Whether the kernel holds exactly the triangles of the mesh, in whatever order. If not, the
   * corners of those it changed have got other positions. 64-bit hashes are compared.
   *
   * @param xyz of the vertices as the kernel has them, three floats each
   * @param tri of the triangles as the kernel has them
   */
  boolean accept(float[] xyz, int[] tri) {
    int[] held = new int[tri.length];
    for (int i = 0; i < tri.length; i++) {
      held[i] = vertex(xyz[3 * tri[i]]);
    }
    if (held.length == mesh.tri().length && fingerprint(held) == fingerprint(mesh.tri())) {
      return true;
    }
    round++;
    scatterMissing(TriangleOrder.canonical(mesh.xyz(), held).tri());
    return false;
  }

  /** Moves the corners of triangles of the mesh that are not among those held. */
  private void scatterMissing(int[] held) {
    int[] wanted = TriangleOrder.canonical(mesh.xyz(), mesh.tri()).tri();
    int h = 0;
    for (int w = 0; w < wanted.length; w += 3) {
      while (h < held.length && compare(held, h, wanted, w) < 0) {
        h += 3;
      }
      if (h == held.length || compare(held, h, wanted, w) != 0) {
        scatter(wanted[w]);
        scatter(wanted[w + 1]);
        scatter(wanted[w + 2]);
      }
    }
  }

  private static int compare(int[] a, int i, int[] b, int j) {
    return Arrays.compare(a, i, i + 3, b, j, j + 3);
  }

  private void scatter(int vertex) {
    long bits = mixed(((long) round << 32) + vertex + 1);
    long scrambled = (vertex * SPREAD) & MASK;
    long y = bits & MASK;
    long z = bits >>> (Long.SIZE - BITS);
    positions[3 * vertex] = (float) ((scrambled - HALF) * unit);
    positions[3 * vertex + 1] = (float) ((y - HALF) * unit);
    positions[3 * vertex + 2] = (float) ((z - HALF) * unit);
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
    int exponent = largest > 0 ? Math.getExponent(largest) - BITS + 1 : 0;
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
