package org.castwright.seams;

import org.castwright.mesh.TriMesh;

/**
 * Seams as curves across facets. Every vertex has a piece; on each edge between vertices of two
 * pieces the seam crosses at a share {@code t} of the way from the edge's low to its high vertex;
 * inside a facet it runs straight from crossing to crossing, or from three crossings to the point
 * of least distance from them. So moving a crossing or giving a vertex to another piece moves the
 * seam over the surface, and the facets' parts change sides with it.
 */
final class SeamCurve {

  /** Crossings keep this share of the edge away from its ends, so that they never coincide. */
  static final double NEAR_END = 0.002;

  /** A seam begins so near a vertex it is to pass: at most this share of the edge, */
  private static final double START = 0.3;

  /** and at most this far, mm. */
  private static final double START_MM = 0.1;

  /** An edge that a piece cannot have stands for a strip of facets at most this wide, mm. */
  private static final double STRIP_MM = 1;

  final TriMesh mesh;
  final SurfaceEdges edges;

  /** Facet of the {@link FacetFacts} in which each facet lies. */
  final int[] base;

  final byte[] piece;
  final double[] t;
  final double[] least;
  final double[] most;

  /** Surface beside each edge that goes to a piece that cannot have it, mm², roughly. */
  final double[] caught;

  private final FacetFacts facts;
  private final EdgeFreedom freedom;
  private final boolean[] held;
  private final double draftWeight;
  private final double[] area;
  private final double[] p = new double[3];
  private final double[] q = new double[3];
  private final double[] r = new double[3];
  private final double[] meet = new double[3];

  /**
   * Takes vertices' pieces as they stand.
   *
   * @param held vertices through which the seam must go on running, if it does
   */
  SeamCurve(
      Tiling tiling,
      SurfaceEdges edges,
      byte[] piece,
      boolean[] held,
      FacetFacts facts,
      EdgeFreedom freedom,
      double draftWeight) {
    mesh = tiling.mesh;
    base = tiling.parent;
    this.edges = edges;
    this.piece = piece;
    this.held = held;
    this.facts = facts;
    this.freedom = freedom;
    this.draftWeight = draftWeight;
    t = new double[edges.count()];
    least = new double[edges.count()];
    most = new double[edges.count()];
    caught = new double[edges.count()];
    area = new double[base.length];
    for (int f = 0; f < area.length; f++) {
      area[f] = mesh.areaVector(f).length();
    }
  }

  boolean crossed(int e) {
    return piece[edges.low[e]] != piece[edges.high[e]];
  }

  boolean held(int v) {
    return held[v];
  }

  boolean mayHave(int v, int label) {
    return (freedom.atVertex(v) >> label & 1) == 1;
  }

  /** Puts the crossing of an edge near one of its vertices. */
  void begin(int e, int v) {
    double share = Math.min(START, START_MM / edges.length(mesh, e));
    t[e] = edges.low[e] == v ? share : 1 - share;
    limit(e);
  }

  /** Works out anew how far the seam may move along an edge. */
  void limit(int e) {
    int u = edges.low[e];
    int v = edges.high[e];
    double length = edges.length(mesh, e);
    if (!crossed(e)) {
      caught[e] = length * Math.min(length, STRIP_MM) * freedom.lost(e, piece[u]);
      return;
    }
    double from = freedom.from(e, piece[v]);
    double to = freedom.to(e, piece[u]);
    double gap = Math.max(0, from - to);
    caught[e] = length * Math.min(length, STRIP_MM) * gap;
    if (gap > 0) {
      // neither piece may have what lies between, so there the seam is as good as anywhere
      double swap = from;
      from = to;
      to = swap;
    }
    if (held[u] || (!held[v] && to < NEAR_END)) {
      from = 0;
      to = 0;
    } else if (held[v] || from > 1 - NEAR_END) {
      from = 1;
      to = 1;
    }
    if (from < to) {
      from = Math.max(from, NEAR_END);
      to = Math.min(to, 1 - NEAR_END);
      if (from > to) {
        from = (from + to) / 2;
        to = from;
      }
    }
    least[e] = from;
    most[e] = to;
    t[e] = Math.min(to, Math.max(from, t[e]));
  }

