package org.castwright.parting;

import java.util.Arrays;
import org.castwright.mesh.IntList;

/**
 * The seam: the edges of a casting between an upper and a lower facet, and their image in the
 * plane. Edge {@code e} runs from vertex {@code from[e]} to {@code to[e]} as the upper facet has
 * it, so seen from above the casting is on its left. Vertices of the seam that project to one place
 * (within {@link #CLUSTER_MM}) share a plan point.
 */
final class Seam {

  /** Vertices closer than this in plan are one plan point, mm; some tens of float steps. */
  static final double CLUSTER_MM = 2e-4;

  final Labeled casting;
  final int[] from;
  final int[] to;

  /** Plan point of a casting vertex, or -1 if it is not on the seam. */
  final int[] planOf;

  /** Plan points, packed x y. */
  final double[] plan;

  /**
   * The casting's vertices over plan point p are {@code over[overStart[p] .. overStart[p + 1]]}.
   */
  final int[] overStart;

  final int[] over;

  private Seam(Labeled casting, int[] from, int[] to) {
    this.casting = casting;
    this.from = from;
    this.to = to;
    double[] v = casting.mesh().xyz();
    planOf = new int[v.length / 3];
    Arrays.fill(planOf, -1);
    DoubleList points = new DoubleList();
    PlanClusters clusters = new PlanClusters(CLUSTER_MM, points, from.length);
    for (int e = 0; e < from.length; e++) {
      for (int p : new int[] {from[e], to[e]}) {
        if (planOf[p] < 0) {
          planOf[p] = clusters.pointAt(v[3 * p], v[3 * p + 1]);
        }
      }
    }
    plan = points.toArray();
    overStart = new int[plan.length / 2 + 1];
    over = group();
  }

  /** The seam between the sides of a casting. */
  static Seam of(Labeled casting) {
    int[] tri = casting.mesh().tri();
    byte[] side = casting.side();
    int[] across = Neighbors.of(tri);
    IntList from = new IntList();
    IntList to = new IntList();
    for (int c = 0; c < tri.length; c++) {
      if (side[c / 3] == Sides.UPPER && side[across[c]] == Sides.LOWER) {
        from.add(tri[c]);
        to.add(tri[Neighbors.next(c)]);
      }
    }
    return new Seam(casting, from.toArray(), to.toArray());
  }

  private int[] group() {
    int n = 0;
    for (int p : planOf) {
      if (p >= 0) {
        overStart[p + 1]++;
        n++;
      }
    }
    for (int i = 1; i < overStart.length; i++) {
      overStart[i] += overStart[i - 1];
    }
    int[] next = overStart.clone();
    int[] out = new int[n];
    for (int v = 0; v < planOf.length; v++) {
      if (planOf[v] >= 0) {
        out[next[planOf[v]]++] = v;
      }
    }
    return out;
  }

  int size() {
    return from.length;
  }

  int planPoints() {
    return plan.length / 2;
  }

  int planFrom(int e) {
    return planOf[from[e]];
  }

  int planTo(int e) {
    return planOf[to[e]];
  }

  /** Whether the edge projects to a point. */
  boolean vertical(int e) {
    return planFrom(e) == planTo(e);
  }

  /** Number of casting vertices over a plan point. */
  int heights(int p) {
    return overStart[p + 1] - overStart[p];
  }

  /** The middle of the heights over a plan point, mm. */
  double z(int p) {
    double[] v = casting.mesh().xyz();
    double lo = Double.POSITIVE_INFINITY;
    double hi = Double.NEGATIVE_INFINITY;
    for (int i = overStart[p]; i < overStart[p + 1]; i++) {
      lo = Math.min(lo, v[3 * over[i] + 2]);
      hi = Math.max(hi, v[3 * over[i] + 2]);
    }
    return (lo + hi) / 2;
  }

  /** Height along edge e at share t of its length. */
  double z(int e, double t) {
    double[] v = casting.mesh().xyz();
    return v[3 * from[e] + 2] * (1 - t) + v[3 * to[e] + 2] * t;
  }
}
