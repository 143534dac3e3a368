package org.castwright.blocking;

import java.util.Arrays;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;

/**
 * The bodies that fill gaps: over each column with a gap from within the solid below to within that
 * above, and past the outline of the gaps a ramp of a column's width, so that their walls have
 * draft and nothing of a ledge's edge stays free.
 */
final class Filling {

  /**
   * How deep a filling reaches into the solid above and below it, mm: beside the outline of a gap
   * surfaces may fall steeply between two columns.
   */
  private static final double BITE = 1.5;

  /** How thick it is where it ends, mm. */
  private static final double EDGE = 0.004;

  /** Columns that are looked at, along each side of the square about one that carries heights. */
  private static final int FINER = 3;

  private final Gaps gaps;
  private final int nx;
  private final int ny;

  /** 0 none, 1 a gap, 2 beside one, 3 where the filling ends. */
  private final byte[] ring;

  private final double[] bottom;
  private final double[] top;

  Filling(Gaps gaps) {
    this.gaps = gaps;
    nx = gaps.raster.nx() / FINER;
    ny = gaps.raster.ny() / FINER;
    ring = new byte[nx * ny];
    bottom = new double[nx * ny];
    top = new double[nx * ny];
    for (int o = 0; o < ring.length; o++) {
      look(o);
    }
    grow(1);
    while (narrow()) {
      // each round turns some ends into ramps' tops
      grow(1);
    }
    grow(2);
  }

  /** The middle one of the columns looked at for one that carries heights. */
  private int middle(int o) {
    int row = o / nx;
    return (FINER * row + FINER / 2) * gaps.raster.nx() + FINER * (o % nx) + FINER / 2;
  }

  /** Whether there is a gap about a column, and the heights that fill all of it. */
  private void look(int o) {
    int m = middle(o);
    bottom[o] = Double.POSITIVE_INFINITY;
    top[o] = Double.NEGATIVE_INFINITY;
    for (int j = -(FINER / 2); j <= FINER / 2; j++) {
      for (int i = -(FINER / 2); i <= FINER / 2; i++) {
        int p = m + j * gaps.raster.nx() + i;
        if (gaps.place[p] >= 0) {
          ring[o] = 1;
          int last = gaps.runs.count(p) - 1;
          double low = gaps.low(p);
          double high = gaps.high(p);
          bottom[o] = Math.min(bottom[o], low - bite(low - gaps.runs.bottom(p, 0)));
          top[o] = Math.max(top[o], high + bite(gaps.runs.top(p, last) - high));
        }
      }
    }
  }

  private static double bite(double run) {
    return Math.min(BITE, run / 2);
  }

  /** Adds the columns beside those of a ring, and settles their heights. */
  private void grow(int of) {
    byte next = (byte) (of + 1);
    for (int o = 0; o < ring.length; o++) {
      if (ring[o] == 0) {
        int from = beside(o, of);
        if (from >= 0) {
          ring[o] = next;
          settle(o, from, of == 2);
        }
      }
    }
  }

  /** The first column round one that belongs to a ring within, or -1. */
  private int beside(int o, int of) {
    for (int s : new int[] {-1, 1, -nx, nx, -nx - 1, -nx + 1, nx - 1, nx + 1}) {
      int p = o + s;
      if (p >= 0 && p < ring.length && ring[p] > 0 && ring[p] <= of) {
        return p;
      }
    }
    return -1;
  }

  /** Columns that would be pinched between two fillings are filled, too. */
  private boolean narrow() {
    boolean any = false;
    for (int o = nx + 1; o < ring.length - nx - 1; o++) {
      if (ring[o] == 0
          && ((in(o - 1) && in(o + 1))
              || (in(o - nx) && in(o + nx))
              || (in(o - nx - 1) && in(o + nx + 1))
              || (in(o - nx + 1) && in(o + nx - 1)))) {
        int from = beside(o, 2);
        ring[o] = 2;
        settle(o, from, false);
        any = true;
      }
    }
    return any;
  }

  private boolean in(int o) {
    return ring[o] == 1 || ring[o] == 2;
  }

