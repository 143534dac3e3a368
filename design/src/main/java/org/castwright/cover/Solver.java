package org.castwright.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Finds the least number of columns and the sets of that many. */
final class Solver {

  // more sets than this are not compared
  private static final int ENOUGH = 200;
  // so many columns are taken to complete an opposite pair to three
  private static final int THIRDS = 2;

  private final Trial trial;
  private final CoverOptions options;
  private final int[] fixed;
  private final Uncovered uncovered;
  private int least;
  private int lowerBound;
  private long nodes;
  private List<int[]> sets = new ArrayList<>();

  Solver(Trial trial, CoverOptions options, int[] fixed) {
    this.trial = trial;
    this.options = options;
    this.fixed = fixed;
    CoverTolerance t = options.tolerance();
    uncovered = new Uncovered(trial.table(), t.areaMm2(), t.volumeMm3());
  }

  /** Goes up from one column; the curve's sets stand in where the search gives up. */
  void run(Curve curve) {
    CoverTolerance t = options.tolerance();
    ExactCover exact =
        new ExactCover(trial.table(), t.areaMm2(), t.volumeMm3(), fixed, options.nodes());
    boolean proven = true;
    lowerBound = Math.max(1, fixed.length);
    for (int k = lowerBound; k <= CoverOptions.MOST_PULLS && least == 0; k++) {
      ExactCover.Outcome outcome = exact.search(k, ENOUGH);
      sets.addAll(outcome.sets());
      if (sets.isEmpty() && k <= curve.last() && uncovered.within(curve.set(k))) {
        sets.add(curve.set(k));
      }
      proven &= outcome.complete() || !outcome.sets().isEmpty();
      if (!sets.isEmpty()) {
        least = sets.stream().mapToInt(set -> set.length).min().orElse(k);
        sets.removeIf(set -> set.length > least);
      } else if (proven) {
        lowerBound = k + 1;
      }
    }
    nodes = exact.totalNodes();
    addPairs();
  }

  /** Adds the sets that become possible when one pull is made the opposite of another. */
  private void addPairs() {
    List<int[]> pairs = new ArrayList<>();
    if (least == 2 && fixed.length == 0) {
      for (int j = 0; j < trial.columns(); j += 2) {
        addIfWithin(pairs, new int[] {j, j + 1});
      }
    }
    if (least == 3 && fixed.length == 0) {
      addPairsAndOne(pairs);
    }
    for (int[] set : sets) {
      for (int i = 0; i < set.length; i++) {
        for (int k = fixed.length; k < set.length; k++) {
          if (i != k && least > 2) {
            int[] other = set.clone();
            other[k] = set[i] ^ 1;
            Arrays.sort(other, fixed.length, other.length);
            addIfWithin(pairs, other);
          }
        }
      }
    }
    pairs.addAll(sets);
    sets = pairs;
  }

  /** Adds opposite pairs with one more column, the first few for each pair. */
  private void addPairsAndOne(List<int[]> to) {
    for (int j = 0; j < trial.columns(); j += 2) {
      int before = to.size();
      for (int k = 0; k < trial.columns() && to.size() < before + THIRDS; k++) {
        addIfWithin(to, new int[] {j, j + 1, k});
      }
    }
  }

  private void addIfWithin(List<int[]> to, int[] set) {
    if (Arrays.stream(set).distinct().count() < set.length) {
      return;
    }
    for (int[] o : to) {
      if (Arrays.equals(o, set)) {
        return;
      }
    }
    if (to.size() < ENOUGH && uncovered.within(set)) {
      to.add(set);
    }
  }

  /** The least number of columns found, 0 when up to eight do not keep the tolerance. */
  int least() {
    return least;
  }

  /** No fewer do. */
  int lowerBound() {
    return lowerBound;
  }

  long nodes() {
    return nodes;
  }

  /** Sets of the least number of columns. */
  List<int[]> sets() {
    return sets;
  }
}
