package org.castwright.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Finds all sets of at most so many columns that cover a table but for a budget, or shows that
 * there is none: branch and bound over demands. A demand is a set of columns of which one must be
 * chosen, since the rows that only they cover weigh more than the budget; demands are made as they
 * are needed, from what a set that looked good leaves uncovered (implicit hitting sets;
 * Moreno-Centeno, Karp, "The implicit hitting set approach to solve combinatorial optimization
 * problems", Operations Research 61(2), 2013). Branches on the smallest demand not yet met, each
 * column standing back once it has been tried; prunes by {@link FractionalPacking}. Demands found
 * for one number of columns hold for all.
 */
final class ExactCover {

  private final CoverTable table;
  private final Uncovered uncovered;
  private final DemandMaker maker;
  private final Demands demands;
  private final int[] fixed;
  private final int mostNodes;
  private long totalNodes;

  // state of one search
  private int nodes;
  private int most;
  private boolean stopped;
  private List<int[]> found = new ArrayList<>();

  /**
   * @param fixed columns that every set holds
   * @param mostNodes a search gives up after this many nodes
   */
  ExactCover(CoverTable table, double areaBudget, double volumeBudget, int[] fixed, int mostNodes) {
    this.table = table;
    this.fixed = fixed.clone();
    this.mostNodes = mostNodes;
    uncovered = new Uncovered(table, areaBudget, volumeBudget);
    maker = new DemandMaker(table, areaBudget, volumeBudget);
    demands = new Demands(table.columns());
  }

  /**
   * What a search gave.
   *
   * @param sets columns of each set found, ascending after the fixed ones, in a fixed order
   * @param complete whether every set was looked at; if not, the search was stopped by the limit of
   *     nodes or by the number of sets asked for
   * @param nodes how many nodes were looked at
   */
  record Outcome(List<int[]> sets, boolean complete, int nodes) {}

  /**
   * Looks for sets of at most {@code size} columns, the fixed ones among them.
   *
   * @param enough stop after this many
   */
  Outcome search(int size, int enough) {
    nodes = 0;
    most = enough;
    stopped = false;
    found = new ArrayList<>();
    if (size >= fixed.length) {
      int[] chosen = Arrays.copyOf(fixed, size);
      node(chosen, fixed.length, size - fixed.length, new long[table.words()]);
    }
    totalNodes += nodes;
    return new Outcome(List.copyOf(found), !stopped, nodes);
  }

  /** Nodes of all searches so far. */
  long totalNodes() {
    return totalNodes;
  }

  private boolean tooMany() {
    stopped |= ++nodes > mostNodes;
    return stopped;
  }

  private void node(int[] chosen, int n, int left, long[] banned) {
    if (tooMany()) {
      return;
    }
    long[] set = table.set(Arrays.copyOf(chosen, n));
    Demands unmet = demands.unmet(set, banned);
    if (unmet.count() == 0) {
      if (accept(chosen, n, banned)) {
        return;
      }
      unmet = demands.unmet(set, banned);
    }
    if (left == 0 || FractionalPacking.bound(unmet) > left) {
      return;
    }
    if (left == 1) {
      last(chosen, n, set, banned);
      return;
    }
    long[] tried = banned.clone();
    for (int j : branches(unmet)) {
      chosen[n] = j;
      if (left == 2) {
        FreeBits.set(set, j);
        last(chosen, n + 1, set, tried);
        FreeBits.clear(set, j);
      } else {
        node(chosen, n + 1, left - 1, tried);
      }
      if (stopped) {
        return;
      }
      FreeBits.set(tried, j);
    }
  }

  /** The columns of the smallest demand, those first that meet most: once tried they stand back. */
  private static int[] branches(Demands unmet) {
    int[] columns = unmet.columns(unmet.smallest());
    int[] met = unmet.met();
    long[] keys = new long[columns.length];
    for (int i = 0; i < keys.length; i++) {
      keys[i] = (long) -met[columns[i]] << Integer.SIZE | columns[i];
    }
    Arrays.sort(keys);
    for (int i = 0; i < keys.length; i++) {
      columns[i] = (int) keys[i];
    }
    return columns;
  }

  /** Tries the last column, which must meet all demands left; none may be needed at all. */
  private void last(int[] chosen, int n, long[] set, long[] banned) {
    if (tooMany()) {
      return;
    }
    long[] common = demands.common(set, banned);
    for (int j = next(common, 0); j >= 0; j = next(common, j + 1)) {
      if (tooMany()) {
        return;
      }
      chosen[n] = j;
      if (!accept(chosen, n + 1, banned)) {
        common = demands.common(set, banned);
      }
    }
  }

  /** Takes the set if it leaves no more than the budget; else learns what it lacks. */
  private boolean accept(int[] chosen, int n, long[] banned) {
    int[] set = Arrays.stream(chosen, 0, n).distinct().toArray();
    if (uncovered.within(set)) {
      Arrays.sort(set, fixed.length, set.length);
      found.add(set);
      stopped |= found.size() >= most;
      return true;
    }
    for (long[] demand : maker.of(uncovered.rows(set), banned)) {
      demands.add(demand);
    }
    return false;
  }

  /** The first column from {@code from} on in a set, or -1. */
  private static int next(long[] set, int from) {
    for (int j = from; j < set.length * Long.SIZE; j++) {
      if (FreeBits.get(set, j)) {
        return j;
      }
    }
    return -1;
  }
}
