package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;

/**
 * Picks places far apart: each next one is the free place farthest from those picked (the farthest-
 * point heuristic of Gonzalez, Theoretical Computer Science 38, 1985, within twice the best
 * spread).
 */
final class Spread {

  private Spread() {}

  /**
   * @param places to choose from
   * @param count wanted; fewer come back when places run out
   * @param apart least distance between two picks, mm
   */
  static List<double[]> pick(List<double[]> places, int count, double apart) {
    List<double[]> picked = new ArrayList<>();
    if (places.isEmpty()) {
      return picked;
    }
    picked.add(farthestFromCenter(places));
    while (picked.size() < count) {
      double[] best = null;
      double bestDistance = apart;
      for (double[] p : places) {
        double d = nearest(p, picked);
        if (d > bestDistance) {
          bestDistance = d;
          best = p;
        }
      }
      if (best == null) {
        break;
      }
      picked.add(best);
    }
    return picked;
  }

  /** Distance from a place to the nearest of others; infinite when there are none. */
  static double nearest(double[] p, List<double[]> others) {
    double d = Double.POSITIVE_INFINITY;
    for (double[] q : others) {
      d = Math.min(d, Math.hypot(p[0] - q[0], p[1] - q[1]));
    }
    return d;
  }

  private static double[] farthestFromCenter(List<double[]> places) {
    double cx = 0;
    double cy = 0;
    for (double[] p : places) {
      cx += p[0] / places.size();
      cy += p[1] / places.size();
    }
    double[] best = places.get(0);
    for (double[] p : places) {
      if (Math.hypot(p[0] - cx, p[1] - cy) > Math.hypot(best[0] - cx, best[1] - cy) + 1e-9) {
        best = p;
      }
    }
    return best;
  }
}
