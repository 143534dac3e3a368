package org.castwright.plan;

import java.util.Arrays;
import org.castwright.geom.Box3;
import org.castwright.mesh.TriMesh;

/**
 * The shadow of a casting on the xy plane and the distance to it, on a square grid. A node is
 * covered when its vertical line meets the casting. Distances come from the exact Euclidean
 * transform of the grid (Felzenszwalb and Huttenlocher, Distance transforms of sampled functions,
 * Theory of Computing 8, 2012) and are right to within one cell.
 */
final class ShadowMap {

  private static final double FAR = 1e12;

  private final double x0;
  private final double y0;
  private final double cell;
  private final int nx;
  private final int ny;
  private final boolean[] covered;
  private final double[] distance;

  private ShadowMap(double x0, double y0, double cell, int nx, int ny) {
    this.x0 = x0;
    this.y0 = y0;
    this.cell = cell;
    this.nx = nx;
    this.ny = ny;
    covered = new boolean[nx * ny];
    distance = new double[nx * ny];
  }

  /** The shadow of {@code casting} on a grid that reaches {@code margin} past its box, mm. */
  static ShadowMap of(TriMesh casting, double margin, double cell) {
    Box3 b = casting.bounds();
    int nx = (int) Math.ceil((b.size().x() + 2 * margin) / cell) + 1;
    int ny = (int) Math.ceil((b.size().y() + 2 * margin) / cell) + 1;
    ShadowMap map = new ShadowMap(b.min().x() - margin, b.min().y() - margin, cell, nx, ny);
    map.cover(casting);
    map.transform();
    return map;
  }

  double cell() {
    return cell;
  }

  int nx() {
    return nx;
  }

  int ny() {
    return ny;
  }

  double x(int i) {
    return x0 + i * cell;
  }

  double y(int j) {
    return y0 + j * cell;
  }

  boolean covered(int i, int j) {
    return covered[j * nx + i];
  }

  /** Distance from node to the nearest covered node, mm; 0 on covered nodes. */
  double distance(int i, int j) {
    return distance[j * nx + i];
  }

  /** Distance from a point to the shadow, mm, to within one cell; outside the grid: of its rim. */
  double distanceAt(double x, double y) {
    int i = (int) Math.round(Math.max(0, Math.min(nx - 1, (x - x0) / cell)));
    int j = (int) Math.round(Math.max(0, Math.min(ny - 1, (y - y0) / cell)));
    return distance[j * nx + i];
  }

  private void cover(TriMesh mesh) {
    double[] v = mesh.xyz();
    int[] t = mesh.tri();
    for (int f = 0; f < t.length; f += 3) {
      int a = 3 * t[f];
      int b = 3 * t[f + 1];
      int c = 3 * t[f + 2];
      double lo = Math.min(v[a + 1], Math.min(v[b + 1], v[c + 1]));
      double hi = Math.max(v[a + 1], Math.max(v[b + 1], v[c + 1]));
      int j0 = Math.max(0, (int) Math.ceil((lo - y0) / cell));
      int j1 = Math.min(ny - 1, (int) Math.floor((hi - y0) / cell));
      for (int j = j0; j <= j1; j++) {
        coverRow(v, a, b, c, j);
      }
    }
  }

  private void coverRow(double[] v, int a, int b, int c, int j) {
    double y = y(j);
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    int[] corner = {a, b, c};
    for (int k = 0; k < 3; k++) {
      int p = corner[k];
      int q = corner[(k + 1) % 3];
      double yp = v[p + 1];
      double yq = v[q + 1];
      if (yp <= y == yq <= y) {
        continue;
      }
      double x = v[p] + (v[q] - v[p]) * ((y - yp) / (yq - yp));
      left = Math.min(left, x);
      right = Math.max(right, x);
    }
    int i0 = Math.max(0, (int) Math.ceil((left - x0) / cell));
    int i1 = Math.min(nx - 1, (int) Math.floor((right - x0) / cell));
    if (i0 <= i1) {
      Arrays.fill(covered, j * nx + i0, j * nx + i1 + 1, true);
    }
  }

  private void transform() {
    double[] squared = new double[nx * ny];
    for (int o = 0; o < squared.length; o++) {
      squared[o] = covered[o] ? 0 : FAR;
    }
    int n = Math.max(nx, ny);
    double[] f = new double[n];
    double[] d = new double[n];
    int[] site = new int[n];
    double[] edge = new double[n + 1];
    for (int i = 0; i < nx; i++) {
      for (int j = 0; j < ny; j++) {
        f[j] = squared[j * nx + i];
      }
      lowerEnvelope(f, ny, d, site, edge);
      for (int j = 0; j < ny; j++) {
        squared[j * nx + i] = d[j];
      }
    }
    for (int j = 0; j < ny; j++) {
      System.arraycopy(squared, j * nx, f, 0, nx);
      lowerEnvelope(f, nx, d, site, edge);
      for (int i = 0; i < nx; i++) {
        distance[j * nx + i] = Math.sqrt(d[i]) * cell;
      }
    }
  }

  /** One pass of the transform: {@code d[q] = min over p of (q - p)² + f[p]}. */
  private static void lowerEnvelope(double[] f, int n, double[] d, int[] site, double[] edge) {
    int k = 0;
    site[0] = 0;
    edge[0] = Double.NEGATIVE_INFINITY;
    edge[1] = Double.POSITIVE_INFINITY;
    for (int q = 1; q < n; q++) {
      double s = meet(f, site[k], q);
      while (s <= edge[k]) {
        k--;
        s = meet(f, site[k], q);
      }
      k++;
      site[k] = q;
      edge[k] = s;
      edge[k + 1] = Double.POSITIVE_INFINITY;
    }
    k = 0;
    for (int q = 0; q < n; q++) {
      while (edge[k + 1] < q) {
        k++;
      }
      double dq = q - site[k];
      d[q] = dq * dq + f[site[k]];
    }
  }

  private static double meet(double[] f, int p, int q) {
    return ((f[q] + (double) q * q) - (f[p] + (double) p * p)) / (2.0 * (q - p));
  }
}
