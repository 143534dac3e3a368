package org.castwright.heat;

import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;

/**
 * The grid: equal cells over a box, with one layer of air all round. Cell (i, j, k) has the index
 * {@code (k · ny + j) · nx + i}; those of the box run from 1 to n − 2 along each axis.
 *
 * @param min least corner of the box, mm
 * @param dx size of a cell along x, mm
 * @param nx cells along x, air included
 */
record Cells(Vec3 min, double dx, double dy, double dz, int nx, int ny, int nz) {

  /** Air on both sides. */
  private static final int AROUND = 2;

  /** An array of doubles for each cell is still reasonable. */
  private static final int MOST = 50_000_000;

  /**
   * The grid over a box with about that many cells, as near to cubes as whole numbers allow.
   *
   * @throws IllegalArgumentException if the box is empty or the number too large or small
   */
  static Cells over(Box3 box, int cells) {
    Vec3 s = box.size();
    if (!(s.x() > 0 && s.y() > 0 && s.z() > 0)) {
      throw new IllegalArgumentException("the block has no volume: " + box);
    }
    double edge = Math.cbrt(box.volume() / cells);
    return over(box, count(s.x(), edge), count(s.y(), edge), count(s.z(), edge));
  }

  /** The grid over a box with these numbers of cells along its sides. */
  static Cells over(Box3 box, int x, int y, int z) {
    if (x < 1 || y < 1 || z < 1 || (double) x * y * z > MOST) {
      throw new IllegalArgumentException("a grid of " + x + " by " + y + " by " + z + " cells");
    }
    Vec3 s = box.size();
    return new Cells(
        box.min(), s.x() / x, s.y() / y, s.z() / z, x + AROUND, y + AROUND, z + AROUND);
  }

  private static int count(double side, double edge) {
    return Math.max(1, (int) Math.round(side / edge));
  }

  int size() {
    return nx * ny * nz;
  }

  /** Cells of the box, without the air round it. */
  int inside() {
    return (nx - AROUND) * (ny - AROUND) * (nz - AROUND);
  }

  /** Distance in the index of neighbors along an axis. */
  int stride(int axis) {
    return axis == 0 ? 1 : axis == 1 ? nx : nx * ny;
  }

  double edge(int axis) {
    return axis == 0 ? dx : axis == 1 ? dy : dz;
  }

  int count(int axis) {
    return axis == 0 ? nx : axis == 1 ? ny : nz;
  }

  double volumeMm3() {
    return dx * dy * dz;
  }

  double meanEdgeMm() {
    return Math.cbrt(volumeMm3());
  }

  /** The middle of a cell, mm. */
  Vec3 middle(int cell) {
    int i = cell % nx;
    int j = cell / nx % ny;
    int k = cell / (nx * ny);
    return min.plus(new Vec3((i - 0.5) * dx, (j - 0.5) * dy, (k - 0.5) * dz));
  }

  /** A coordinate in cells: whole at the middle of a cell, equal to the cell's place there. */
  double inCells(int axis, double mm) {
    double from = axis == 0 ? min.x() : axis == 1 ? min.y() : min.z();
    return (mm - from) / edge(axis) + 0.5;
  }
}
