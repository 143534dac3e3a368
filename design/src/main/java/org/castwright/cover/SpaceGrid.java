package org.castwright.cover;

import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.survey.Raster;
import org.castwright.survey.SolidCells;

/**
 * A grid of cubic cells over a casting and the space round it; a cell is solid when its center lies
 * inside the casting. Inside is told by signed crossings along z, so shells that overlap are
 * counted as one solid.
 */
final class SpaceGrid {

  // off round numbers, so that no center lies on a wall of a model in round millimeters
  private static final Vec3 OFF = new Vec3(0.3137, 0.3719, 0.3401);

  private final double x0;
  private final double y0;
  private final double z0;
  private final double cell;
  private final int nx;
  private final int ny;
  private final int nz;
  private final boolean[] solid;

  /**
   * @param cell side of a cell, mm
   * @param margin how far the grid reaches past the casting's box at least, mm
   */
  SpaceGrid(TriMesh mesh, double cell, double margin) {
    this.cell = cell;
    Box3 box = mesh.bounds();
    Vec3 size = box.size();
    Vec3 low = box.min().minus(new Vec3(margin, margin, margin)).minus(OFF.times(cell));
    nx = count(size.x() + 2 * margin);
    ny = count(size.y() + 2 * margin);
    nz = count(size.z() + 2 * margin);
    x0 = low.x() + cell / 2;
    y0 = low.y() + cell / 2;
    z0 = low.z() + cell / 2;
    solid = SolidCells.of(mesh, new Raster(x0, y0, cell, nx, ny), z0, nz);
  }

  private int count(double length) {
    return (int) Math.ceil(length / cell) + 1;
  }

  int size() {
    return solid.length;
  }

  int nx() {
    return nx;
  }

  int ny() {
    return ny;
  }

  int nz() {
    return nz;
  }

  double cell() {
    return cell;
  }

  boolean solid(int c) {
    return solid[c];
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

  /** The cell that holds a point; points outside belong to the nearest cell of the rim. */
  int at(double x, double y, double z) {
    int i = clamp((x - x0) / cell, nx);
    int j = clamp((y - y0) / cell, ny);
    int k = clamp((z - z0) / cell, nz);
    return (k * ny + j) * nx + i;
  }

  private static int clamp(double v, int n) {
    return (int) Math.max(0, Math.min(n - 1, Math.floor(v + 0.5)));
  }

  /** Marks the cells whose centers lie closer to the surface than a distance. */
  boolean[] near(TriMesh mesh, double distance) {
    boolean[] near = new boolean[solid.length];
    double[] p = mesh.xyz();
    int[] t = mesh.tri();
    for (int f = 0; f < t.length; f += 3) {
      int a = 3 * t[f];
      int b = 3 * t[f + 1];
      int c = 3 * t[f + 2];
      int[] from = new int[3];
      int[] to = new int[3];
      boolean any = true;
      for (int k = 0; k < 3; k++) {
        double o = k == 0 ? x0 : k == 1 ? y0 : z0;
        int n = k == 0 ? nx : k == 1 ? ny : nz;
        double lo = Math.min(p[a + k], Math.min(p[b + k], p[c + k])) - distance;
        double hi = Math.max(p[a + k], Math.max(p[b + k], p[c + k])) + distance;
        from[k] = (int) Math.max(0, Math.ceil((lo - o) / cell));
        to[k] = (int) Math.min(n - 1, Math.floor((hi - o) / cell));
        any &= from[k] <= to[k];
      }
      if (any) {
        mark(new PointTriangle(p, a, b, c), from, to, distance, near);
      }
    }
    return near;
  }

  private void mark(PointTriangle t, int[] from, int[] to, double distance, boolean[] near) {
    for (int k = from[2]; k <= to[2]; k++) {
      for (int j = from[1]; j <= to[1]; j++) {
        for (int i = from[0]; i <= to[0]; i++) {
          int c = (k * ny + j) * nx + i;
          near[c] |= t.within(x0 + cell * i, y0 + cell * j, z0 + cell * k, distance);
        }
      }
    }
  }
}
