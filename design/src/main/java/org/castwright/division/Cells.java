package org.castwright.division;

import java.util.stream.IntStream;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.survey.Raster;
import org.castwright.survey.SolidCells;

/**
 * A grid of cubic cells that fills a block. A cell is solid when its center lies inside the
 * casting; the rest is the space of the mold.
 */
final class Cells {

  // off round numbers, so that no center lies on a wall of a model in round millimeters
  private static final Vec3 OFF = new Vec3(0.0137, 0.0119, 0.0101);

  private static final int BLURS = 3;

  final double x0;
  final double y0;
  final double z0;
  final double cell;
  final int nx;
  final int ny;
  final int nz;
  final boolean[] solid;

  /**
   * @param casting closed mesh, mm
   * @param block what the grid fills
   * @param cell side of a cell, mm
   */
  Cells(TriMesh casting, Box3 block, double cell) {
    this.cell = cell;
    nx = (int) Math.ceil(block.size().x() / cell);
    ny = (int) Math.ceil(block.size().y() / cell);
    nz = (int) Math.ceil(block.size().z() / cell);
    Vec3 low = block.center().minus(new Vec3(nx - 1, ny - 1, nz - 1).times(cell / 2));
    x0 = low.x() + OFF.x() * cell;
    y0 = low.y() + OFF.y() * cell;
    z0 = low.z() + OFF.z() * cell;
    solid = SolidCells.of(casting, new Raster(x0, y0, cell, nx, ny), z0, nz);
    distance = distances();
    soft = soft();
  }

  /** Distance of a cell's center from the nearest solid cell's, mm, by steps to 26 neighbors. */
  private final float[] distance;

  /** How solid it is round a cell, 0 to 1: the casting blurred by about a cell. */
  private final float[] soft;

  /** The distance to the casting about a point, mm, to within a cell. */
  double near(Vec3 p) {
    int i = (int) Math.max(0, Math.min(nx - 1, Math.rint((p.x() - x0) / cell)));
    int j = (int) Math.max(0, Math.min(ny - 1, Math.rint((p.y() - y0) / cell)));
    int k = (int) Math.max(0, Math.min(nz - 1, Math.rint((p.z() - z0) / cell)));
    return distance[(k * ny + j) * nx + i];
  }

  /** Where an x lies among the centers of cells, counted from the first, with one beyond it. */
  double alongX(double x) {
    return along(x - x0, nx);
  }

  /** As {@link #alongX}. */
  double alongY(double y) {
    return along(y - y0, ny);
  }

  /** As {@link #alongX}. */
  double alongZ(double z) {
    return along(z - z0, nz);
  }

  private double along(double fromFirst, int count) {
    return Math.max(0, Math.min(count - 1.001, fromFirst / cell));
  }

  private float[] distances() {
    float[] d = new float[solid.length];
    for (int c = 0; c < d.length; c++) {
      d[c] = solid[c] ? 0 : Float.MAX_VALUE / 2;
    }
    for (int pass = 0; pass < 2; pass++) {
      int sign = pass == 0 ? 1 : -1;
      for (int n = 0; n < d.length; n++) {
        int c = pass == 0 ? n : d.length - 1 - n;
        int i = c % nx;
        int j = c / nx % ny;
        int k = c / (nx * ny);
        for (int a = 0; a < 27 / 2; a++) {
          int di = (a % 3 - 1) * sign;
          int dj = (a / 3 % 3 - 1) * sign;
          int dk = (a / 9 - 1) * sign;
          int p = i + di;
          int q = j + dj;
          int r = k + dk;
          if (p >= 0 && q >= 0 && r >= 0 && p < nx && q < ny && r < nz) {
            float step = (float) (cell * Math.sqrt(di * di + dj * dj + dk * dk));
            d[c] = Math.min(d[c], d[(r * ny + q) * nx + p] + step);
          }
        }
      }
    }
    return d;
  }

  private float[] soft() {
    float[] in = new float[solid.length];
    for (int c = 0; c < in.length; c++) {
      in[c] = solid[c] ? 1 : 0;
    }
    float[] out = new float[in.length];
    for (int r = 0; r < BLURS; r++) {
      blur(in, out);
      float[] t = in;
      in = out;
      out = t;
    }
    return in;
  }

  private void blur(float[] in, float[] out) {
    int[] steps = steps();
    IntStream.range(0, nz)
        .parallel()
        .forEach(
            layer -> {
              int n = nx * ny;
              for (int c = layer * n; c < (layer + 1) * n; c++) {
                float sum = in[c];
                int count = 1;
                for (int s = 0; s < 6; s++) {
                  if (has(c, s)) {
                    sum += in[c + steps[s]];
                    count++;
                  }
                }
                out[c] = sum / count;
              }
            });
  }

  /** How solid it is round a cell, 0 to 1. */
  float soft(int c) {
    return soft[c];
  }

  /** Out of the casting at a cell, not of unit length; zero where it is solid or open all round. */
  Vec3 outward(int c) {
    int[] steps = steps();
    double[] g = new double[3];
    for (int s = 0; s < 6; s++) {
      double there = has(c, s) ? soft[c + steps[s]] : soft[c];
      g[s / 2] += (s % 2 == 0 ? 1 : -1) * there;
    }
    return new Vec3(g[0], g[1], g[2]);
  }

  int size() {
    return solid.length;
  }

  double x(int c) {
    return x0 + cell * (c % nx);
  }

  double y(int c) {
    return y0 + cell * (c / nx % ny);
  }

  double z(int c) {
    int layer = c / (nx * ny);
    return z0 + cell * layer;
  }

  /** Steps to the six neighbors. */
  int[] steps() {
    return new int[] {-1, 1, -nx, nx, -nx * ny, nx * ny};
  }

  /** Whether the neighbor at step {@code s} of {@link #steps} lies inside the grid. */
  boolean has(int c, int s) {
    int i = c % nx;
    int j = c / nx % ny;
    int k = c / (nx * ny);
    return switch (s) {
      case 0 -> i > 0;
      case 1 -> i + 1 < nx;
      case 2 -> j > 0;
      case 3 -> j + 1 < ny;
      case 4 -> k > 0;
      default -> k + 1 < nz;
    };
  }
}
