package org.castwright.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Turns uncovered rows into demands: gathers rows that few columns cover until together they weigh
 * more than the budget; then one of the columns that cover any of them must be chosen. The fewer
 * those columns the more a demand is worth, so rows that add few columns go first.
 */
final class DemandMaker {

  // the rows with the fewest columns tell enough
  private static final int MOST_ROWS = 2000;
  private static final int DEMANDS = 3;

  private final CoverTable table;
  private final double areaBudget;
  private final double volumeBudget;

  DemandMaker(CoverTable table, double areaBudget, double volumeBudget) {
    this.table = table;
    this.areaBudget = areaBudget;
    this.volumeBudget = volumeBudget;
  }

  /**
   * A few demands that no column outside them meets.
   *
   * @param rows uncovered, together over the budget
   * @param banned columns that do not count when the fewest are looked for
   */
  List<long[]> of(int[] rows, long[] banned) {
    int[] few = fewest(rows, banned);
    boolean[] used = new boolean[few.length];
    List<long[]> out = new ArrayList<>();
    for (int k = 0; k < DEMANDS; k++) {
      long[] demand = gather(few, used, banned);
      if (demand == null) {
        break;
      }
      out.add(demand);
    }
    if (out.isEmpty()) {
      long[] all = new long[table.words()];
      for (int r : rows) {
        join(all, r);
      }
      out.add(all);
    }
    return out;
  }

  /** The rows covered by the fewest columns, those first. */
  private int[] fewest(int[] rows, long[] banned) {
    long[] keys = new long[rows.length];
    long[] none = new long[table.words()];
    for (int i = 0; i < rows.length; i++) {
      keys[i] = (long) added(none, rows[i], banned) << Integer.SIZE | rows[i];
    }
    Arrays.sort(keys);
    int[] out = new int[Math.min(MOST_ROWS, keys.length)];
    for (int i = 0; i < out.length; i++) {
      out[i] = (int) keys[i];
    }
    return out;
  }

  /** A demand from the first row not used yet, or null when the rows left are within the budget. */
  private long[] gather(int[] rows, boolean[] used, long[] banned) {
    long[] demand = new long[table.words()];
    boolean[] taken = new boolean[rows.length];
    double area = 0;
    double volume = 0;
    int next = 0;
    while (next < rows.length && used[next]) {
      next++;
    }
    while (next >= 0 && next < rows.length) {
      join(demand, rows[next]);
      next = -1;
      int least = Integer.MAX_VALUE;
      for (int i = 0; i < rows.length; i++) {
        int more = taken[i] || used[i] ? Integer.MAX_VALUE : added(demand, rows[i], banned);
        if (more == 0) {
          taken[i] = true;
          join(demand, rows[i]);
          area += table.area(rows[i]);
          volume += table.volume(rows[i]);
        } else if (more < least) {
          least = more;
          next = i;
        }
      }
      if (area > areaBudget || volume > volumeBudget) {
        for (int i = 0; i < rows.length; i++) {
          used[i] |= taken[i];
        }
        return demand;
      }
    }
    return null;
  }

  private void join(long[] demand, int row) {
    for (int k = 0; k < demand.length; k++) {
      demand[k] |= table.bits()[row * demand.length + k];
    }
  }

  /** How many columns, banned ones aside, a row would add. */
  private int added(long[] demand, int row, long[] banned) {
    int n = 0;
    for (int k = 0; k < demand.length; k++) {
      n += Long.bitCount(table.bits()[row * demand.length + k] & ~demand[k] & ~banned[k]);
    }
    return n;
  }
}
