package org.castwright.division;

import org.castwright.mesh.IntList;

/**
 * Fewer triangles for a grid of heights: right triangles halved where the heights ask for it
 * (Evans, Kirkpatrick and Townsend, Right-triangulated irregular networks, Algorithmica 30, 2001).
 * Triangles meet edge to edge.
 */
final class SheetMesh {

  /** Side of the squares that are halved; the grid must be a whole number of them. */
  static final int TILE = 32;

  private static final int LEVELS = 10;

  private final double[] h;
  private final double[] scale;
  private final int nx;
  private final int ny;
  private final double tolerance;
  private final double[] error;
  private final IntList out = new IntList();

  private SheetMesh(double[] h, double[] scale, int nx, int ny, double tolerance) {
    this.h = h;
    this.scale = scale;
    this.nx = nx;
    this.ny = ny;
    this.tolerance = tolerance;
    error = new double[h.length];
  }

  /**
   * Triangles, counter-clockwise seen from above, as node numbers.
   *
   * @param scale by which errors at a node count
   * @param tolerance how far a height may be off, mm
   */
  static int[] of(double[] h, double[] scale, int nx, int ny, double tolerance) {
    SheetMesh m = new SheetMesh(h, scale, nx, ny, tolerance);
    for (int level = LEVELS - 1; level >= 0; level--) {
      m.tiles(level, false);
    }
    m.tiles(LEVELS, true);
    return m.out.toArray();
  }

  private void tiles(int level, boolean emit) {
    for (int y = 0; y + TILE < ny; y += TILE) {
      for (int x = 0; x + TILE < nx; x += TILE) {
        int a = y * nx + x;
        int b = a + TILE;
        int c = b + TILE * nx;
        int d = a + TILE * nx;
        visit(a, c, d, level, emit);
        visit(c, a, b, level, emit);
      }
    }
  }

  /** A triangle with hypotenuse a to b and its right angle at c. */
  private void visit(int a, int b, int c, int level, boolean emit) {
    int ax = a % nx;
    int ay = a / nx;
    int cx = c % nx;
    int cy = c / nx;
    boolean leaf = Math.abs(ax - cx) + Math.abs(ay - cy) < 2 && Math.abs(a % nx - b % nx) < 2;
    int mid = leaf ? -1 : (ay + b / nx) / 2 * nx + (ax + b % nx) / 2;
    if (emit) {
      if (leaf || error[mid] <= tolerance) {
        out.add(a);
        out.add(b);
        out.add(c);
        return;
      }
    } else if (leaf) {
      return;
    } else if (level == 0) {
      double e = Math.abs(h[mid] - (h[a] + h[b]) / 2) * scale[mid];
      error[mid] = Math.max(error[mid], e);
      carry(c, a, mid);
      carry(b, c, mid);
      return;
    }
    visit(c, a, mid, level - 1, emit);
    visit(b, c, mid, level - 1, emit);
  }

  /** A triangle is halved where its children are. */
  private void carry(int a, int b, int mid) {
    int m = (a / nx + b / nx) / 2 * nx + (a % nx + b % nx) / 2;
    boolean halves = (a % nx + b % nx) % 2 == 0 && (a / nx + b / nx) % 2 == 0;
    if (halves) {
      error[mid] = Math.max(error[mid], error[m]);
    }
  }
}
