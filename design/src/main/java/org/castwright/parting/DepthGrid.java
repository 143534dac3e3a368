package org.castwright.parting;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * The highest and lowest casting at the nodes of a grid that spans the block's plan, and for nodes
 * outside the casting's shadow the distance to it. Rows are half-open scanlines whose ends are
 * computed alike for both facets of an edge, so the trapped volume of a casting without undercut
 * comes out as zero up to rounding.
 */
final class DepthGrid {

  /** Node spacing wanted, mm: half the finest triangles of the sheet. */
  private static final double STEP_MM = 0.5;

  /** Nodes at most; a large block gets a coarser grid. */
  private static final double MAX_NODES = 1.5e6;

  final double x0;
  final double y0;
  final double gx;
  final double gy;
  final int nx;
  final int ny;
  final double[] upper;
  final double[] lower;

  /** The greatest height allowed for a sheet beside the casting; infinite unless told. */
  final double[] ceiling;

  /** Distance to the nearest node in the shadow, mm, up to 8 % too long; 0 in the shadow. */
  final double[] distance;

  /** Volume outside the casting that neither +z nor -z frees, mm³. */
  final double trappedMm3;

  DepthGrid(TriMesh mesh, BlockBox box) {
    double w = box.x1() - box.x0();
    double h = box.y1() - box.y0();
    double step = Math.max(STEP_MM, Math.sqrt(w * h / MAX_NODES));
    x0 = box.x0();
    y0 = box.y0();
    nx = Math.max(8, (int) Math.ceil(w / step)) + 1;
    ny = Math.max(8, (int) Math.ceil(h / step)) + 1;
    gx = w / (nx - 1);
    gy = h / (ny - 1);
    upper = new double[nx * ny];
    lower = new double[nx * ny];
    Arrays.fill(upper, Double.NEGATIVE_INFINITY);
    Arrays.fill(lower, Double.POSITIVE_INFINITY);
    double[] inside = new double[nx * ny];
    int[] tri = mesh.tri();
    for (int i = 0; i < tri.length; i += 3) {
      raster(mesh.xyz(), tri[i], tri[i + 1], tri[i + 2], inside);
    }
    double sum = 0;
    for (int i = 0; i < nx * ny; i++) {
      if (in(i)) {
        sum += upper[i] - lower[i] - inside[i];
      }
    }
    trappedMm3 = Math.max(0, sum * gx * gy);
    distance = distances();
    ceiling = new double[nx * ny];
    Arrays.fill(ceiling, Double.MAX_VALUE);
  }

  /**
   * Takes as lowest casting of every node the lower end of its topmost run of solid.
   *
   * @param columns of the same casting, that tell of the topmost run
   */
  void keepTopRun(Columns columns) {
    Column c = new Column();
    for (int o = 0; o < nx * ny; o++) {
      if (in(o) && columns.at(x(o), y(o), c)) {
        lower[o] = Math.min(upper[o], c.lower);
      }
    }
  }

  boolean in(int node) {
    return upper[node] > Double.NEGATIVE_INFINITY;
  }

  double x(int node) {
    return x0 + node % nx * gx;
  }

  double y(int node) {
    int row = node / nx;
    return y0 + row * gy;
  }

  /** Whether a node in the shadow has a neighbor outside it. */
  boolean rim(int node) {
    return in(node) && !(in(node - 1) && in(node + 1) && in(node - nx) && in(node + nx));
  }

  /** Whether some node within one and a half steps of the point is outside the shadow. */
  boolean nearOutside(double x, double y) {
    int i0 = (int) Math.floor((x - x0) / gx) - 1;
    int j0 = (int) Math.floor((y - y0) / gy) - 1;
    for (int j = j0; j <= j0 + 3; j++) {
      for (int i = i0; i <= i0 + 3; i++) {
        if (i < 0 || j < 0 || i >= nx || j >= ny || !in(j * nx + i)) {
          return true;
        }
      }
    }
    return false;
  }

  private void raster(double[] v, int a, int b, int c, double[] inside) {
    double ya = v[3 * a + 1];
    double yb = v[3 * b + 1];
    double yc = v[3 * c + 1];
    int j0 = Math.max(0, (int) Math.ceil((Math.min(ya, Math.min(yb, yc)) - y0) / gy));
    int j1 = Math.min(ny - 1, (int) Math.floor((Math.max(ya, Math.max(yb, yc)) - y0) / gy));
    double turn = (v[3 * b] - v[3 * a]) * (yc - ya) - (v[3 * c] - v[3 * a]) * (yb - ya);
    if (turn == 0) {
      return;
    }
    double sign = turn > 0 ? 1 : -1;
    for (int j = j0; j <= j1; j++) {
      double y = y0 + j * gy;
      boolean sa = ya <= y;
      boolean sb = yb <= y;
      boolean sc = yc <= y;
      if (sa == sb && sb == sc) {
        continue;
      }
      int lone = sb == sc ? a : sa == sc ? b : c;
      double p = Columns.crossing(v, lone, lone == a ? b : a, y);
      double q = Columns.crossing(v, lone, lone == c ? b : c, y);
      int i0 = Math.max(0, (int) Math.ceil((Math.min(p, q) - x0) / gx));
      int i1 = Math.min(nx - 1, (int) Math.ceil((Math.max(p, q) - x0) / gx) - 1);
      for (int i = i0; i <= i1; i++) {
        double z = Columns.height(v, a, b, c, x0 + i * gx, y);
        int o = j * nx + i;
        upper[o] = Math.max(upper[o], z);
        lower[o] = Math.min(lower[o], z);
        inside[o] += sign * z;
      }
    }
  }

  /** Two sweeps of a distance that steps along rows, columns and diagonals (chamfer distance). */
  private double[] distances() {
    double[] d = new double[nx * ny];
    for (int i = 0; i < d.length; i++) {
      d[i] = in(i) ? 0 : Double.MAX_VALUE;
    }
    double diagonal = Math.hypot(gx, gy);
    for (int j = 0; j < ny; j++) {
      for (int i = 0; i < nx; i++) {
        step(d, i, j, -1, 0, gx);
        step(d, i, j, 0, -1, gy);
        step(d, i, j, -1, -1, diagonal);
        step(d, i, j, 1, -1, diagonal);
      }
    }
    for (int j = ny - 1; j >= 0; j--) {
      for (int i = nx - 1; i >= 0; i--) {
        step(d, i, j, 1, 0, gx);
        step(d, i, j, 0, 1, gy);
        step(d, i, j, 1, 1, diagonal);
        step(d, i, j, -1, 1, diagonal);
      }
    }
    return d;
  }

  private void step(double[] d, int i, int j, int di, int dj, double length) {
    int a = i + di;
    int b = j + dj;
    if (a >= 0 && b >= 0 && a < nx && b < ny) {
      int o = j * nx + i;
      d[o] = Math.min(d[o], d[b * nx + a] + length);
    }
  }
}
