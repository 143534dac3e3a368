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
  private final int nx;
  private final int ny;

  /** How far a height is off if its node is left out with all below it. */
  private final double[] error;

  /** How far it may be, by the strictest of these nodes. */
  private final double[] play;

  private final IntList out = new IntList();

  private SheetMesh(double[] h, double[] play, int nx, int ny) {
    this.h = h;
    this.nx = nx;
    this.ny = ny;
    this.play = play.clone();
    error = new double[h.length];
  }

  /**
   * Triangles, counter-clockwise seen from above, as node numbers.
   *
   * @param play how far the height at a node may be off, mm
   */
  static int[] of(double[] h, double[] play, int nx, int ny) {
    SheetMesh m = new SheetMesh(h, play, nx, ny);
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
      if (leaf || error[mid] <= play[mid]) {
        out.add(a);
        out.add(b);
        out.add(c);
        return;
      }
    } else if (leaf) {
      return;
    } else if (level == 0) {
      error[mid] = Math.max(error[mid], Math.abs(h[mid] - (h[a] + h[b]) / 2));
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
      play[mid] = Math.min(play[mid], play[m]);
    }
  }
}
