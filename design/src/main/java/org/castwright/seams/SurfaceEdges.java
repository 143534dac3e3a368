package org.castwright.seams;

import java.util.Arrays;
import java.util.Locale;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;

/**
 * The edges of a closed mesh, numbered, each with its two vertices and two facets, and the facets
 * round each vertex.
 */
final class SurfaceEdges {

  /** Edge from corner k of facet f to its next corner: {@code of[3 * f + k]}. */
  final int[] of;

  /** The smaller and the larger vertex of each edge. */
  final int[] low;

  final int[] high;

  /** The facet that runs the edge from low to high, and the one that runs it back. */
  final int[] left;

  final int[] right;

  /** Corners at vertex v are {@code corner[start[v] .. start[v + 1]]}, as 3 * facet + k. */
  final int[] start;

  final int[] corner;

  private SurfaceEdges(int edges, TriMesh mesh) {
    int[] tri = mesh.tri();
    of = new int[tri.length];
    low = new int[edges];
    high = new int[edges];
    left = new int[edges];
    right = new int[edges];
    start = new int[mesh.vertexCount() + 1];
    corner = new int[tri.length];
    for (int v : tri) {
      start[v + 1]++;
    }
    for (int v = 0; v < mesh.vertexCount(); v++) {
      start[v + 1] += start[v];
    }
    int[] fill = start.clone();
    for (int c = 0; c < tri.length; c++) {
      corner[fill[tri[c]]++] = c;
    }
  }

  static int next(int corner) {
    return corner % 3 == 2 ? corner - 2 : corner + 1;
  }

  static int previous(int corner) {
    return corner % 3 == 0 ? corner + 2 : corner - 1;
  }

  /**
   * Numbers the edges in the order of their vertices.
   *
   * @throws MeshException if an edge does not have exactly one facet on each side
   */
  static SurfaceEdges of(TriMesh mesh) {
    int[] tri = mesh.tri();
    SurfaceEdges s = new SurfaceEdges(tri.length / 2, mesh);
    long[] sides = new long[tri.length];
    int[] begin = new int[mesh.vertexCount() + 1];
    for (int c = 0; c < tri.length; c++) {
      begin[Math.min(tri[c], tri[next(c)]) + 1]++;
    }
    for (int v = 0; v < mesh.vertexCount(); v++) {
      begin[v + 1] += begin[v];
    }
    int[] fill = begin.clone();
    for (int c = 0; c < tri.length; c++) {
      int a = Math.min(tri[c], tri[next(c)]);
      sides[fill[a]++] = ((long) Math.max(tri[c], tri[next(c)]) << Integer.SIZE) | c;
    }
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Arrays.sort(sides, begin[v], begin[v + 1]);
    }
    if (tri.length % 2 != 0) {
      throw open(mesh, tri[0]);
    }
    for (int e = 0; e < s.low.length; e++) {
      s.join(mesh, e, (int) sides[2 * e], (int) sides[2 * e + 1]);
    }
    return s;
  }

  private void join(TriMesh mesh, int e, int c, int d) {
    int[] tri = mesh.tri();
    if (tri[c] != tri[next(d)] || tri[d] != tri[next(c)]) {
      throw open(mesh, tri[c]);
    }
    int forward = tri[c] < tri[d] ? c : d;
    int back = forward == c ? d : c;
    low[e] = tri[forward];
    high[e] = tri[back];
    left[e] = forward / 3;
    right[e] = back / 3;
    of[forward] = e;
    of[back] = e;
  }

  int count() {
    return low.length;
  }

  /** The facet on the other side of an edge. */
  int across(int edge, int facet) {
    return left[edge] == facet ? right[edge] : left[edge];
  }

  double length(TriMesh mesh, int edge) {
    return mesh.vertex(low[edge]).minus(mesh.vertex(high[edge])).length();
  }

  private static MeshException open(TriMesh mesh, int vertex) {
    return new MeshException(
        String.format(
            Locale.ROOT,
            "The casting is not closed at (%.3f, %.3f, %.3f) mm: an edge there does not have one"
                + " facet on each side; repair the model first.",
            mesh.vertex(vertex).x(),
            mesh.vertex(vertex).y(),
            mesh.vertex(vertex).z()));
  }
}
