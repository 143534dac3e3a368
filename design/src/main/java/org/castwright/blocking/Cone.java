package org.castwright.blocking;

/**
 * Envelopes of cones over a grid: the lowest that no value stands out of, or the highest that none
 * stands below. Distances run in eight directions, up to 8 % too long, by two pairs of sweeps.
 */
final class Cone {

  private final float[] v;
  private final float[] walls;
  private final int nx;
  private final float straight;
  private final float across;

  private Cone(float[] v, float[] walls, int nx, double fall) {
    this.v = v;
    this.walls = walls;
    this.nx = nx;
    straight = (float) fall;
    across = (float) (fall * Math.sqrt(2));
  }

  /**
   * Raises values that lie more below a neighbor's than a cone falls: each becomes the largest of
   * all values less the fall over the distance to it.
   *
   * @param v values, row after row, changed in place
   * @param walls heights of walls at which cones end that meet them lower; not a number where there
   *     is none; null for none at all
   * @param fall along one step of the grid
   */
  static void upper(float[] v, float[] walls, int nx, double fall) {
    new Cone(v, walls, nx, fall).run();
  }

  /** The same the other way round: each becomes the least of all plus the rise to it. */
  static void lower(float[] v, float[] walls, int nx, double rise) {
    negate(v);
    float[] below = walls == null ? null : walls.clone();
    if (below != null) {
      negate(below);
    }
    upper(v, below, nx, rise);
    negate(v);
  }

  private void run() {
    int ny = v.length / nx;
    for (int j = 0; j < ny; j++) {
      if (j > 0) {
        from(j, -nx);
      }
      sideways(j);
    }
    for (int j = ny - 2; j >= 0; j--) {
      from(j, nx);
      sideways(j);
    }
  }

  /** Into a row from the one before it. */
  private void from(int j, int row) {
    for (int i = 0; i < nx; i++) {
      int o = j * nx + i;
      take(o, v[o + row] - straight);
      if (i > 0) {
        take(o, v[o + row - 1] - across);
      }
      if (i + 1 < nx) {
        take(o, v[o + row + 1] - across);
      }
    }
  }

  private void sideways(int j) {
    for (int o = j * nx + 1; o < (j + 1) * nx; o++) {
      take(o, v[o - 1] - straight);
    }
    for (int o = (j + 1) * nx - 2; o >= j * nx; o--) {
      take(o, v[o + 1] - straight);
    }
  }

  private void take(int o, float m) {
    if (m > v[o] && (walls == null || !(m <= walls[o]))) {
      v[o] = m;
    }
  }

  private static void negate(float[] v) {
    for (int o = 0; o < v.length; o++) {
      v[o] = -v[o];
    }
  }
}
