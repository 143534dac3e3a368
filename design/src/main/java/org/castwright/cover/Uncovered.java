package org.castwright.cover;

/** What a set of columns leaves uncovered, read from bits turned the other way: rows by column. */
final class Uncovered {

  private final CoverTable table;
  private final double areaBudget;
  private final double volumeBudget;
  private final long[][] columns;
  private final long[] left;

  Uncovered(CoverTable table, double areaBudget, double volumeBudget) {
    this.table = table;
    this.areaBudget = areaBudget;
    this.volumeBudget = volumeBudget;
    int words = FreeBits.words(table.rows());
    columns = new long[table.columns()][words];
    left = new long[words];
    long[] bits = table.bits();
    for (int r = 0; r < table.rows(); r++) {
      for (int k = 0; k < table.words(); k++) {
        for (long b = bits[r * table.words() + k]; b != 0; b &= b - 1) {
          FreeBits.set(columns[k * Long.SIZE + Long.numberOfTrailingZeros(b)], r);
        }
      }
    }
  }

  private void leave(int[] set) {
    for (int k = 0; k < left.length; k++) {
      long any = 0;
      for (int j : set) {
        any |= columns[j][k];
      }
      left[k] = ~any;
    }
    int spare = table.rows() & Long.SIZE - 1;
    if (spare != 0) {
      left[left.length - 1] &= (1L << spare) - 1;
    }
  }

  /** Whether what the set leaves is within both budgets. */
  boolean within(int[] set) {
    leave(set);
    double area = 0;
    double volume = 0;
    for (int k = 0; k < left.length; k++) {
      for (long b = left[k]; b != 0; b &= b - 1) {
        int r = k * Long.SIZE + Long.numberOfTrailingZeros(b);
        area += table.area(r);
        volume += table.volume(r);
        if (area > areaBudget || volume > volumeBudget) {
          return false;
        }
      }
    }
    return true;
  }

  /** The rows the set leaves, ascending. */
  int[] rows(int[] set) {
    leave(set);
    int n = 0;
    for (long b : left) {
      n += Long.bitCount(b);
    }
    int[] out = new int[n];
    n = 0;
    for (int k = 0; k < left.length; k++) {
      for (long b = left[k]; b != 0; b &= b - 1) {
        out[n++] = k * Long.SIZE + Long.numberOfTrailingZeros(b);
      }
    }
    return out;
  }
}
