package org.castwright.seams;

import org.castwright.geom.Vec3;

/**
 * A block of cubic cells, {@code nx * ny * nz}, cell (i, j, k) numbered {@code (k * ny + j) * nx +
 * i}. For any unit vector each cell has the next cell along it: one slice on along the vector's
 * longest component, moved sideways by whole cells so that the line of cells stays within half a
 * cell of a straight one (the shear of shear-warp rendering: Lacroute, Levoy, "Fast volume
 * rendering using a shear-warp factorization of the viewing transformation", SIGGRAPH 1994).
 */
public record Grid(int nx, int ny, int nz) {

  /** Said by {@link #next} for a cell whose next cell lies outside the block. */
  public static final int OUTSIDE = -1;

  /** Checks that there are cells. */
  public Grid {
    if (nx < 1 || ny < 1 || nz < 1) {
      throw new IllegalArgumentException("a grid needs cells: " + nx + " x " + ny + " x " + nz);
    }
  }

  public int cells() {
    return nx * ny * nz;
  }

  public int cell(int i, int j, int k) {
    return (k * ny + j) * nx + i;
  }

  /**
   * For each cell the next one along a direction, or {@link #OUTSIDE}. No two cells share a next
   * cell, so the block falls into chains.
   */
  public int[] next(Vec3 direction) {
    double[] d = {direction.x(), direction.y(), direction.z()};
    int[] size = {nx, ny, nz};
    int main = main(d);
    int sign = d[main] > 0 ? 1 : -1;
    int[] out = new int[cells()];
    int[] at = new int[3];
    int[] step = new int[3];
    for (at[main] = 0; at[main] < size[main]; at[main]++) {
      for (int axis = 0; axis < 3; axis++) {
        double slope = d[axis] / d[main];
        step[axis] = shift(slope, at[main] + sign) - shift(slope, at[main]);
      }
      slice(at, main, size, step, out);
    }
    return out;
  }

  /** All pairs of cells that share a face: the first of each in row 0, the second in row 1. */
  public int[][] pairs() {
    int n = (nx - 1) * ny * nz + nx * (ny - 1) * nz + nx * ny * (nz - 1);
    int[][] out = new int[2][n];
    int at = 0;
    for (int c = 0; c < cells(); c++) {
      int row = c / nx;
      boolean[] has = {c % nx + 1 < nx, row % ny + 1 < ny, row / ny + 1 < nz};
      int[] step = {1, nx, nx * ny};
      for (int axis = 0; axis < 3; axis++) {
        if (has[axis]) {
          out[0][at] = c;
          out[1][at++] = c + step[axis];
        }
      }
    }
    return out;
  }

  private static int main(double[] d) {
    int main = 0;
    for (int axis = 1; axis < 3; axis++) {
      if (Math.abs(d[axis]) > Math.abs(d[main])) {
        main = axis;
      }
    }
    if (d[main] == 0 || !Double.isFinite(d[0] + d[1] + d[2])) {
      throw new IllegalArgumentException("a direction needs a length above zero");
    }
    return main;
  }

  /** Sideways place, whole cells, of a line of this slope in a slice. */
  static int shift(double slope, int slice) {
    return (int) Math.floor(slope * slice + 0.5);
  }

  private void slice(int[] at, int main, int[] size, int[] step, int[] out) {
    int p = (main + 1) % 3;
    int q = (main + 2) % 3;
    int[] to = new int[3];
    for (at[q] = 0; at[q] < size[q]; at[q]++) {
      for (at[p] = 0; at[p] < size[p]; at[p]++) {
        boolean inside = true;
        for (int axis = 0; axis < 3; axis++) {
          to[axis] = at[axis] + step[axis];
          inside &= to[axis] >= 0 && to[axis] < size[axis];
        }
        out[cell(at[0], at[1], at[2])] = inside ? cell(to[0], to[1], to[2]) : OUTSIDE;
      }
    }
  }

  /** Which cells have nothing solid ahead of them along a {@link #next} relation. */
  public static boolean[] free(boolean[] solid, int[] next) {
    boolean[] free = new boolean[next.length];
    boolean[] known = new boolean[next.length];
    IntQueue chain = new IntQueue(64);
    for (int start = 0; start < next.length; start++) {
      int end = start;
      while (end != OUTSIDE && !known[end]) {
        chain.add(end);
        end = next[end];
      }
      boolean clear = end == OUTSIDE || (free[end] && !solid[end]);
      int n = chain.size();
      int[] cells = new int[n];
      for (int i = 0; i < n; i++) {
        cells[i] = chain.take();
      }
      for (int i = n - 1; i >= 0; i--) {
        free[cells[i]] = clear;
        known[cells[i]] = true;
        clear &= !solid[cells[i]];
      }
    }
    return free;
  }
}
