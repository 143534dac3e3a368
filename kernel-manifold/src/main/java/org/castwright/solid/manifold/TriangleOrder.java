package org.castwright.solid.manifold;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * One order for the triangles of a result. The kernel groups them by the operand they come from, in
 * the order in which it first saw the operands; the same operation would give another file after
 * another history.
 */
final class TriangleOrder {

  private TriangleOrder() {}

  /**
   * The mesh with every triangle turned so that its lowest vertex comes first, and the triangles
   * sorted by their vertices.
   */
  static TriMesh canonical(double[] xyz, int[] tri) {
    int vertices = xyz.length / 3;
    int[] first = new int[vertices + 1];
    for (int t = 0; t < tri.length; t += 3) {
      first[tri[t + lowest(tri, t)] + 1]++;
    }
    for (int v = 0; v < vertices; v++) {
      first[v + 1] += first[v];
    }
    long[] rest = new long[tri.length / 3];
    int[] at = Arrays.copyOf(first, vertices);
    for (int t = 0; t < tri.length; t += 3) {
      int k = lowest(tri, t);
      rest[at[tri[t + k]]++] = (long) tri[t + (k + 1) % 3] << 32 | tri[t + (k + 2) % 3];
    }
    int[] out = new int[tri.length];
    for (int v = 0; v < vertices; v++) {
      Arrays.sort(rest, first[v], first[v + 1]);
      for (int i = first[v]; i < first[v + 1]; i++) {
        out[3 * i] = v;
        out[3 * i + 1] = (int) (rest[i] >>> 32);
        out[3 * i + 2] = (int) rest[i];
      }
    }
    return new TriMesh(xyz, out);
  }

  /** Which of the three corners at {@code t} is the lowest vertex: 0, 1 or 2. */
  static int lowest(int[] tri, int t) {
    if (tri[t] < tri[t + 1]) {
      return tri[t] < tri[t + 2] ? 0 : 2;
    }
    return tri[t + 1] < tri[t + 2] ? 1 : 2;
  }
}
