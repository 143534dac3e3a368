package org.castwright.repair;

import java.util.Arrays;

/** Numbers keys above zero in the order they first appear; open addressing, no boxing. */
final class EdgeNumbers {

  private long[] keys = new long[1 << 12];
  private int[] numbers = new int[1 << 12];
  private long[] ordered = new long[1 << 10];
  private int count;

  int of(long key) {
    int slot = slot(key);
    if (keys[slot] == key) {
      return numbers[slot];
    }
    keys[slot] = key;
    numbers[slot] = count;
    ordered = count == ordered.length ? Arrays.copyOf(ordered, 2 * count) : ordered;
    ordered[count++] = key;
    if (2 * count > keys.length) {
      grow();
    }
    return count - 1;
  }

  /** The keys in the order of their numbers. */
  long[] keys() {
    return Arrays.copyOf(ordered, count);
  }

  private void grow() {
    keys = new long[2 * keys.length];
    numbers = new int[keys.length];
    for (int i = 0; i < count; i++) {
      int slot = slot(ordered[i]);
      keys[slot] = ordered[i];
      numbers[slot] = i;
    }
  }

  private int slot(long key) {
    int mask = keys.length - 1;
    // Fibonacci hashing: 2^64 / golden ratio (Knuth, The Art of Computer Programming 3, 6.4)
    int slot = (int) ((key * 0x9E3779B97F4A7C15L) >>> 32) & mask;
    while (keys[slot] != 0 && keys[slot] != key) {
      slot = (slot + 1) & mask;
    }
    return slot;
  }
}
