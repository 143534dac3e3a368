package org.castwright.cover;

import java.util.Arrays;

/** A list of demands, each a set of columns of which one must be chosen; packed in one array. */
final class Demands {

  private final int columns;
  private final int words;
  private long[] bits;
  private int count;

  Demands(int columns) {
    this.columns = columns;
    words = FreeBits.words(columns);
    bits = new long[64 * words];
  }

  int count() {
    return count;
  }

  /** Adds a demand; one that holds another is met whenever the other is, and is dropped. */
  void add(long[] demand) {
    for (int i = 0; i < count; i++) {
      if (holds(demand, 0, bits, i * words)) {
        return;
      }
    }
    int kept = 0;
    for (int i = 0; i < count; i++) {
      if (!holds(bits, i * words, demand, 0)) {
        System.arraycopy(bits, i * words, bits, kept * words, words);
        kept++;
      }
    }
    count = kept + 1;
    if (count * words > bits.length) {
      bits = Arrays.copyOf(bits, 2 * bits.length);
    }
    System.arraycopy(demand, 0, bits, kept * words, words);
  }

  private boolean holds(long[] large, int o, long[] small, int p) {
    for (int k = 0; k < words; k++) {
      if ((small[p + k] & ~large[o + k]) != 0) {
        return false;
      }
    }
    return true;
  }

  /** The demands that a set does not meet, without banned columns. */
  Demands unmet(long[] set, long[] banned) {
    Demands out = new Demands(columns);
    for (int i = 0; i < count; i++) {
      if (!meets(i, set)) {
        if ((out.count + 1) * words > out.bits.length) {
          out.bits = Arrays.copyOf(out.bits, 2 * out.bits.length);
        }
        for (int k = 0; k < words; k++) {
          out.bits[out.count * words + k] = bits[i * words + k] & ~banned[k];
        }
        out.count++;
      }
    }
    return out;
  }

  private boolean meets(int i, long[] set) {
    long any = 0;
    for (int k = 0; k < words; k++) {
      any |= bits[i * words + k] & set[k];
    }
    return any != 0;
  }

  /**
   * The columns that meet all demands a set does not. A demand that leaves none comes first next
   * time, since it is likely to do so again.
   */
  long[] common(long[] set, long[] banned) {
    long[] out = new long[words];
    Arrays.fill(out, -1L);
    if ((columns & Long.SIZE - 1) != 0) {
      out[words - 1] = (1L << columns) - 1;
    }
    for (int k = 0; k < words; k++) {
      out[k] &= ~banned[k];
    }
    for (int i = 0; i < count; i++) {
      if (!meets(i, set)) {
        long any = 0;
        for (int k = 0; k < words; k++) {
          out[k] &= bits[i * words + k];
          any |= out[k];
        }
        if (any == 0) {
          swap(i, i / 2);
          return out;
        }
      }
    }
    return out;
  }

  private void swap(int i, int j) {
    for (int k = 0; k < words; k++) {
      long b = bits[i * words + k];
      bits[i * words + k] = bits[j * words + k];
      bits[j * words + k] = b;
    }
  }

  /** How many columns a demand names. */
  int size(int i) {
    int n = 0;
    for (int k = 0; k < words; k++) {
      n += Long.bitCount(bits[i * words + k]);
    }
    return n;
  }

  /** The first of the demands with the fewest columns. */
  int smallest() {
    int best = 0;
    int fewest = Integer.MAX_VALUE;
    for (int i = 0; i < count; i++) {
      int size = size(i);
      if (size < fewest) {
        fewest = size;
        best = i;
      }
    }
    return best;
  }

  /** The columns of a demand, ascending. */
  int[] columns(int i) {
    int[] out = new int[size(i)];
    int n = 0;
    for (int k = 0; k < words; k++) {
      for (long b = bits[i * words + k]; b != 0; b &= b - 1) {
        out[n++] = k * Long.SIZE + Long.numberOfTrailingZeros(b);
      }
    }
    return out;
  }

  /** How many demands each column meets. */
  int[] met() {
    int[] met = new int[words * Long.SIZE];
    for (int i = 0; i < count; i++) {
      for (int j : columns(i)) {
        met[j]++;
      }
    }
    return met;
  }
}