  void point(int e, double[] out) {
    double[] v = mesh.xyz();
    int a = 3 * edges.low[e];
    int b = 3 * edges.high[e];
    for (int k = 0; k < 3; k++) {
      out[k] = v[a + k] + (v[b + k] - v[a + k]) * t[e];
    }
  }

  /** Pieces that meet in a facet: 1, 2 or 3. */
  int kinds(int f) {
    byte a = piece[mesh.tri()[3 * f]];
    byte b = piece[mesh.tri()[3 * f + 1]];
    byte c = piece[mesh.tri()[3 * f + 2]];
    return a == b && b == c ? 1 : a == b || b == c || a == c ? 2 : 3;
  }

  /** The corner, 0 to 2, of the vertex that differs from the other two, where two pieces meet. */
  int odd(int f) {
    byte a = piece[mesh.tri()[3 * f]];
    byte b = piece[mesh.tri()[3 * f + 1]];
    byte c = piece[mesh.tri()[3 * f + 2]];
    return b == c ? 0 : a == c ? 1 : 2;
  }

  /** Share of edge {@code e} from vertex v to the crossing. */
  double shareFrom(int v, int e) {
    return edges.low[e] == v ? t[e] : 1 - t[e];
  }

  /** The point of a facet with three pieces from which the seams run to its three edges. */
  void meeting(int f, double[] out) {
    point(edges.of[3 * f], p);
    point(edges.of[3 * f + 1], q);
    point(edges.of[3 * f + 2], r);
    Meeting.of(p, q, r, out);
  }

  /** What the seam in and the pieces of a facet cost. */
  double cost(int f) {
    int kinds = kinds(f);
    int a = mesh.tri()[3 * f];
    if (kinds == 1) {
      return draft(f, piece[a]) * area[f];
    }
    double weight = facts.weight[base[f]];
    if (kinds == 2) {
      int k = odd(f);
      int o = mesh.tri()[3 * f + k];
      int e = edges.of[3 * f + k];
      int g = edges.of[3 * f + (k + 2) % 3];
      point(e, p);
      point(g, q);
      double part = shareFrom(o, e) * shareFrom(o, g);
      int other = mesh.tri()[3 * f + (k + 1) % 3];
      return weight * distance(p, q)
          + area[f] * (part * draft(f, piece[o]) + (1 - part) * draft(f, piece[other]));
    }
    meeting(f, meet);
    double sum = distance(p, meet) + distance(q, meet) + distance(r, meet);
    double drafts = 0;
    for (int k = 0; k < 3; k++) {
      drafts += draft(f, piece[mesh.tri()[3 * f + k]]);
    }
    return weight * sum + area[f] * drafts / 3;
  }

  private double draft(int f, int label) {
    return draftWeight * facts.shortfall(base[f], label);
  }

  /** Where the seam through edge e goes on to in facet f. */
  void beyond(int f, int e, double[] out) {
    if (kinds(f) == 3) {
      meeting(f, out);
      return;
    }
    for (int k = 0; k < 3; k++) {
      int g = edges.of[3 * f + k];
      if (g != e && crossed(g)) {
        point(g, out);
      }
    }
  }

  double weight(int f) {
    return facts.weight[base[f]];
  }

  /** How the cost of draft in facet f changes with t on its edge e. */
  double draftSlope(int f, int e) {
    if (kinds(f) != 2) {
      return 0;
    }
    int k = odd(f);
    int o = mesh.tri()[3 * f + k];
    int other = mesh.tri()[3 * f + (k + 1) % 3];
    int first = edges.of[3 * f + k];
    int g = first == e ? edges.of[3 * f + (k + 2) % 3] : first;
    double sign = edges.low[e] == o ? 1 : -1;
    return sign * area[f] * shareFrom(o, g) * (draft(f, piece[o]) - draft(f, piece[other]));
  }

  static double distance(double[] a, double[] b) {
    double x = a[0] - b[0];
    double y = a[1] - b[1];
    double z = a[2] - b[2];
    return Math.sqrt(x * x + y * y + z * z);
  }
}
