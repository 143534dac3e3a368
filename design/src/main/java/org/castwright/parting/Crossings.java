package org.castwright.parting;

import org.castwright.mesh.IntList;

/**
 * Where the seam's image in the plane is not a set of simple loops: edges that cross, and edges
 * that lie on one another.
 *
 * <p>Crossing {@code c} lies at {@code x[c], y[c]} on edges {@code first[c]} and {@code second[c]},
 * at shares {@code firstAt[c]} and {@code secondAt[c]} of their lengths.
 */
final class Crossings {

  /** Bin of the search, mm; seam edges are mostly shorter. */
  private static final double CELL_MM = 1;

  final DoubleList x = new DoubleList();

  final DoubleList y = new DoubleList();
  final DoubleList firstAt = new DoubleList();
  final DoubleList secondAt = new DoubleList();
  final IntList first = new IntList();
  final IntList second = new IntList();

  /** Edges that have the same two plan points as an earlier one. */
  final IntList doubled = new IntList();

  Crossings(Seam seam) {
    EdgeMap seen = new EdgeMap(seam.size());
    EdgeMap heads = new EdgeMap(4 * seam.size());
    IntList next = new IntList();
    IntList member = new IntList();
    EdgeMap tried = new EdgeMap(4 * seam.size());
    for (int e = 0; e < seam.size(); e++) {
      if (seam.vertical(e)) {
        continue;
      }
      if (seen.put(EdgeMap.both(seam.planFrom(e), seam.planTo(e)), e) != EdgeMap.NONE) {
        doubled.add(e);
      }
      double[] p = seam.plan;
      int a = seam.planFrom(e);
      int b = seam.planTo(e);
      int i1 = cell(Math.max(p[2 * a], p[2 * b]));
      int j1 = cell(Math.max(p[2 * a + 1], p[2 * b + 1]));
      for (int i = cell(Math.min(p[2 * a], p[2 * b])); i <= i1; i++) {
        for (int j = cell(Math.min(p[2 * a + 1], p[2 * b + 1])); j <= j1; j++) {
          long key = EdgeMap.directed(i & Integer.MAX_VALUE, j & Integer.MAX_VALUE);
          int head = heads.get(key);
          for (int m = head; m >= 0; m = next.get(m)) {
            int o = member.get(m);
            if (o != e && tried.put(EdgeMap.directed(o, e), 1) == EdgeMap.NONE) {
              test(seam, o, e);
            }
          }
          heads.put(key, member.size());
          member.add(e);
          next.add(head);
        }
      }
    }
  }

  private static int cell(double v) {
    return (int) Math.floor(v / CELL_MM);
  }

  /** Crossings and doubled edges together. */
  int faults() {
    return x.size() + doubled.size();
  }

  private void test(Seam seam, int e, int f) {
    int a = seam.planFrom(e);
    int b = seam.planTo(e);
    int c = seam.planFrom(f);
    int d = seam.planTo(f);
    if (a == c || a == d || b == c || b == d) {
      return;
    }
    double[] p = seam.plan;
    double sideC = turn(p, a, b, c);
    double sideD = turn(p, a, b, d);
    double sideA = turn(p, c, d, a);
    double sideB = turn(p, c, d, b);
    if (sideC == 0 && sideD == 0) {
      if (overlap(p, a, b, c, d)) {
        doubled.add(f);
      }
      return;
    }
    if (sideC * sideD > 0 || sideA * sideB > 0 || sideC == sideD || sideA == sideB) {
      return;
    }
    double t = sideA / (sideA - sideB);
    first.add(e);
    second.add(f);
    firstAt.add(t);
    secondAt.add(sideC / (sideC - sideD));
    x.add(p[2 * a] + t * (p[2 * b] - p[2 * a]));
    y.add(p[2 * a + 1] + t * (p[2 * b + 1] - p[2 * a + 1]));
  }

  /** Whether two edges on one line have a stretch in common. */
  private static boolean overlap(double[] p, int a, int b, int c, int d) {
    int k = Math.abs(p[2 * a] - p[2 * b]) > Math.abs(p[2 * a + 1] - p[2 * b + 1]) ? 0 : 1;
    double lo = Math.min(p[2 * a + k], p[2 * b + k]);
    double hi = Math.max(p[2 * a + k], p[2 * b + k]);
    double lo2 = Math.min(p[2 * c + k], p[2 * d + k]);
    double hi2 = Math.max(p[2 * c + k], p[2 * d + k]);
    return Math.max(lo, lo2) < Math.min(hi, hi2);
  }

  /** Twice the signed area of the triangle of three plan points. */
  static double turn(double[] p, int a, int b, int c) {
    return (p[2 * b] - p[2 * a]) * (p[2 * c + 1] - p[2 * a + 1])
        - (p[2 * b + 1] - p[2 * a + 1]) * (p[2 * c] - p[2 * a]);
  }
}
