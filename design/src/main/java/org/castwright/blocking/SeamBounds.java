package org.castwright.blocking;

import java.util.Arrays;

/**
 * Between which heights a body wants the seam to lie over each place of a grid: no lower than its
 * lowest point there and no higher than its highest, and the same across a land beside its outline,
 * so that the rim of a piece is blunt. Along walls without draft the outline goes up and down with
 * the noise of their facets; there the outermost places are left out.
 */
final class SeamBounds {

  /** Width of the land, mm: the least that a nozzle prints in two lines (common practice). */
  private static final double LAND = 0.9;

  /** Places of an outline are compared with those so near, mm. */
  private static final double NEAR = 1;

  /** An even outline climbs no more steeply: 60°. */
  private static final double CLIMB = Math.sqrt(3);

  /** A wall that is higher so near to its outline has no outline to speak of, mm. */
  private static final double WALL = 8;

  /** How near that is, mm. */
  private static final double BESIDE = 0.3;

  final int nx;

  /** Not a number where the seam is free. */
  final float[] lo;

  final float[] hi;

  /** The place whose bounds hold over a place: itself, the nearest across a land, or -1. */
  final int[] land;

  private final double step;

  /**
   * Takes both arrays.
   *
   * @param lo lowest point of the body over each place, not a number where there is none
   * @param hi highest point, likewise
   * @param nx places in a row
   * @param step between places, mm
   * @param rim how many of the outermost places are left out where the outline is uneven
   */
  SeamBounds(float[] lo, float[] hi, int nx, double step, int rim) {
    this.lo = lo;
    this.hi = hi;
    this.nx = nx;
    this.step = step;
    boolean[] near = uneven();
    for (int k = 0; k < rim; k++) {
      near = leaveOut(near);
    }
    for (int o = 0; o < lo.length; o++) {
      // or a wall that is left out would end all that the body asks of the seam beside it
      hi[o] = Float.isNaN(lo[o]) ? Float.NaN : hi[o];
    }
    land = land();
  }

  /** Whether the body ends beside a place. */
  boolean fringe(int o) {
    return !Float.isNaN(lo[o])
        && (Float.isNaN(lo[o - 1])
            || Float.isNaN(lo[o + 1])
            || Float.isNaN(lo[o - nx])
            || Float.isNaN(lo[o + nx]));
  }

  private boolean[] uneven() {
    boolean[] out = new boolean[lo.length];
    int n = (int) Math.round(NEAR / step);
    int beside = (int) Math.ceil(BESIDE / step);
    int room = Math.max(n, beside) * (nx + 1);
    for (int o = room; o + room < lo.length; o++) {
      out[o] = fringe(o) && (wall(o, beside) || jumps(o, n));
    }
    return out;
  }

  /** Whether the body beside a place of its outline is a wall. */
  private boolean wall(int o, int n) {
    for (int j = -n; j <= n; j++) {
      for (int i = -n; i <= n; i++) {
        int p = o + j * nx + i;
        if (hi[p] - lo[p] > WALL) {
          return true;
        }
      }
    }
    return false;
  }

  /** Whether the outline near a place of it lies much higher or lower. */
  private boolean jumps(int o, int n) {
    float z = (lo[o] + hi[o]) / 2;
    for (int j = -n; j <= n; j++) {
      for (int i = -n; i <= n; i++) {
        int p = o + j * nx + i;
        double most = CLIMB * step * (1 + Math.sqrt(i * i + j * j));
        if (fringe(p) && Math.abs((lo[p] + hi[p]) / 2 - z) > most) {
          return true;
        }
      }
    }
    return false;
  }

  /** Takes the outermost places away that lie at or beside those given; tells all of these. */
  private boolean[] leaveOut(boolean[] given) {
    float[] was = lo.clone();
    boolean[] near = given.clone();
    for (int o = nx + 1; o + nx + 1 < lo.length; o++) {
      boolean outside = false;
      for (int j = -nx; j <= nx; j += nx) {
        for (int p = o + j - 1; p <= o + j + 1; p++) {
          outside |= Float.isNaN(was[p]);
          near[o] |= given[p];
        }
      }
      if (outside && near[o]) {
        lo[o] = Float.NaN;
      }
    }
    return near;
  }

  private int[] land() {
    double width = LAND / step;
    int n = (int) width;
    int[] nearest = new int[lo.length];
    double[] far = new double[lo.length];
    Arrays.fill(nearest, -1);
    Arrays.fill(far, width * width);
    for (int o = 0; o < lo.length; o++) {
      if (!Float.isNaN(lo[o])) {
        nearest[o] = o;
        far[o] = 0;
      }
    }
    for (int o = nx + 1; o + nx + 1 < lo.length; o++) {
      for (int j = -n; j <= n && fringe(o); j++) {
        for (int i = Math.max(-n, -(o % nx)); i <= Math.min(n, nx - 1 - o % nx); i++) {
          int p = o + j * nx + i;
          if (p >= 0 && p < lo.length && i * i + j * j < far[p]) {
            far[p] = i * i + j * j;
            nearest[p] = o;
          }
        }
      }
    }
    return nearest;
  }
}
