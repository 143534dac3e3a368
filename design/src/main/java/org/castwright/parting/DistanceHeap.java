package org.castwright.parting;

import java.util.Arrays;

/**
 * A binary heap of (key, node), least key first, without boxing; stale entries are the caller's.
 */
final class DistanceHeap {
  private double[] key = new double[256];
  private int[] node = new int[256];
  private int n;

  boolean isEmpty() {
    return n == 0;
  }

  void push(double k, int v) {
    if (n == key.length) {
      key = Arrays.copyOf(key, 2 * n);
      node = Arrays.copyOf(node, 2 * n);
    }
    int i = n++;
    while (i > 0) {
      int p = (i - 1) / 2;
      if (key[p] <= k) {
        break;
      }
      key[i] = key[p];
      node[i] = node[p];
      i = p;
    }
    key[i] = k;
    node[i] = v;
  }

  double topKey() {
    return key[0];
  }

  /** Removes the least entry and returns its node. */
  int pop() {
    int top = node[0];
    double k = key[--n];
    int v = node[n];
    int i = 0;
    while (2 * i + 1 < n) {
      int c = 2 * i + 1;
      if (c + 1 < n && key[c + 1] < key[c]) {
        c++;
      }
      if (key[c] >= k) {
        break;
      }
      key[i] = key[c];
      node[i] = node[c];
      i = c;
    }
    key[i] = k;
    node[i] = v;
    return top;
  }
}
