package org.castwright.repair;

import java.util.Arrays;

/** Disjoint sets of 0..n-1; the name of a set is its lowest member. */
final class Sets {

  private final int[] parent;

  Sets(int n) {
    parent = new int[n];
    Arrays.setAll(parent, i -> i);
  }

  int find(int start) {
    int i = start;
    while (parent[i] != i) {
      parent[i] = parent[parent[i]];
      i = parent[i];
    }
    return i;
  }

  void unite(int a, int b) {
    int ra = find(a);
    int rb = find(b);
    parent[Math.max(ra, rb)] = Math.min(ra, rb);
  }
}
