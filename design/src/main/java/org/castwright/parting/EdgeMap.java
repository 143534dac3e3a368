package org.castwright.parting;

import java.util.Arrays;

/**
 * A hash table from pairs of indices to an index, open addressing, without boxing. A pair is a
 * directed edge; {@link #both} makes the key of an edge regardless of direction.
 */
final class EdgeMap {

  static final int NONE = -1;
  private static final long EMPTY = -1L;
  private static final long MIX = 0x9E3779B97F4A7C15L; // 2^64 / golden ratio: spreads low bits

  private long[] keys;
  private int[] values;
  private int size;
  private int shift;

  EdgeMap(int expected) {
    int bits = Math.max(4, 33 - Integer.numberOfLeadingZeros(Math.max(1, expected)));
    keys = new long[1 << bits];
    values = new int[1 << bits];
    shift = 64 - bits;
    Arrays.fill(keys, EMPTY);
  }

  /** The key of the directed edge a to b, both zero or above. */
  static long directed(int a, int b) {
    return ((long) a << 32) | b;
  }

  /** The key of the edge between a and b. */
  static long both(int a, int b) {
    return a < b ? directed(a, b) : directed(b, a);
  }

  static int first(long key) {
    return (int) (key >> 32);
  }

  static int second(long key) {
    return (int) key;
  }

  /** The value, or {@link #NONE}. */
  int get(long key) {
    int i = slot(key);
    return keys[i] == EMPTY ? NONE : values[i];
  }

  /** Puts a value and returns the one it replaces, or {@link #NONE}. */
  int put(long key, int value) {
    int i = slot(key);
    if (keys[i] != EMPTY) {
      int old = values[i];
      values[i] = value;
      return old;
    }
    keys[i] = key;
    values[i] = value;
    if (++size * 2 > keys.length) {
      grow();
    }
    return NONE;
  }

  boolean has(long key) {
    return keys[slot(key)] != EMPTY;
  }

  int size() {
    return size;
  }

  private int slot(long key) {
    int i = (int) ((key * MIX) >>> shift);
    while (keys[i] != EMPTY && keys[i] != key) {
      i = (i + 1) & (keys.length - 1);
    }
    return i;
  }

  private void grow() {
    long[] k = keys;
    int[] v = values;
    keys = new long[2 * k.length];
    values = new int[2 * k.length];
    shift--;
    Arrays.fill(keys, EMPTY);
    for (int i = 0; i < k.length; i++) {
      if (k[i] != EMPTY) {
        int s = slot(k[i]);
        keys[s] = k[i];
        values[s] = v[i];
      }
    }
  }
}
