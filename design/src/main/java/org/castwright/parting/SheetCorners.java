package org.castwright.parting;

import java.util.Arrays;
import org.castwright.mesh.IntList;

/**
 * Gives every corner of the sheet its vertex. Most plan points have one. Where the seam runs
 * vertically a plan point has several vertices, one above the other: then the outside sector
 * between two seam edges is shared out between the heights of the two, and the vertical gaps that
 * opens, between neighboring triangles, between a triangle and the seam, and between seam edges
 * that lie on one another, are closed with upright fins.
 */
final class SheetCorners {

  private final Seam seam;
  private final Triangulation plan;
  private final boolean[] outside;
  private final EdgeMap seamAt;
  private final int[] vertex;
  private final IntList sheet = new IntList();
  private boolean resolved = true;

  /**
   * @param seamAt the seam edge over two plan points
   * @param firstFree index of the vertex of plan point 0 if it is not on the seam
   */
  SheetCorners(Seam seam, Triangulation plan, boolean[] outside, EdgeMap seamAt, int firstFree) {
    this.seam = seam;
    this.plan = plan;
    this.outside = outside;
    this.seamAt = seamAt;
    vertex = new int[plan.tri.length];
    Arrays.fill(vertex, -1);
    for (int c = 0; c < vertex.length; c++) {
      if (!outside[c / 3]) {
        continue;
      }
      int p = plan.tri[c];
      if (p >= seam.planPoints()) {
        vertex[c] = firstFree + p;
      } else if (seam.heights(p) == 1) {
        vertex[c] = seam.over[seam.overStart[p]];
      } else if (seamEdge(p, plan.tri[Neighbors.next(c)]) >= 0) {
        sector(c, p);
      }
    }
    for (int c = 0; c < vertex.length && resolved; c++) {
      resolved = !outside[c / 3] || vertex[c] >= 0;
    }
    if (resolved) {
      emit();
    }
  }

  /** Whether every corner found its vertex. */
  boolean resolved() {
    return resolved;
  }

  /** The sheet's triangles, facing up, then the fins. */
  int[] sheet() {
    return sheet.toArray();
  }

  private int seamEdge(int p, int q) {
    return seamAt.get(EdgeMap.both(p, q));
  }

  private int end(int e, int p) {
    return seam.planFrom(e) == p ? seam.from[e] : seam.to[e];
  }

  /**
   * Shares out the sector that starts, counter-clockwise about p, with the triangle of corner c.
   */
  private void sector(int c, int p) {
    IntList corners = new IntList();
    int at = c;
    int last = -1;
    while (last < 0 && at >= 0) {
      corners.add(at);
      int q = plan.tri[Neighbors.previous(at)];
      last = seamEdge(p, q);
      if (last < 0) {
        at = plan.cornerOf(p, q);
      }
    }
    if (last < 0) {
      resolved = false;
      return;
    }
    int a = end(seamEdge(p, plan.tri[Neighbors.next(c)]), p);
    int b = end(last, p);
    int half = a == b ? corners.size() : (corners.size() + 1) / 2;
    for (int i = 0; i < corners.size(); i++) {
      vertex[corners.get(i)] = i < half ? a : b;
    }
  }

  private void emit() {
    for (int t = 0; t < outside.length; t++) {
      if (outside[t]) {
        for (int k = 0; k < 3; k++) {
          sheet.add(vertex[3 * t + k]);
        }
      }
    }
    for (int c = 0; c < vertex.length; c++) {
      if (!outside[c / 3]) {
        continue;
      }
      int n = Neighbors.next(c);
      int e = seamEdge(plan.tri[c], plan.tri[n]);
      if (e >= 0) {
        gap(vertex[c], vertex[n], end(e, plan.tri[n]), end(e, plan.tri[c]));
      } else if (plan.across[c] > c / 3) {
        int o = plan.cornerOf(plan.tri[n], plan.tri[c]);
        gap(vertex[c], vertex[n], vertex[o], vertex[Neighbors.next(o)]);
      }
    }
    doubled();
  }

  /** Closes the gaps between seam edges that share their plan points. */
  private void doubled() {
    for (int e = 0; e < seam.size(); e++) {
      int other = seam.vertical(e) ? e : seamEdge(seam.planFrom(e), seam.planTo(e));
      if (other != e && seam.planFrom(other) == seam.planTo(e)) {
        gap(seam.from[e], seam.to[e], seam.from[other], seam.to[other]);
      }
    }
  }

  /**
   * Closes the upright gap between an edge u to v of the surface and the edge v2 to u2 that should
   * be its mate, u2 over the plan point of u and v2 over that of v.
   */
  private void gap(int u, int v, int v2, int u2) {
    if (u == u2 && v == v2) {
      return;
    }
    int[] left = climb(u, u2);
    int[] right = climb(v2, v);
    for (int i = 0; i + 1 < left.length; i++) {
      fin(v, left[i], left[i + 1]);
    }
    for (int i = 0; i + 1 < right.length; i++) {
      fin(u2, right[i], right[i + 1]);
    }
  }

  private void fin(int a, int b, int c) {
    sheet.add(a);
    sheet.add(b);
    sheet.add(c);
  }

  /** The seam's vertices over one plan point from a to b in the order of their heights. */
  private int[] climb(int a, int b) {
    if (a == b) {
      return new int[] {a};
    }
    int p = a < seam.planOf.length ? seam.planOf[a] : -1;
    if (p < 0) {
      return new int[] {a, b};
    }
    double[] v = seam.casting.mesh().xyz();
    double za = v[3 * a + 2];
    double zb = v[3 * b + 2];
    IntList path = new IntList();
    path.add(a);
    int at = a;
    while (at != b) {
      int best = b;
      for (int i = seam.overStart[p]; i < seam.overStart[p + 1]; i++) {
        int o = seam.over[i];
        double s = Math.signum(zb - za);
        double rise = s * (v[3 * o + 2] - v[3 * at + 2]);
        if (rise > 0 && rise < s * (v[3 * best + 2] - v[3 * at + 2])) {
          best = o;
        }
      }
      path.add(best);
      at = best;
    }
    return path.toArray();
  }
}
