package org.castwright.parting;

import java.util.function.DoubleBinaryOperator;

/**
 * A rough sheet on the grid of depths: a membrane at the wall's height that keeps between the
 * lowest and the highest casting in the shadow and inside slope cones beside it. It tells the band
 * cut where to cross near-vertical walls and the triangulated sheet where to start; its own cells
 * are too coarse to cut with. Solved coarse to fine by successive over-relaxation with projection.
 */
final class GridSheet implements DoubleBinaryOperator {

  private static final int[] STRIDES = {8, 4, 2, 1};
  private static final int COARSE_SWEEPS = 200;
  private static final int FINE_SWEEPS = 40;
  private static final double RELAXATION = 1.6;

  /** Share of the gap between lower and upper casting kept free on each side. */
  private static final double GAP_SHARE = 0.25;

  /** Distances along the grid are up to 8 % too long, so cones are drawn that much flatter. */
  private static final double GRID_DETOUR = 1.08;

  private final DepthGrid grid;
  private final double[] lo;
  private final double[] hi;
  private double[] h;

  GridSheet(DepthGrid grid, double wall, double ringMm, double slope) {
    this.grid = grid;
    int n = grid.nx * grid.ny;
    hi = cone(1, slope / GRID_DETOUR);
    lo = cone(-1, slope / GRID_DETOUR);
    for (int i = 0; i < n; i++) {
      if (grid.in(i)) {
        double gap = grid.upper[i] - grid.lower[i];
        lo[i] = grid.lower[i] + GAP_SHARE * gap;
        hi[i] = grid.upper[i] - GAP_SHARE * gap;
      } else if (lo[i] > hi[i]) {
        lo[i] = (lo[i] + hi[i]) / 2;
        hi[i] = lo[i];
      }
      if (!grid.in(i) && grid.ceiling[i] < hi[i]) {
        hi[i] = grid.ceiling[i];
        lo[i] = Math.min(lo[i], hi[i]);
      }
    }
    int before = 0;
    for (int stride : STRIDES) {
      h = level(stride, before, wall, ringMm);
      before = stride;
    }
  }

  private static int nodes(int n, int stride) {
    return (n - 2) / stride + 2;
  }

  private double[] level(int stride, int before, double wall, double ringMm) {
    int nx = nodes(grid.nx, stride);
    int ny = nodes(grid.ny, stride);
    double[] z = new double[nx * ny];
    int[] node = new int[nx * ny];
    boolean[] fixed = new boolean[nx * ny];
    for (int j = 0; j < ny; j++) {
      for (int i = 0; i < nx; i++) {
        int o = j * nx + i;
        int gi = Math.min(i * stride, grid.nx - 1);
        int gj = Math.min(j * stride, grid.ny - 1);
        node[o] = gj * grid.nx + gi;
        double edge =
            Math.min(
                Math.min(gi, grid.nx - 1 - gi) * grid.gx, Math.min(gj, grid.ny - 1 - gj) * grid.gy);
        fixed[o] = edge < ringMm && !grid.in(node[o]);
        double start = before == 0 || fixed[o] ? wall : coarse(before, gi, gj);
        z[o] = fixed[o] ? wall : Math.max(lo[node[o]], Math.min(hi[node[o]], start));
      }
    }
    int sweeps = before == 0 ? COARSE_SWEEPS : FINE_SWEEPS;
    for (int s = 0; s < sweeps; s++) {
      for (int j = 1; j < ny - 1; j++) {
        for (int o = j * nx + 1; o < j * nx + nx - 1; o++) {
          if (!fixed[o]) {
            double mean = (z[o - 1] + z[o + 1] + z[o - nx] + z[o + nx]) / 4;
            double v = z[o] + RELAXATION * (mean - z[o]);
            z[o] = Math.max(lo[node[o]], Math.min(hi[node[o]], v));
          }
        }
      }
    }
    return z;
  }

  private double coarse(int stride, int gi, int gj) {
    return bilinear(h, nodes(grid.nx, stride), nodes(grid.ny, stride), gi, gj, stride);
  }

  private static double bilinear(double[] z, int nx, int ny, double gi, double gj, int stride) {
    int i = Math.max(0, Math.min(nx - 2, (int) (gi / stride)));
    int j = Math.max(0, Math.min(ny - 2, (int) (gj / stride)));
    double s = Math.max(0, Math.min(1, gi / stride - i));
    double t = Math.max(0, Math.min(1, gj / stride - j));
    int o = j * nx + i;
    return (z[o] * (1 - s) + z[o + 1] * s) * (1 - t)
        + (z[o + nx] * (1 - s) + z[o + nx + 1] * s) * t;
  }

  /** The sheet's height, mm. */
  @Override
  public double applyAsDouble(double x, double y) {
    return bilinear(h, grid.nx, grid.ny, (x - grid.x0) / grid.gx, (y - grid.y0) / grid.gy, 1);
  }

  /** The least (sign 1) or greatest (sign -1) height that the shadow allows, node by node. */
  private double[] cone(int sign, double slope) {
    int nx = grid.nx;
    int ny = grid.ny;
    double[] u = new double[nx * ny];
    for (int i = 0; i < u.length; i++) {
      u[i] = grid.in(i) ? (sign > 0 ? grid.upper[i] : -grid.lower[i]) : Double.MAX_VALUE;
    }
    double dx = slope * grid.gx;
    double dy = slope * grid.gy;
    double dd = slope * Math.hypot(grid.gx, grid.gy);
    for (int round = 0; round < 2; round++) {
      for (int j = 1; j < ny; j++) {
        for (int i = 1; i < nx - 1; i++) {
          int o = j * nx + i;
          if (!grid.in(o)) {
            double a = Math.min(u[o - 1] + dx, u[o - nx] + dy);
            u[o] = Math.min(u[o], Math.min(a, Math.min(u[o - nx - 1], u[o - nx + 1]) + dd));
          }
        }
      }
      for (int j = ny - 2; j >= 0; j--) {
        for (int i = nx - 2; i > 0; i--) {
          int o = j * nx + i;
          if (!grid.in(o)) {
            double a = Math.min(u[o + 1] + dx, u[o + nx] + dy);
            u[o] = Math.min(u[o], Math.min(a, Math.min(u[o + nx - 1], u[o + nx + 1]) + dd));
          }
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
}
