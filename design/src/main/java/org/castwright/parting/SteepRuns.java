package org.castwright.parting;

/**
 * The edges of a seam that climb more steeply than the sheet should: along an almost upright wall
 * the seam of the bare facets may run up and down every facet, and the sheet beside it would have
 * to follow.
 */
final class SteepRuns {

  /** Climbs lower than this do no harm, mm. */
  private static final double CLIMB_MM = 1;

  /** How often an edge is marked, mm. */
  private static final double MARK_MM = 1.5;

  private SteepRuns() {}

  /** The sum of the climbs of steep edges, mm; marks the edges as hot if asked. */
  static double of(Seam seam, double slope, HotSpots hot) {
    double sum = 0;
    double[] p = seam.plan;
    for (int e = 0; e < seam.size(); e++) {
      int a = seam.planFrom(e);
      int b = seam.planTo(e);
      double l = Math.hypot(p[2 * b] - p[2 * a], p[2 * b + 1] - p[2 * a + 1]);
      double climb = Math.abs(seam.z(e, 1) - seam.z(e, 0));
      if (climb < CLIMB_MM || climb <= slope * l) {
        continue;
      }
      sum += climb;
      int n = 1 + (int) (l / MARK_MM);
      for (int i = 0; hot != null && i <= n; i++) {
        double t = (double) i / n;
        hot.add(
            p[2 * a] + t * (p[2 * b] - p[2 * a]), p[2 * a + 1] + t * (p[2 * b + 1] - p[2 * a + 1]));
      }
    }
    return sum;
  }
}
