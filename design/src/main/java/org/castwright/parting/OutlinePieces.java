package org.castwright.parting;

import org.castwright.mesh.IntList;

/**
 * The part of a seam that is true outline, ready to constrain a sheet that runs through the
 * casting: edges are split where they cross, and pieces with casting on their outer side are
 * dropped. A point with more than one height, a crossing or a vertical stretch, gets the middle; so
 * that the error stays local, every edge that ends there gets a node with its exact height close
 * by.
 */
final class OutlinePieces {

  /** A piece with casting this far outside of it is no outline, mm. */
  private static final double OUTSIDE_MM = 0.01;

  /** Casting this far below an edge, just outside of it, is another surface, mm. */
  private static final double STEP_MM = 0.05;

  private static final double SHORT_MM = 1e-3;

  /**
   * Distance from a point of several heights to the first exact one, mm, and its limit as share.
   */
  private static final double CLOSE_MM = 0.05;

  private static final double CLOSE_SHARE = 0.3;

  private final Seam seam;
  private final Columns columns;
  private final SheetNodes nodes;
  private final DoubleList points = new DoubleList();
  private final PlanClusters clusters;
  private final IntList nodeOf = new IntList();
  private final EdgeMap kept;
  private final DoubleList pieces = new DoubleList();

  /** Adds nodes and edges to {@code nodes}. */
  OutlinePieces(Seam seam, Crossings crossings, Columns columns, SheetNodes nodes) {
    this.seam = seam;
    this.columns = columns;
    this.nodes = nodes;
    clusters = new PlanClusters(SHORT_MM, points, seam.planPoints());
    kept = new EdgeMap(seam.size());
    IntList[] cuts = new IntList[seam.size()];
    for (int c = 0; c < crossings.x.size(); c++) {
      note(cuts, crossings.first.get(c), c);
      note(cuts, crossings.second.get(c), c);
    }
    for (int e = 0; e < seam.size(); e++) {
      if (!seam.vertical(e)) {
        split(e, cuts[e], crossings);
      }
    }
  }

  /**
   * Middle and inward normal of every piece kept, packed x y nx ny; for the rim of an overhang the
   * outward normal, too.
   */
  double[] pieces() {
    return pieces.toArray();
  }

  private static void note(IntList[] cuts, int e, int c) {
    if (cuts[e] == null) {
      cuts[e] = new IntList();
    }
    cuts[e].add(c);
  }

  private void split(int e, IntList cuts, Crossings crossings) {
    int n = cuts == null ? 0 : cuts.size();
    int[] order = new int[n];
    double[] at = new double[n];
    for (int i = 0; i < n; i++) {
      int c = cuts.get(i);
      double t = crossings.first.get(c) == e ? crossings.firstAt.get(c) : crossings.secondAt.get(c);
      int k = i;
      while (k > 0 && at[k - 1] > t) {
        at[k] = at[k - 1];
        order[k] = order[k - 1];
        k--;
      }
      at[k] = t;
      order[k] = c;
    }
    double t0 = 0;
    double[] a = point(seam.planFrom(e));
    boolean vague = seam.heights(seam.planFrom(e)) > 1;
    for (int i = 0; i <= n; i++) {
      boolean last = i == n;
      double[] b = last ? point(seam.planTo(e)) : crossing(crossings, order[i]);
      double t1 = last ? 1 : at[i];
      boolean vagueEnd = !last || seam.heights(seam.planTo(e)) > 1;
      piece(e, a, t0, vague, b, t1, vagueEnd);
      a = b;
      t0 = t1;
      vague = true;
    }
  }

  /** A plan point of the seam: x, y and height. */
  private double[] point(int p) {
    return new double[] {seam.plan[2 * p], seam.plan[2 * p + 1], seam.z(p)};
  }

  private double[] crossing(Crossings c, int i) {
    double z1 = seam.z(c.first.get(i), c.firstAt.get(i));
    double z2 = seam.z(c.second.get(i), c.secondAt.get(i));
    return new double[] {(float) c.x.get(i), (float) c.y.get(i), (z1 + z2) / 2};
  }

  private void piece(
      int e, double[] a, double ta, boolean vagueA, double[] b, double tb, boolean vagueB) {
    double dx = b[0] - a[0];
    double dy = b[1] - a[1];
    double l = Math.hypot(dx, dy);
    if (l < SHORT_MM) {
      return;
    }
    double mx = a[0] + dx / 2;
    double my = a[1] + dy / 2;
    Column outside = new Column();
    if (columns.at(mx + OUTSIDE_MM * dy / l, my - OUTSIDE_MM * dx / l, outside)) {
      if (!columns.topRun() || outside.upper > (a[2] + b[2]) / 2 - STEP_MM) {
        return;
      }
      // the rim of an overhang: the sheet drops to what lies below
      for (double v : new double[] {mx, my, dy / l, -dx / l}) {
        pieces.add(v);
      }
    }
    for (double v : new double[] {mx, my, -dy / l, dx / l}) {
      pieces.add(v);
    }
    double share = Math.min(CLOSE_MM / l, CLOSE_SHARE);
    int last = node(a);
    if (vagueA) {
      last = link(last, node(along(e, a, b, share, ta + share * (tb - ta))));
    }
    if (vagueB) {
      last = link(last, node(along(e, a, b, 1 - share, tb - share * (tb - ta))));
    }
    link(last, node(b));
  }

  private double[] along(int e, double[] a, double[] b, double share, double t) {
    return new double[] {
      (float) (a[0] + share * (b[0] - a[0])), (float) (a[1] + share * (b[1] - a[1])), seam.z(e, t)
    };
  }

  private int link(int p, int q) {
    if (p != q && kept.put(EdgeMap.both(p, q), 1) == EdgeMap.NONE) {
      nodes.edge(p, q);
    }
    return q;
  }

  private int node(double[] p) {
    int i = clusters.pointAt(p[0], p[1]);
    if (i == nodeOf.size()) {
      nodeOf.add(nodes.add(p[0], p[1], p[2], SheetNodes.SEAM));
    }
    return nodeOf.get(i);
  }
}
