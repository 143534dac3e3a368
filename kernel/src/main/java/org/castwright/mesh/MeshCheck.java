package org.castwright.mesh;

import java.util.Arrays;

/**
 * What the triangles of a mesh say about its shape, judged by vertex index alone: whether it is
 * closed, oriented and manifold, in how many pieces, with how many handles. Positions are not
 * compared, except for {@code zeroAreaTriangles}.
 *
 * @param vertices vertices used by some triangle
 * @param edges different edges (unordered vertex pairs)
 * @param triangles all triangles
 * @param openEdges edges with a triangle on one side only
 * @param flippedEdges edges with two triangles that run along them in the same direction
 * @param nonManifoldEdges edges with more than two triangles
 * @param nonManifoldVertices vertices whose triangles, walked from one to the next across edges
 *     that have exactly two of them, fall apart into more than one fan
 * @param components pieces; two triangles with an edge in common are in one piece
 * @param degenerateTriangles triangles that name a vertex twice; they take no part in the other
 *     counts except {@code triangles}, {@code vertices} and {@code zeroAreaTriangles}
 * @param zeroAreaTriangles triangles whose computed area is exactly zero; a closed mesh may have
 *     them
 * @param unusedVertices vertices that no triangle uses; harmless
 * @param faultTriangle a triangle that has part in a fault, for saying where; -1 if there is none
 */
