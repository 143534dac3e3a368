package org.castwright.cover;

import java.util.Arrays;

/**
 * A covering problem: rows to be covered, columns that cover them. Each row holds one bit for each
 * column that covers it and carries an area and a volume. Rows with equal bits are one row with the
 * sum of their weights; rows that no column covers are left out.
 */
final class CoverTable {

  private final int columns;
  private final int words;
  private final int rows;
  private final long[] bits;
  private final double[] area;
  private final double[] volume;

  private CoverTable(
      int columns, int words, int rows, long[] bits, double[] area, double[] volume) {
    this.columns = columns;
    this.words = words;
    this.rows = rows;
    this.bits = bits;
    this.area = area;
    this.volume = volume;
  }

  /**
   * Gathers equal rows and leaves empty ones out. Rows keep the order in which they first come.
   *
   * @param covers for each column the bits of the items it covers
   * @param area of each item
   * @param volume of each item
   */
  static CoverTable of(long[][] covers, double[] area, double[] volume) {
    int n = area.length;
    int w = FreeBits.words(covers.length);
    long[] all = new long[n * w];
    for (int j = 0; j < covers.length; j++) {
      long bit = 1L << j;
      for (int k = 0; k < covers[j].length; k++) {
        for (long b = covers[j][k]; b != 0; b &= b - 1) {
          all[(k * Long.SIZE + Long.numberOfTrailingZeros(b)) * w + (j >> 6)] |= bit;
        }
      }
    }
    return gather(covers.length, w, n, all, area, volume);
  }

  private static CoverTable gather(
      int columns, int w, int n, long[] all, double[] area, double[] volume) {
    int size = Integer.highestOneBit(Math.max(2, 2 * n)) * 2;
    int[] slot = new int[size];
    double[] areas = new double[n];
    double[] volumes = new double[n];
    int rows = 0;
    for (int i = 0; i < n; i++) {
      if (isEmpty(all, i * w, w)) {
        continue;
      }
      int h = hash(all, i * w, w) & (size - 1);
      while (slot[h] != 0 && !same(all, (slot[h] - 1) * w, i * w, w)) {
        h = h + 1 & size - 1;
      }
      if (slot[h] == 0) {
        // rows found so far never reach past the item at hand, so they can be packed in place
        System.arraycopy(all, i * w, all, rows * w, w);
        slot[h] = ++rows;
      }
      areas[slot[h] - 1] += area[i];
      volumes[slot[h] - 1] += volume[i];
    }
    return new CoverTable(
        columns,
        w,
        rows,
        Arrays.copyOf(all, rows * w),
        Arrays.copyOf(areas, rows),
        Arrays.copyOf(volumes, rows));
  }

  private static int hash(long[] a, int o, int w) {
    long h = 0;
    for (int k = 0; k < w; k++) {
      h = (h ^ a[o + k]) * 0x9E3779B97F4A7C15L;
      h ^= h >>> 32;
    }
    return (int) (h ^ h >>> 17);
  }

  private static boolean isEmpty(long[] a, int o, int w) {
    for (int k = o; k < o + w; k++) {
      if (a[k] != 0) {
        return false;
      }
    }
    return true;
  }

  private static boolean same(long[] a, int o, int p, int w) {
    return Arrays.equals(a, o, o + w, a, p, p + w);
  }

  int columns() {
    return columns;
  }

  int rows() {
    return rows;
  }

  /** Longs a row. */
  int words() {
    return words;
  }

  /** The bits of all rows, {@link #words()} longs each. */
  long[] bits() {
    return bits;
  }

  /** Whether a row is covered by one of the columns in a set of bits. */
  boolean covered(int row, long[] set) {
    long any = 0;
    for (int k = 0; k < words; k++) {
      any |= bits[row * words + k] & set[k];
    }
    return any != 0;
  }

  double area(int row) {
    return area[row];
  }

  double volume(int row) {
    return volume[row];
  }

  /** A set of columns as bits. */
  long[] set(int[] chosen) {
    long[] out = new long[words];
    for (int j : chosen) {
      FreeBits.set(out, j);
    }
    return out;
  }
}
