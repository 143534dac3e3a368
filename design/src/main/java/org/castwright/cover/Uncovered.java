package org.castwright.cover;

/** What a set of columns leaves uncovered, read from bits turned the other way: rows by column. */
final class Uncovered {

  private final CoverTable table;
  private final double areaBudget;
  private final double volumeBudget;
  private final long[][] columns;
  private final int words;

  /** The rows there are among the last 64. */
  private final long last;

  Uncovered(CoverTable table, double areaBudget, double volumeBudget) {
    this.table = table;
    this.areaBudget = areaBudget;
    this.volumeBudget = volumeBudget;
    words = FreeBits.words(table.rows());
    int spare = table.rows() & Long.SIZE - 1;
    last = spare == 0 ? ~0L : (1L << spare) - 1;
    columns = new long[table.columns()][words];
    long[] bits = table.bits();
    for (int r = 0; r < table.rows(); r++) {
      for (int k = 0; k < table.words(); k++) {
        for (long b = bits[r * table.words() + k]; b != 0; b &= b - 1) {
          FreeBits.set(columns[k * Long.SIZE + Long.numberOfTrailingZeros(b)], r);
        }
      }
    }
  }

  /** Rows that a set leaves among 64. */
  private long left(int[] set, int word) {
    long any = 0;
    for (int j : set) {
      any |= columns[j][word];
    }
    return ~any & (word == words - 1 ? last : ~0L);
  }

  /** Whether what the set leaves is within both budgets. */
  boolean within(int[] set) {
    double area = 0;
    double volume = 0;
    for (int k = 0; k < words; k++) {
      for (long b = left(set, k); b != 0; b &= b - 1) {
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
    int n = 0;
    for (int k = 0; k < words; k++) {
      n += Long.bitCount(left(set, k));
    }
    int[] out = new int[n];
    n = 0;
    for (int k = 0; k < words; k++) {
      for (long b = left(set, k); b != 0; b &= b - 1) {
        out[n++] = k * Long.SIZE + Long.numberOfTrailingZeros(b);
      }
    }
    return out;
  }
}
