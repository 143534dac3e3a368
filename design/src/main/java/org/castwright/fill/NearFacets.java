package org.castwright.fill;

import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FacetDistance;
import org.castwright.mesh.TriMesh;

/**
 * The facet of a mesh that a point lies on: facets are sorted into a grid of cells by their boxes,
 * each grown by the distance that still counts as touching.
 */
final class NearFacets {

  /** Cells along the longest side at most; facets of scans are about this small. */
  private static final int MOST_CELLS = 96;

  private final TriMesh mesh;
  private final double within;
  private final double[] low = new double[3];
  private final int[] count = new int[3];
  private final double cell;
  private final int[] start;
  private final int[] facets;

  /**
   * @param within distance that still counts as touching, mm
   */
  NearFacets(TriMesh mesh, double within) {
    this.mesh = mesh;
    this.within = within;
    Box3 box = mesh.bounds();
    double[] lo = {box.min().x(), box.min().y(), box.min().z()};
    double[] hi = {box.max().x(), box.max().y(), box.max().z()};
    int along = (int) Math.max(1, Math.min(MOST_CELLS, Math.cbrt(4.0 * mesh.triangleCount())));
    cell = (box.longestSide() + 4 * within) / along;
    for (int k = 0; k < 3; k++) {
      low[k] = lo[k] - 2 * within;
      count[k] = (int) ((hi[k] + 2 * within - low[k]) / cell) + 1;
    }
    start = new int[count[0] * count[1] * count[2] + 1];
    each((c, f) -> start[c + 1]++);
    for (int c = 0; c + 1 < start.length; c++) {
      start[c + 1] += start[c];
    }
    facets = new int[start[start.length - 1]];
    int[] next = start.clone();
    each((c, f) -> facets[next[c]++] = f);
  }

  private interface Visit {
    void at(int cell, int facet);
  }

  private void each(Visit visit) {
    double[] x = mesh.xyz();
    int[] t = mesh.tri();
    int[] from = new int[3];
    int[] to = new int[3];
    for (int f = 0; f < mesh.triangleCount(); f++) {
      for (int k = 0; k < 3; k++) {
        double a = x[3 * t[3 * f] + k];
        double b = x[3 * t[3 * f + 1] + k];
        double c = x[3 * t[3 * f + 2] + k];
        from[k] = index(Math.min(a, Math.min(b, c)) - within, k);
        to[k] = index(Math.max(a, Math.max(b, c)) + within, k);
      }
      for (int i = from[0]; i <= to[0]; i++) {
        for (int j = from[1]; j <= to[1]; j++) {
          for (int k = from[2]; k <= to[2]; k++) {
            visit.at((i * count[1] + j) * count[2] + k, f);
          }
        }
      }
    }
  }

  private int index(double v, int k) {
    return Math.max(0, Math.min(count[k] - 1, (int) Math.floor((v - low[k]) / cell)));
  }

  /** The nearest facet that a point touches, or -1. */
  int at(Vec3 p) {
    double[] q = {p.x(), p.y(), p.z()};
    int c = 0;
    for (int k = 0; k < 3; k++) {
      if (q[k] < low[k] || q[k] > low[k] + count[k] * cell) {
        return -1;
      }
      c = c * count[k] + index(q[k], k);
    }
    int best = -1;
    double least = within * within;
    for (int i = start[c]; i < start[c + 1]; i++) {
      double d = FacetDistance.squared(mesh, facets[i], p);
      if (d <= least && (best < 0 || d < least)) {
        least = d;
        best = facets[i];
      }
    }
    return best;
  }
}
