package org.castwright.seams;

import java.util.Arrays;

/** Grows the parent and label of each facet of a {@link Tiling} side by side. */
final class Rows {

  private int[] parent;
  private byte[] label;
  private int size;

  Rows(int expected) {
    parent = new int[Math.max(8, expected)];
    label = new byte[parent.length];
  }

  void add(int p, byte l) {
    if (size == parent.length) {
      parent = Arrays.copyOf(parent, 2 * size);
      label = Arrays.copyOf(label, 2 * size);
    }
    parent[size] = p;
    label[size++] = l;
  }

  int[] parents() {
    return Arrays.copyOf(parent, size);
  }

  byte[] labels() {
    return Arrays.copyOf(label, size);
  }
}
