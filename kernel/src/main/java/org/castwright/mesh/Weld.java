package org.castwright.mesh;

import java.util.Arrays;

/** Joins vertices, so that triangles share corners. */
public final class Weld {

  private Weld() {}

  /**
   * The mesh with vertices of equal coordinates merged into one. Numbers follow the first
   * appearance in the vertex list. No vertex moves, vertices that no triangle uses stay, and every
   * triangle stays in its place and order, including those that now name one corner twice.
   */
  public static TriMesh exact(TriMesh mesh) {
    double[] xyz = mesh.xyz();
    int[] tri = mesh.tri();
    PointTable points = new PointTable(mesh.vertexCount());
    int[] number = new int[mesh.vertexCount()];
    for (int i = 0; i < number.length; i++) {
      number[i] = points.indexOf(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
    }
    int[] out = new int[tri.length];
    for (int i = 0; i < tri.length; i++) {
      out[i] = number[tri[i]];
    }
    return new TriMesh(points.toArray(), out);
  }

  /**
   * Triangles with each corner replaced by the one it is joined to, without those that lose a
   * corner by that; the rest in their order.
   *
   * @param home for each vertex the one it is joined to
   */
  public static int[] joined(int[] tri, int[] home) {
    int[] out = new int[tri.length];
    int n = 0;
    for (int i = 0; i < tri.length; i += 3) {
      int a = home[tri[i]];
      int b = home[tri[i + 1]];
      int c = home[tri[i + 2]];
      if (a != b && b != c && c != a) {
        out[n++] = a;
        out[n++] = b;
        out[n++] = c;
      }
    }
    return Arrays.copyOf(out, n);
  }
}
