package org.castwright.stretch;

import java.util.Arrays;

/** A growing list of cells, used as a stack too. */
final class IntList {

  private int[] items = new int[64];
  private int size;

  void add(int item) {
    if (size == items.length) {
      items = Arrays.copyOf(items, 2 * size);
    }
    items[size++] = item;
  }

  int pop() {
    return items[--size];
  }

  int get(int i) {
    return items[i];
  }

  int size() {
    return size;
  }

  void clear() {
    size = 0;
  }
}
