package org.castwright.cover;

import java.util.Arrays;

/**
 * Sets of columns that leave little uncovered: one column after the other, each the one that covers
 * most of what is left (Chvatal, "A greedy heuristic for the set-covering problem", Mathematics of
 * Operations Research 4(3), 1979), then single columns are exchanged for better ones until none is.
 * What is left is measured as its share of all area plus its share of all volume.
 */
final class Greedy {

  private static final int MOST_ROUNDS = 6;
  // a gain of less than this share is rounding
  private static final double ROUNDING = 1e-12;

  private final CoverTable table;
  private final double[] weight;

  Greedy(CoverTable table) {
    this.table = table;
    double area = 0;
    double volume = 0;
    for (int r = 0; r < table.rows(); r++) {
      area += table.area(r);
      volume += table.volume(r);
    }
    weight = new double[table.rows()];
    for (int r = 0; r < weight.length; r++) {
      weight[r] =
          (area > 0 ? table.area(r) / area : 0) + (volume > 0 ? table.volume(r) / volume : 0);
    }
  }

  /** The share a set leaves uncovered. */
  double left(int[] set) {
    long[] bits = table.set(set);
    double sum = 0;
    for (int r = 0; r < weight.length; r++) {
      sum += table.covered(r, bits) ? 0 : weight[r];
    }
    return sum;
  }

  /** What each column would cover of what a set leaves. */
  double[] gains(int[] set) {
    long[] chosen = table.set(set);
    double[] gain = new double[table.columns()];
    long[] bits = table.bits();
    int w = table.words();
    for (int r = 0; r < weight.length; r++) {
      if (!table.covered(r, chosen)) {
        for (int k = 0; k < w; k++) {
          for (long b = bits[r * w + k]; b != 0; b &= b - 1) {
            gain[k * Long.SIZE + Long.numberOfTrailingZeros(b)] += weight[r];
          }
        }
      }
    }
    return gain;
  }

  /** The set with one more column, the best one. */
  int[] grown(int[] set) {
    int[] out = Arrays.copyOf(set, set.length + 1);
    out[set.length] = best(gains(set));
    return out;
  }

  /** The set after exchanges; the first {@code keep} columns stay. */
  int[] exchanged(int[] set, int keep) {
    int[] best = set.clone();
    double left = left(best);
    for (int round = 0; round < MOST_ROUNDS; round++) {
      double before = left;
      for (int i = keep; i < best.length && left > 0; i++) {
        int[] others = without(best, i);
        double[] gain = gains(others);
        int j = best(gain);
        double better = gain[j] - gain[best[i]];
        if (better > ROUNDING) {
          best[i] = j;
          left -= better;
        }
      }
      if (before - left <= ROUNDING) {
        break;
      }
    }
    return best;
  }

  static int[] without(int[] set, int i) {
    int[] out = new int[set.length - 1];
    System.arraycopy(set, 0, out, 0, i);
    System.arraycopy(set, i + 1, out, i, out.length - i);
    return out;
  }

  private static int best(double[] gain) {
    int best = 0;
    for (int j = 1; j < gain.length; j++) {
      if (gain[j] > gain[best]) {
        best = j;
      }
    }
    return best;
  }
}
