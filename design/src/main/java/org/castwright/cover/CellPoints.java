package org.castwright.cover;

import java.util.Arrays;

/**
 * Points for the cells of a grid that are not solid. Beside the casting each cell has one; farther
 * off, where no narrow pocket can be, eight cells share one in their middle.
 */
final class CellPoints {

  // cells this near to a solid one stand for themselves: a pocket up to four cells wide
  private static final int NEAR_CELLS = 2;

  private final SpaceGrid grid;
  // 0 none, 1 one cell, 8 eight cells of which this is the first
  private final byte[] share;
  private final int count;

  /**
   * @param skip cells that get no point
   */
  CellPoints(SpaceGrid grid, boolean[] skip) {
    this.grid = grid;
    share = new byte[grid.size()];
    boolean[] near = near();
    int n = 0;
    for (int c = 0; c < share.length; c++) {
      share[c] = (byte) (grid.solid(c) || skip[c] ? 0 : 1);
    }
    for (int k = 0; k + 1 < grid.nz(); k += 2) {
      for (int j = 0; j + 1 < grid.ny(); j += 2) {
        for (int i = 0; i + 1 < grid.nx(); i += 2) {
          merge((k * grid.ny() + j) * grid.nx() + i, near);
        }
      }
    }
    for (byte b : share) {
      n += b > 0 ? 1 : 0;
    }
    count = n;
  }

  private int other(int first, int corner) {
    return first
        + (corner & 1)
        + (corner >> 1 & 1) * grid.nx()
        + (corner >> 2) * grid.nx() * grid.ny();
  }

  private void merge(int first, boolean[] near) {
    for (int corner = 0; corner < 8; corner++) {
      int c = other(first, corner);
      if (near[c] || share[c] == 0) {
        return;
      }
    }
    for (int corner = 0; corner < 8; corner++) {
      share[other(first, corner)] = 0;
    }
    share[first] = 8;
  }

  /** Solid cells and those near them, axis by axis. */
  private boolean[] near() {
    boolean[] near = new boolean[grid.size()];
    for (int c = 0; c < near.length; c++) {
      near[c] = grid.solid(c);
    }
    spread(near, 1, grid.nx());
    spread(near, grid.nx(), grid.ny());
    spread(near, grid.nx() * grid.ny(), grid.nz());
    return near;
  }

  private static void spread(boolean[] near, int step, int n) {
    boolean[] line = new boolean[n];
    for (int c = 0; c < near.length; c++) {
      if (c / step % n == 0) {
        Arrays.fill(line, false);
        for (int k = 0; k < n; k++) {
          for (int d = -NEAR_CELLS; d <= NEAR_CELLS && near[c + k * step]; d++) {
            if (k + d >= 0 && k + d < n) {
              line[k + d] = true;
            }
          }
        }
        for (int k = 0; k < n; k++) {
          near[c + k * step] = line[k];
        }
      }
    }
  }

  int count() {
    return count;
  }

  void into(double[] xyz, int[] id, double[] weight) {
    double h = grid.cell();
    int s = 0;
    for (int c = 0; c < share.length; c++) {
      if (share[c] > 0) {
        double off = share[c] == 1 ? 0 : h / 2;
        xyz[3 * s] = grid.x(c) + off;
        xyz[3 * s + 1] = grid.y(c) + off;
        xyz[3 * s + 2] = grid.z(c) + off;
        weight[s] = share[c] * h * h * h;
        id[s++] = c;
      }
    }
  }
}
