package org.castwright.repair;

import java.util.Arrays;

/**
 * The edges of a triangle list, each with the half-edges that run along it. Half-edge {@code 3f+k}
 * goes from corner k of triangle f to its next corner. Edges are ordered by lower, then upper
 * vertex; the half-edges of an edge by index. Triangles name three different vertices.
 */
final class EdgeTable {

  private final int[] tri;
  private final int[] halves;
  private final int[] first;
  private final int count;

  EdgeTable(int[] tri, int vertexCount) {
    this.tri = tri;
    int[] start = new int[vertexCount + 1];
    for (int h = 0; h < tri.length; h++) {
      start[low(h) + 1]++;
    }
    for (int v = 0; v < vertexCount; v++) {
      start[v + 1] += start[v];
    }
    long[] sides = new long[tri.length];
    int[] at = Arrays.copyOf(start, vertexCount);
    for (int h = 0; h < tri.length; h++) {
      sides[at[low(h)]++] = ((long) Math.max(from(h), to(h)) << 32) | h;
    }
    halves = new int[tri.length];
    int[] begin = new int[tri.length + 1];
    int edges = 0;
    for (int v = 0; v < vertexCount; v++) {
      Arrays.sort(sides, start[v], start[v + 1]);
      for (int i = start[v]; i < start[v + 1]; i++) {
        if (i == start[v] || (sides[i] >>> 32) != (sides[i - 1] >>> 32)) {
          begin[edges++] = i;
        }
        halves[i] = (int) sides[i];
      }
    }
    begin[edges] = tri.length;
    first = Arrays.copyOf(begin, edges + 1);
    count = edges;
  }

  int count() {
    return count;
  }

  int halfCount() {
    return tri.length;
  }

  /** How many triangles edge {@code e} has. */
  int size(int e) {
    return first[e + 1] - first[e];
  }

  /** The half-edge number {@code i} of edge {@code e}. */
  int half(int e, int i) {
    return halves[first[e] + i];
  }

  int from(int h) {
    return tri[h];
  }

  int to(int h) {
    return tri[next(h)];
  }

  /** The corner of the half-edge's triangle that is not on the edge. */
  int opposite(int h) {
    return tri[next(next(h))];
  }

  int low(int h) {
    return Math.min(from(h), to(h));
  }

  /** Whether the half-edge runs from the lower vertex to the upper. */
  boolean forward(int h) {
    return from(h) < to(h);
  }

  static int next(int h) {
    return h % 3 == 2 ? h - 2 : h + 1;
  }
}
