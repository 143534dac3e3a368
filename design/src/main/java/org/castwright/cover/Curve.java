package org.castwright.cover;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** A good set of columns for each number of columns, up to the first that leaves nothing. */
final class Curve {

  private final List<int[]> sets = new ArrayList<>();
  private final int first;

  /**
   * @param fixed columns that every set holds
   */
  Curve(CoverTable table, int[] fixed, int most) {
    Greedy greedy = new Greedy(table);
    first = Math.max(1, fixed.length);
    int[] set = fixed;
    for (int k = first; k <= most; k++) {
      if (set.length < k) {
        set = greedy.grown(set);
      }
      if (k == 2 && fixed.length == 0) {
        set = better(greedy, set, opposite(greedy, table.columns()));
      }
      set = greedy.exchanged(set, fixed.length);
      sets.add(set);
      if (greedy.left(set) == 0) {
        break;
      }
    }
  }

  private static int[] opposite(Greedy greedy, int columns) {
    double[] left =
        IntStream.range(0, columns / 2)
            .parallel()
            .mapToDouble(i -> greedy.left(new int[] {2 * i, 2 * i + 1}))
            .toArray();
    int best = 0;
    for (int i = 1; i < left.length; i++) {
      best = left[i] < left[best] ? i : best;
    }
    return new int[] {2 * best, 2 * best + 1};
  }

  private static int[] better(Greedy greedy, int[] a, int[] b) {
    return greedy.left(b) < greedy.left(a) ? b : a;
  }

  /** The fewest columns of a set. */
  int first() {
    return first;
  }

  /** The most columns of a set. */
  int last() {
    return first + sets.size() - 1;
  }

  /** The set of so many columns, {@link #first} to {@link #last}. */
  int[] set(int columns) {
    return sets.get(columns - first);
  }
}