  /**
   * Heights over a column that has no gap, from those over one beside it.
   *
   * @param end whether the filling comes to nothing here
   */
  private void settle(int o, int from, boolean end) {
    double middle = (bottom[from] + top[from]) / 2;
    double b = bottom[from];
    double t = top[from];
    int m = middle(o);
    for (int k = 0; k < gaps.runs.count(m); k++) {
      double low = gaps.runs.bottom(m, k);
      double high = gaps.runs.top(m, k);
      if (high <= middle) {
        // the ledge below goes on: the filling stands on it
        b = high - bite(high - low);
        middle = end ? b : middle;
      } else if (low >= middle) {
        t = low + bite(high - low);
        middle = end ? t : middle;
        break;
      } else {
        // the gap has closed
        b = Math.max(b, Math.min(low + EDGE, middle));
        t = Math.min(t, Math.max(high - EDGE, middle));
        break;
      }
    }
    bottom[o] = end ? middle - EDGE : Math.min(b, t - EDGE);
    top[o] = end ? middle + EDGE : Math.max(t, b + EDGE);
  }

  /** The bodies as one mesh with z along the pull; empty if there is nothing to fill. */
  TriMesh mesh() {
    boolean[] cell = cells();
    MeshBuilder out = new MeshBuilder();
    int[] low = new int[ring.length];
    int[] high = new int[ring.length];
    Arrays.fill(low, -1);
    for (int o = 0; o < cell.length; o++) {
      if (cell[o]) {
        for (int p : new int[] {o, o + 1, o + nx, o + nx + 1}) {
          if (low[p] < 0) {
            low[p] = out.vertex(gaps.x(middle(p)), gaps.y(middle(p)), bottom[p]);
            high[p] = out.vertex(gaps.x(middle(p)), gaps.y(middle(p)), top[p]);
          }
        }
      }
    }
    for (int o = 0; o < cell.length; o++) {
      if (!cell[o]) {
        continue;
      }
      quad(out, high[o], high[o + 1], high[o + nx + 1], high[o + nx]);
      // the same diagonal as above
      quad(out, low[o], low[o + nx], low[o + nx + 1], low[o + 1]);
      wall(out, cell, o, o - nx, low, high, o, o + 1);
      wall(out, cell, o, o + 1, low, high, o + 1, o + nx + 1);
      wall(out, cell, o, o + nx, low, high, o + nx + 1, o + nx);
      wall(out, cell, o, o - 1, low, high, o + nx, o);
    }
    return out.build();
  }

  private static void wall(
      MeshBuilder out, boolean[] cell, int o, int beyond, int[] low, int[] high, int a, int b) {
    if (cell[o] && !cell[beyond]) {
      quad(out, low[a], low[b], high[b], high[a]);
    }
  }

  private static void quad(MeshBuilder out, int a, int b, int c, int d) {
    out.triangle(a, b, c);
    out.triangle(a, c, d);
  }

  /** Squares between columns that are filled: those with a corner that is not an end. */
  private boolean[] cells() {
    boolean[] cell = new boolean[ring.length];
    for (int o = 0; o + nx + 1 < ring.length; o++) {
      cell[o] = in(o) || in(o + 1) || in(o + nx) || in(o + nx + 1);
    }
    boolean more = true;
    while (more) {
      more = false;
      for (int o = nx + 1; o + nx + 1 < ring.length; o++) {
        // squares that meet in a corner only
        boolean a = cell[o];
        boolean b = cell[o - 1];
        boolean c = cell[o - nx];
        boolean d = cell[o - nx - 1];
        if (a && d && !b && !c) {
          more |= add(cell, o - 1);
        } else if (b && c && !a && !d) {
          more |= add(cell, o);
        }
      }
    }
    return cell;
  }

  private boolean add(boolean[] cell, int o) {
    cell[o] = true;
    for (int p : new int[] {o, o + 1, o + nx, o + nx + 1}) {
      if (ring[p] == 0) {
        ring[p] = 3;
        settle(p, beside(p, 3), true);
      }
    }
    return true;
  }
}
