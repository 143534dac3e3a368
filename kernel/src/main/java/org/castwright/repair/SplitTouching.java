package org.castwright.repair;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * Separates surfaces that only touch. At an edge with more than two triangles each triangle is
 * joined to the one it shares a wedge of material with, so bodies that touch along an edge come
 * apart; a vertex where several fans of triangles meet becomes one vertex for each fan. Positions
 * do not change. Expects neighbors that agree.
 */
final class SplitTouching {

  private final TriMesh mesh;
  private final EdgeTable edges;
  private final Sets corners;

  private SplitTouching(TriMesh mesh) {
    this.mesh = mesh;
    this.edges = new EdgeTable(mesh.tri(), mesh.vertexCount());
    this.corners = new Sets(mesh.tri().length);
  }

  static void apply(Draft draft) {
    SplitTouching work = new SplitTouching(draft.mesh());
    int crowded = work.joinAcrossEdges();
    TriMesh split = work.rebuild();
    int extra = split.vertexCount() - draft.mesh().vertexCount();
    if (extra > 0) {
      String words =
          Draft.many(extra, "vertex", "vertices")
              + " added to part surfaces that only touched, at "
              + Draft.many(crowded, "edge", "edges")
              + " with more than two triangles and at single vertices";
      draft.replace(split, new HealingStep("split-touching", words, extra, 0));
    }
  }

  private int joinAcrossEdges() {
    int crowded = 0;
    for (int e = 0; e < edges.count(); e++) {
      if (edges.size(e) == 2) {
        join(edges.half(e, 0), edges.half(e, 1));
      } else if (edges.size(e) > 2) {
        crowded++;
        pairByAngle(e);
      }
    }
    return crowded;
  }

  private void join(int h, int g) {
    if (edges.from(h) != edges.from(g)) {
      corners.unite(h, EdgeTable.next(g));
      corners.unite(EdgeTable.next(h), g);
    }
  }

  /**
   * Pairs the triangles round an edge, taken counter-clockwise about it: material lies after a
   * triangle that runs down the edge and before one that runs up, like brackets.
   */
  private void pairByAngle(int e) {
    int n = edges.size(e);
    double[] angle = new double[n];
    angles(e, angle);
    Integer[] order = new Integer[n];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, (i, j) -> Double.compare(angle[i], angle[j]));
    int[] open = new int[2 * n];
    boolean[] paired = new boolean[n];
    int depth = 0;
    for (int i = 0; i < 2 * n; i++) {
      int at = order[i % n];
      if (paired[at]) {
        continue;
      }
      if (!edges.forward(edges.half(e, at))) {
        open[depth++] = at;
        continue;
      }
      while (depth > 0 && paired[open[depth - 1]]) {
        depth--;
      }
      if (depth > 0) {
        int with = open[--depth];
        paired[with] = true;
        paired[at] = true;
        join(edges.half(e, with), edges.half(e, at));
      }
    }
  }

  /** The angle of each triangle about the edge, from the first one, counter-clockwise. */
  private void angles(int e, double[] angle) {
    double[] x = mesh.xyz();
    int h0 = edges.half(e, 0);
    int low = 3 * edges.low(h0);
    int high = 3 * (edges.forward(h0) ? edges.to(h0) : edges.from(h0));
    double[] axis = {x[high] - x[low], x[high + 1] - x[low + 1], x[high + 2] - x[low + 2]};
    double[] zero = null;
    double length = Math.sqrt(dot(axis, axis));
    for (int i = 0; i < angle.length; i++) {
      int c = 3 * edges.opposite(edges.half(e, i));
      double[] r = {x[c] - x[low], x[c + 1] - x[low + 1], x[c + 2] - x[low + 2]};
      double[] normal = cross(axis, r);
      zero = zero == null ? normal : zero;
      angle[i] = StrictMath.atan2(dot(cross(zero, normal), axis) / length, dot(zero, normal));
    }
  }

  private static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  /** One vertex for each set of corners; the first set of a vertex keeps its index. */
  private TriMesh rebuild() {
    int[] tri = mesh.tri();
    int[] vertexOfSet = new int[tri.length];
    boolean[] taken = new boolean[mesh.vertexCount()];
    double[] xyz = mesh.xyz();
    int n = mesh.vertexCount();
    for (int c = 0; c < tri.length; c++) {
      if (corners.find(c) != c) {
        continue;
      }
      int v = tri[c];
      if (!taken[v]) {
        taken[v] = true;
        vertexOfSet[c] = v;
      } else {
        if (3 * n == xyz.length) {
          xyz = Arrays.copyOf(xyz, xyz.length + xyz.length / 3 / 2 * 3 + 3);
        }
        System.arraycopy(xyz, 3 * v, xyz, 3 * n, 3);
        vertexOfSet[c] = n++;
      }
    }
    int[] out = new int[tri.length];
    Arrays.setAll(out, c -> vertexOfSet[corners.find(c)]);
    return new TriMesh(Arrays.copyOf(xyz, 3 * n), out);
  }
}
