package org.castwright.survey;

import java.util.Arrays;
import java.util.Locale;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;

/**
 * Pairs the two sides of each edge. Side {@code 3 f + k} runs from corner {@code k} of facet {@code
 * f} to the next corner. Where more than two facets meet in an edge, sides are paired in index
 * order.
 */
final class EdgeTwins {

  private EdgeTwins() {}

  static int next(int side) {
    return side % 3 == 2 ? side - 2 : side + 1;
  }

  /**
   * For each side the side that runs the other way.
   *
   * @throws MeshException if a side has none: the mesh is not closed or its facets disagree
   */
  static int[] of(TriMesh mesh) {
    int[] tri = mesh.tri();
    int[] start = new int[mesh.vertexCount() + 1];
    for (int h = 0; h < tri.length; h++) {
      start[Math.min(tri[h], tri[next(h)]) + 1]++;
    }
    for (int v = 0; v < mesh.vertexCount(); v++) {
      start[v + 1] += start[v];
    }
    long[] sides = new long[tri.length];
    int[] fill = Arrays.copyOf(start, mesh.vertexCount());
    for (int h = 0; h < tri.length; h++) {
      int a = tri[h];
      int b = tri[next(h)];
      sides[fill[Math.min(a, b)]++] = ((long) Math.max(a, b) << Integer.SIZE) | h;
    }
    int[] twin = new int[tri.length];
    Arrays.fill(twin, -1);
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Arrays.sort(sides, start[v], start[v + 1]);
      pair(tri, sides, start[v], start[v + 1], twin);
    }
    for (int h = 0; h < twin.length; h++) {
      if (twin[h] < 0) {
        throw open(mesh, tri[h]);
      }
    }
    return twin;
  }

  private static void pair(int[] tri, long[] sides, int from, int to, int[] twin) {
    for (int i = from; i < to; i++) {
      int h = (int) sides[i];
      for (int k = i + 1; k < to && twin[h] < 0 && sameEdge(sides[i], sides[k]); k++) {
        int g = (int) sides[k];
        if (twin[g] < 0 && tri[g] != tri[h]) {
          twin[h] = g;
          twin[g] = h;
        }
      }
    }
  }

  private static boolean sameEdge(long a, long b) {
    return a >> Integer.SIZE == b >> Integer.SIZE;
  }

  private static MeshException open(TriMesh mesh, int vertex) {
    return new MeshException(
        String.format(
            Locale.ROOT,
            "The model is not closed: an edge at (%.3f, %.3f, %.3f) mm has a facet on one side"
                + " only or facets that face opposite ways; repair the model first.",
            mesh.vertex(vertex).x(),
            mesh.vertex(vertex).y(),
            mesh.vertex(vertex).z()));
  }
}
