package org.castwright.parting;

import java.util.Arrays;
import org.castwright.mesh.IntList;

/**
 * Heights for the free nodes of a triangulated sheet: a membrane (cotangent Laplace operator,
 * Pinkall and Polthier 1993) through the seam and the wall, kept inside the slope cones of both
 * (McShane 1934: the steepest and shallowest functions of a given slope through given points).
 * Where two given heights are too far apart for the slope, the cones cross and the membrane may use
 * what lies between: the limit gives way there and nowhere else. Close to the seam a spring pulls
 * each node to the height of the nearest seam node, so the sheet leaves the casting level: the
 * land.
 */
final class SheetHeights {

  /** Paths along triangle edges are this much longer than straight ones, at most about. */
  private static final double EDGE_DETOUR = 1.1;

  private static final double RELAXATION = 1.7;
  private static final int MAX_SWEEPS = 400;

  /** Heights that still change by less are done, mm. */
  private static final double SETTLED_MM = 2e-4;

  /** The least weight of an edge, so that obtuse triangles cannot push a node away. */
  private static final double MIN_WEIGHT = 1e-3;

  /** Strength of the land's spring at the seam, as a multiple of the membrane's own pull. */
  private static final double LAND_STRENGTH = 3;

  private final double[] xy;
  private final byte[] kind;
  private final double[] z;
  private int[] start;
  private int[] neighbor;
  private double[] weight;
  private double[] length;

  /**
   * @param use which triangles belong to the sheet; the others carry no height
   * @param z heights at the start; free ones are overwritten by {@link #solve}
   */
  SheetHeights(Triangulation t, boolean[] use, byte[] kind, double[] z) {
    this.xy = t.xy;
    this.kind = kind;
    this.z = z;
    connect(t.tri, use);
  }

  private void connect(int[] tri, boolean[] use) {
    EdgeMap index = new EdgeMap(tri.length);
    IntList ends = new IntList();
    DoubleList weights = new DoubleList();
    for (int c = 0; c < tri.length; c++) {
      if (!use[c / 3]) {
        continue;
      }
      int a = tri[c];
      int b = tri[Neighbors.next(c)];
      int o = tri[Neighbors.previous(c)];
      double w = cotangent(a, b, o) / 2;
      int e = index.get(EdgeMap.both(a, b));
      if (e < 0) {
        index.put(EdgeMap.both(a, b), weights.size());
        ends.add(a);
        ends.add(b);
        weights.add(w);
      } else {
        weights.set(e, weights.get(e) + w);
      }
    }
    arrange(ends, weights);
  }

  /** Puts the edges into compressed rows, one per node. */
  private void arrange(IntList ends, DoubleList weights) {
    start = new int[kind.length + 1];
    for (int k = 0; k < ends.size(); k++) {
      start[ends.get(k) + 1]++;
    }
    for (int i = 0; i < kind.length; i++) {
      start[i + 1] += start[i];
    }
    int[] next = start.clone();
    neighbor = new int[ends.size()];
    weight = new double[ends.size()];
    length = new double[ends.size()];
    for (int k = 0; k < ends.size(); k++) {
      int a = ends.get(k);
      int b = ends.get(k ^ 1);
      int s = next[a]++;
      neighbor[s] = b;
      weight[s] = Math.max(MIN_WEIGHT, weights.get(k / 2));
      length[s] = Math.hypot(xy[2 * a] - xy[2 * b], xy[2 * a + 1] - xy[2 * b + 1]);
    }
  }

  private double cotangent(int a, int b, int o) {
    double ux = xy[2 * a] - xy[2 * o];
    double uy = xy[2 * a + 1] - xy[2 * o + 1];
    double vx = xy[2 * b] - xy[2 * o];
    double vy = xy[2 * b + 1] - xy[2 * o + 1];
    double cross = ux * vy - uy * vx;
    return cross <= 0 ? 0 : (ux * vx + uy * vy) / cross;
  }

  private boolean free(int i) {
    return kind[i] == SheetNodes.FREE && start[i + 1] > start[i];
  }

