package org.castwright.repair;

import java.util.Arrays;

/**
 * The triangulation of a closed loop in space that has the least area, by dynamic programming over
 * its diagonals. G. Barequet and M. Sharir, Filling gaps in the boundary of a polyhedron, Computer
 * Aided Geometric Design 12 (1995). Cubic in the number of edges. Of patches of equal area, as in a
 * plane, the one with fewer needles is taken.
 */
final class MinimumAreaPatch {

  /** A triangle flatter than this share of its longest edge counts as a needle. */
  private static final double NEEDLE = 0.02;

  /** The weight of a needle as a share of its longest edge squared: far below any real area. */
  private static final double NEEDLE_WEIGHT = 1e-3;

  private final double[] loop;
  private final int n;
  private final boolean[] barred;
  private final double[] best;
  private final int[] split;

  private MinimumAreaPatch(double[] loop, boolean[] barred) {
    this.loop = loop;
    this.n = loop.length / 3;
    this.barred = barred;
    this.best = new double[n * n];
    this.split = new int[n * n];
  }

  /**
   * Triangles over the positions 0..n-1 of the loop, each running the way the loop runs.
   *
   * @param loop packed coordinates
   * @param barred n by n: diagonals that must not be used
   * @return three positions a triangle, or null if every triangulation needs a barred diagonal
   */
  static int[] of(double[] loop, boolean[] barred) {
    MinimumAreaPatch patch = new MinimumAreaPatch(loop, barred);
    patch.solve();
    if (Double.isInfinite(patch.best[patch.n - 1])) {
      return null;
    }
    return patch.collect();
  }

  private void solve() {
    for (int span = 2; span < n; span++) {
      for (int i = 0; i + span < n; i++) {
        int k = i + span;
        double least = Double.POSITIVE_INFINITY;
        int at = -1;
        boolean rim = span == n - 1;
        if (rim || !barred[i * n + k]) {
          for (int j = i + 1; j < k; j++) {
            double parts = best[i * n + j] + best[j * n + k];
            if (parts < least) {
              double whole = parts + weight(i, j, k);
              if (whole < least) {
                least = whole;
                at = j;
              }
            }
          }
        }
        best[i * n + k] = least;
        split[i * n + k] = at;
      }
    }
  }

  private double weight(int a, int b, int c) {
    double ux = loop[3 * b] - loop[3 * a];
    double uy = loop[3 * b + 1] - loop[3 * a + 1];
    double uz = loop[3 * b + 2] - loop[3 * a + 2];
    double vx = loop[3 * c] - loop[3 * a];
    double vy = loop[3 * c + 1] - loop[3 * a + 1];
    double vz = loop[3 * c + 2] - loop[3 * a + 2];
    double x = uy * vz - uz * vy;
    double y = uz * vx - ux * vz;
    double z = ux * vy - uy * vx;
    double area = Math.sqrt(x * x + y * y + z * z) / 2;
    double wx = vx - ux;
    double wy = vy - uy;
    double wz = vz - uz;
    double longest =
        Math.max(
            ux * ux + uy * uy + uz * uz,
            Math.max(vx * vx + vy * vy + vz * vz, wx * wx + wy * wy + wz * wz));
    return 2 * area < NEEDLE * longest ? area + NEEDLE_WEIGHT * longest : area;
  }

  private int[] collect() {
    int[] out = new int[3 * (n - 2)];
    int[] stack = new int[2 * n];
    int depth = 0;
    int size = 0;
    stack[depth++] = 0;
    stack[depth++] = n - 1;
    while (depth > 0) {
      int k = stack[--depth];
      int i = stack[--depth];
      if (k - i < 2) {
        continue;
      }
      int j = split[i * n + k];
      out[size++] = i;
      out[size++] = j;
      out[size++] = k;
      stack[depth++] = i;
      stack[depth++] = j;
      stack[depth++] = j;
      stack[depth++] = k;
    }
    return Arrays.copyOf(out, size);
  }
}