public record MeshCheck(
    int vertices,
    int edges,
    int triangles,
    int openEdges,
    int flippedEdges,
    int nonManifoldEdges,
    int nonManifoldVertices,
    int components,
    int degenerateTriangles,
    int zeroAreaTriangles,
    int unusedVertices,
    int faultTriangle) {

  /** Checks a mesh; a million triangles take about 0.2 s. */
  public static MeshCheck of(TriMesh mesh) {
    return new Count(mesh).result();
  }

  /**
   * Whether the mesh bounds a body: every edge has two triangles that run along it in opposite
   * directions, and every vertex one closed fan. True for a mesh without triangles.
   */
  public boolean closedManifold() {
    return openEdges == 0
        && flippedEdges == 0
        && nonManifoldEdges == 0
        && nonManifoldVertices == 0
        && degenerateTriangles == 0;
  }

  /** Vertices − edges + triangles. */
  public int eulerCharacteristic() {
    return vertices - edges + triangles;
  }

  /**
   * The number of handles of all pieces together, from Euler's formula χ = 2 (pieces − handles).
   *
   * @throws IllegalStateException unless the mesh is {@link #closedManifold()}
   */
  public int genus() {
    if (!closedManifold()) {
      throw new IllegalStateException("an open or non-manifold mesh has no genus: " + faults());
    }
    return components - eulerCharacteristic() / 2;
  }

  /** The faults in words, such as "3 open edges and 1 flipped edge"; "no faults" if none. */
  public String faults() {
    int[] counts = {
      openEdges, flippedEdges, nonManifoldEdges, nonManifoldVertices, degenerateTriangles
    };
    String[][] words = {
      {"open edge", "open edges"},
      {"flipped edge", "flipped edges"},
      {"edge with more than two triangles", "edges with more than two triangles"},
      {"vertex where surfaces only touch", "vertices where surfaces only touch"},
      {"triangle with a repeated corner", "triangles with a repeated corner"}
    };
    StringBuilder out = new StringBuilder();
    int left = (int) Arrays.stream(counts).filter(c -> c > 0).count();
    for (int i = 0; i < counts.length; i++) {
      if (counts[i] > 0) {
        out.append(counts[i]).append(' ').append(words[i][counts[i] == 1 ? 0 : 1]);
        left--;
        out.append(left > 1 ? ", " : left == 1 ? " and " : "");
      }
    }
    return out.isEmpty() ? "no faults" : out.toString();
  }

  /** One pass over a mesh: edges sorted by their lower vertex, corners and triangles united. */
  private static final class Count {

    private final TriMesh mesh;
    private final int[] tri;
    private final int[] triangleSet;
    private final int[] cornerSet;

    /** Half-edges of each lower vertex: upper vertex in the high half, half-edge in the low. */
    private long[] sides;

    private int[] firstSide;
    private int degenerate;
    private int edges;
    private int open;
    private int flipped;
    private int crowded;
    private int fault = Integer.MAX_VALUE;

    Count(TriMesh mesh) {
      this.mesh = mesh;
      this.tri = mesh.tri();
      this.triangleSet = identity(mesh.triangleCount());
      this.cornerSet = identity(tri.length);
    }

    MeshCheck result() {
      collectSides();
      for (int v = 0; v < mesh.vertexCount(); v++) {
        Arrays.sort(sides, firstSide[v], firstSide[v + 1]);
        int i = firstSide[v];
        while (i < firstSide[v + 1]) {
          int end = i + 1;
          while (end < firstSide[v + 1] && (sides[end] >>> 32) == (sides[i] >>> 32)) {
            end++;
          }
          edge(i, end);
          i = end;
        }
      }
      return summary();
    }

    /** Sorts the half-edges by lower vertex, counting first. */
    private void collectSides() {
      int n = mesh.vertexCount();
      firstSide = new int[n + 1];
      for (int h = 0; h < tri.length; h++) {
        if (!isDegenerate(h / 3)) {
          firstSide[Math.min(tri[h], tri[next(h)]) + 1]++;
        }
      }
      for (int v = 0; v < n; v++) {
        firstSide[v + 1] += firstSide[v];
      }
      sides = new long[firstSide[n]];
      int[] at = Arrays.copyOf(firstSide, n);
      for (int h = 0; h < tri.length; h++) {
        if (!isDegenerate(h / 3)) {
          int a = tri[h];
          int b = tri[next(h)];
          sides[at[Math.min(a, b)]++] = (long) Math.max(a, b) << 32 | h;
        } else if (h % 3 == 0) {
          degenerate++;
          fault = Math.min(fault, h / 3);
        }
      }
    }

    private void edge(int from, int to) {
      edges++;
      int first = (int) sides[from];
      for (int i = from + 1; i < to; i++) {
        unite(triangleSet, first / 3, (int) sides[i] / 3);
      }
      if (to - from == 2) {
        int second = (int) sides[from + 1];
        boolean opposite = tri[first] != tri[second];
        unite(cornerSet, first, opposite ? next(second) : second);
        unite(cornerSet, next(first), opposite ? second : next(second));
        if (opposite) {
          return;
        }
        flipped++;
      } else if (to - from == 1) {
        open++;
      } else {
        crowded++;
      }
      fault = Math.min(fault, first / 3);
    }

    private MeshCheck summary() {
      int[] fans = new int[mesh.vertexCount()];
      boolean[] used = new boolean[mesh.vertexCount()];
      int parted = 0;
      for (int c = 0; c < tri.length; c++) {
        used[tri[c]] = true;
        if (cornerSet[c] == c && !isDegenerate(c / 3) && ++fans[tri[c]] == 2) {
          parted++;
          fault = Math.min(fault, c / 3);
        }
      }
      int vertices = 0;
      for (boolean u : used) {
        vertices += u ? 1 : 0;
      }
      int pieces = 0;
      int flat = 0;
      for (int f = 0; f < mesh.triangleCount(); f++) {
        pieces += triangleSet[f] == f && !isDegenerate(f) ? 1 : 0;
        flat += mesh.areaVector(f).length() == 0 ? 1 : 0;
      }
      return new MeshCheck(
          vertices,
          edges,
          mesh.triangleCount(),
          open,
          flipped,
          crowded,
          parted,
          pieces,
          degenerate,
          flat,
          mesh.vertexCount() - vertices,
          fault == Integer.MAX_VALUE ? -1 : fault);
    }

    private boolean isDegenerate(int f) {
      int a = tri[3 * f];
      int b = tri[3 * f + 1];
      int c = tri[3 * f + 2];
      return a == b || b == c || c == a;
    }

    private static int next(int corner) {
      return corner % 3 == 2 ? corner - 2 : corner + 1;
    }

    private static int[] identity(int n) {
      int[] set = new int[n];
      Arrays.setAll(set, i -> i);
      return set;
    }

    /** Joins two sets under the lower of their roots, halving paths on the way. */
    private static void unite(int[] set, int a, int b) {
      int ra = root(set, a);
      int rb = root(set, b);
      set[Math.max(ra, rb)] = Math.min(ra, rb);
    }

    private static int root(int[] set, int start) {
      int i = start;
      while (set[i] != i) {
        set[i] = set[set[i]];
        i = set[i];
      }
      return i;
    }
  }
}
