package org.castwright.seams;

import org.castwright.mesh.TriMesh;

/**
 * Turns labels of facets into a {@link SeamCurve}. First splits edges that join two seam vertices
 * without being seam, so that every patch has a vertex of its own; then gives each seam vertex to
 * one of the pieces round it, and lets the seam begin beside it.
 */
final class CurveStart {

  private static final int SPLIT_ROUNDS = 4;

  private CurveStart() {}

  static SeamCurve of(FacetFacts facts, byte[] label, Freedom freedom, SeamOptions options) {
    int n = label.length;
    int[] self = new int[n];
    for (int f = 0; f < n; f++) {
      self[f] = f;
    }
    Tiling tiling = new Tiling(facts.mesh(), self, label);
    SurfaceEdges edges = SurfaceEdges.of(tiling.mesh);
    for (int round = 0; round < SPLIT_ROUNDS; round++) {
      boolean[] split = new boolean[edges.count()];
      if (!mark(tiling, edges, split)) {
        break;
      }
      tiling = tiling.halved(edges, split);
      edges = SurfaceEdges.of(tiling.mesh);
    }
    EdgeFreedom along = new EdgeFreedom(tiling.mesh, edges, tiling.parent, facts.wished, freedom);
    boolean[] held = held(tiling, edges, options.creaseDeg());
    byte[] piece = pieces(tiling, edges, held, along);
    SeamCurve curve =
        new SeamCurve(tiling, edges, piece, held, facts, along, options.draftWeight());
    boolean[] seam = seamVertices(tiling, edges);
    for (int e = 0; e < edges.count(); e++) {
      curve.begin(e, seam[edges.low[e]] ? edges.low[e] : edges.high[e]);
    }
    return curve;
  }

  static boolean seam(Tiling tiling, SurfaceEdges edges, int e) {
    return tiling.label[edges.left[e]] != tiling.label[edges.right[e]];
  }

  static boolean[] seamVertices(Tiling tiling, SurfaceEdges edges) {
    boolean[] on = new boolean[tiling.mesh.vertexCount()];
    for (int e = 0; e < edges.count(); e++) {
      if (seam(tiling, edges, e)) {
        on[edges.low[e]] = true;
        on[edges.high[e]] = true;
      }
    }
    return on;
  }

  private static boolean mark(Tiling tiling, SurfaceEdges edges, boolean[] split) {
    boolean[] on = seamVertices(tiling, edges);
    boolean any = false;
    for (int e = 0; e < split.length; e++) {
      split[e] = on[edges.low[e]] && on[edges.high[e]] && !seam(tiling, edges, e);
      any |= split[e];
    }
    for (int f = 0; f < tiling.label.length; f++) {
      boolean island = true;
      for (int k = 0; k < 3; k++) {
        island &= seam(tiling, edges, edges.of[3 * f + k]);
      }
      for (int k = 0; k < 3 && island; k++) {
        split[edges.of[3 * f + k]] = true;
        any = true;
      }
    }
    return any;
  }

  /** Vertices where the seam passes from sharp edge to sharp edge: it stays in such a crease. */
  private static boolean[] held(Tiling tiling, SurfaceEdges edges, double creaseDeg) {
    TriMesh mesh = tiling.mesh;
    int[] seams = new int[mesh.vertexCount()];
    int[] sharp = new int[mesh.vertexCount()];
    for (int e = 0; e < edges.count(); e++) {
      if (seam(tiling, edges, e)) {
        boolean crease = SeamEnergy.bend(mesh, edges.left[e], edges.right[e]) >= creaseDeg;
        for (int v : new int[] {edges.low[e], edges.high[e]}) {
          seams[v]++;
          sharp[v] += crease ? 1 : 0;
        }
      }
    }
    boolean[] held = new boolean[mesh.vertexCount()];
    for (int v = 0; v < held.length; v++) {
      held[v] = seams[v] > 0 && sharp[v] == seams[v];
    }
    return held;
  }

  private static byte[] pieces(
      Tiling tiling, SurfaceEdges edges, boolean[] held, EdgeFreedom along) {
    int n = tiling.mesh.vertexCount();
    byte[] piece = new byte[n];
    for (int v = 0; v < n; v++) {
      int labels = 0;
      for (int i = edges.start[v]; i < edges.start[v + 1]; i++) {
        labels |= 1 << tiling.label[edges.corner[i] / 3];
      }
      int pick = labels;
      if (!held[v] && Integer.bitCount(labels) > 1 && (labels & along.atVertex(v)) != 0) {
        pick = labels & along.atVertex(v);
      }
      piece[v] = (byte) Integer.numberOfTrailingZeros(pick);
    }
    return piece;
  }
}
