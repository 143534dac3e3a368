package org.castwright.parting;

import org.castwright.mesh.IntList;

/** Finds or makes points of the plane, treating those closer than a radius as one. */
final class PlanClusters {

  private final double radius;
  private final DoubleList points;
  private final EdgeMap heads;
  private final IntList next = new IntList();

  /** Points found are added to {@code points}, packed x y. */
  PlanClusters(double radius, DoubleList points, int expected) {
    this.radius = radius;
    this.points = points;
    heads = new EdgeMap(2 * expected);
  }

  /** The index of the first point within the radius, or of a new one. */
  int pointAt(double x, double y) {
    int found = find(x, y);
    if (found >= 0) {
      return found;
    }
    int p = points.size() / 2;
    points.add(x);
    points.add(y);
    next.add(heads.put(key(Math.round(x / radius), Math.round(y / radius)), p));
    return p;
  }

  /** The index of the first point within the radius, or -1. */
  int find(double x, double y) {
    long i = Math.round(x / radius);
    long j = Math.round(y / radius);
    for (long a = i - 1; a <= i + 1; a++) {
      for (long b = j - 1; b <= j + 1; b++) {
        for (int p = heads.get(key(a, b)); p >= 0; p = next.get(p)) {
          if (Math.hypot(points.get(2 * p) - x, points.get(2 * p + 1) - y) < radius) {
            return p;
          }
        }
      }
    }
    return -1;
  }

  private static long key(long i, long j) {
    return EdgeMap.directed((int) (i & Integer.MAX_VALUE), (int) (j & Integer.MAX_VALUE));
  }
}
