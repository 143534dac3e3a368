package org.castwright.cover;

import java.util.Arrays;

/**
 * A lower bound on how many columns meet a list of demands, from linear programming duality: weigh
 * the demands so that no column meets more than 1 in all; then the sum of the weights is a bound.
 * Good weights come from raising, again and again, the demand whose columns are loaded least (Garg,
 * Konemann, "Faster and simpler algorithms for multicommodity flow and other fractional packing
 * problems", SIAM J. Computing 37(2), 2007).
 */
final class FractionalPacking {

  private static final int MOST_DEMANDS = 64;
  private static final int ROUNDS = 48;
  private static final double RAISE = 0.25;
  // what rounding may add to a sum of so few terms
  private static final double ROUNDING = 1e-9;

  private FractionalPacking() {}

  /** The bound, rounded up to a whole number; a demand that names no column makes it huge. */
  static int bound(Demands demands) {
    if (demands.count() == 0) {
      return 0;
    }
    int[][] columns = smallest(demands);
    if (columns[0].length == 0) {
      return Integer.MAX_VALUE;
    }
    double[] length = new double[most(columns) + 1];
    int[] load = new int[length.length];
    Arrays.fill(length, 1);
    int heaviest = 0;
    double best = 0;
    for (int round = 1; round <= ROUNDS; round++) {
      for (int j : columns[shortest(columns, length)]) {
        length[j] *= 1 + RAISE;
        heaviest = Math.max(heaviest, ++load[j]);
      }
      best = Math.max(best, (double) round / heaviest);
    }
    return (int) Math.ceil(best - ROUNDING);
  }

  private static int shortest(int[][] columns, double[] length) {
    int at = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < columns.length; i++) {
      double sum = 0;
      for (int j : columns[i]) {
        sum += length[j];
      }
      if (sum < least) {
        least = sum;
        at = i;
      }
    }
    return at;
  }

  private static int most(int[][] columns) {
    int most = 0;
    for (int[] c : columns) {
      most = Math.max(most, c[c.length - 1]);
    }
    return most;
  }

  /** The columns of the demands with the fewest, those first. */
  private static int[][] smallest(Demands demands) {
    long[] keys = new long[demands.count()];
    for (int i = 0; i < keys.length; i++) {
      keys[i] = (long) demands.size(i) << Integer.SIZE | i;
    }
    Arrays.sort(keys);
    int[][] out = new int[Math.min(MOST_DEMANDS, keys.length)][];
    for (int i = 0; i < out.length; i++) {
      out[i] = demands.columns((int) keys[i]);
    }
    return out;
  }
}