  /**
   * Finds the free heights.
   *
   * @param lo lower bounds, mm, overwritten
   * @param hi upper bounds, mm, overwritten
   * @param slope the tangent of the steepest slope wanted
   */
  void solve(double[] lo, double[] hi, double slope, double landMm) {
    double[] up = cone(1, slope / EDGE_DETOUR);
    double[] down = cone(-1, slope / EDGE_DETOUR);
    for (int i = 0; i < z.length; i++) {
      double top = Math.max(up[i], down[i]);
      double bottom = Math.min(up[i], down[i]);
      // the casting's own bounds come first where the cones do not reach into them
      hi[i] = Math.max(lo[i], Math.min(hi[i], top));
      lo[i] = Math.min(hi[i], Math.max(lo[i], bottom));
    }
    double[] pull = new double[z.length];
    double[] level = new double[z.length];
    land(landMm, pull, level);
    for (int i = 0; i < z.length; i++) {
      if (free(i)) {
        z[i] = Math.max(lo[i], Math.min(hi[i], z[i]));
      }
    }
    double change = Double.MAX_VALUE;
    for (int s = 0; s < MAX_SWEEPS && change > SETTLED_MM; s++) {
      change = sweep(lo, hi, pull, level);
    }
  }

  /** Moves every free node once; returns the greatest change, mm. */
  private double sweep(double[] lo, double[] hi, double[] pull, double[] level) {
    double change = 0;
    for (int i = 0; i < z.length; i++) {
      if (!free(i)) {
        continue;
      }
      double sum = 0;
      double total = 0;
      for (int k = start[i]; k < start[i + 1]; k++) {
        sum += weight[k] * z[neighbor[k]];
        total += weight[k];
      }
      sum += pull[i] * total * level[i];
      total += pull[i] * total;
      double h = z[i] + RELAXATION * (sum / total - z[i]);
      h = Math.max(lo[i], Math.min(hi[i], h));
      change = Math.max(change, Math.abs(h - z[i]));
      z[i] = h;
    }
    return change;
  }

  /** The cone above (sign 1) or below (sign -1) all given heights. */
  private double[] cone(int sign, double slope) {
    double[] u = new double[z.length];
    Arrays.fill(u, Double.MAX_VALUE);
    DistanceHeap heap = new DistanceHeap();
    for (int i = 0; i < z.length; i++) {
      if (kind[i] != SheetNodes.FREE && start[i + 1] > start[i]) {
        u[i] = sign * z[i];
        heap.push(u[i], i);
      }
    }
    while (!heap.isEmpty()) {
      double key = heap.topKey();
      int i = heap.pop();
      if (key > u[i]) {
        continue;
      }
      for (int k = start[i]; k < start[i + 1]; k++) {
        int j = neighbor[k];
        double v = key + slope * length[k];
        if (free(j) && v < u[j]) {
          u[j] = v;
          heap.push(v, j);
        }
      }
    }
    if (sign < 0) {
      for (int i = 0; i < u.length; i++) {
        u[i] = -u[i];
      }
    }
    return u;
  }

  /** Spring and rest height of every node within the land. */
  private void land(double landMm, double[] pull, double[] level) {
    if (landMm <= 0) {
      return;
    }
    double[] d = new double[z.length];
    Arrays.fill(d, Double.MAX_VALUE);
    DistanceHeap heap = new DistanceHeap();
    for (int i = 0; i < z.length; i++) {
      if (kind[i] == SheetNodes.SEAM && start[i + 1] > start[i]) {
        d[i] = 0;
        level[i] = z[i];
        heap.push(0, i);
      }
    }
    while (!heap.isEmpty() && heap.topKey() < landMm) {
      double key = heap.topKey();
      int i = heap.pop();
      if (key > d[i]) {
        continue;
      }
      pull[i] = LAND_STRENGTH * (1 - key / landMm);
      for (int k = start[i]; k < start[i + 1]; k++) {
        int j = neighbor[k];
        if (free(j) && key + length[k] < d[j]) {
          d[j] = key + length[k];
          level[j] = level[i];
          heap.push(d[j], j);
        }
      }
    }
  }
}
