package org.castwright.stretch;

import java.util.Arrays;

/** The convex hull of cells of one layer, as its reach in a number of directions. */
final class Hull {

  private static final int DIRECTIONS = 72;
  private static final double[] COS = new double[DIRECTIONS];
  private static final double[] SIN = new double[DIRECTIONS];

  static {
    for (int k = 0; k < DIRECTIONS; k++) {
      COS[k] = StrictMath.cos(2 * Math.PI * k / DIRECTIONS);
      SIN[k] = StrictMath.sin(2 * Math.PI * k / DIRECTIONS);
    }
  }

  private final double[] reach = new double[DIRECTIONS];

  Hull() {
    Arrays.fill(reach, Double.NEGATIVE_INFINITY);
  }

  void add(double u, double v) {
    for (int k = 0; k < DIRECTIONS; k++) {
      reach[k] = Math.max(reach[k], COS[k] * u + SIN[k] * v);
    }
  }

  void add(Hull other) {
    for (int k = 0; k < DIRECTIONS; k++) {
      reach[k] = Math.max(reach[k], other.reach[k]);
    }
  }

  /**
   * The girth: the integral of the reach over all directions (Cauchy's formula). Middles of cells
   * fall short of the true outline by half a cell on average.
   */
  double girth(double cell) {
    double sum = 0;
    for (double r : reach) {
      sum += r;
    }
    return 2 * Math.PI * (sum / DIRECTIONS + cell / 2);
  }
}
