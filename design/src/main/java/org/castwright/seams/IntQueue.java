package org.castwright.seams;

/** First in, first out, without boxing; grows as needed. */
final class IntQueue {

  private int[] ring;
  private int head;
  private int size;

  IntQueue(int expected) {
    ring = new int[Integer.highestOneBit(Math.max(8, expected)) * 2];
  }

  void add(int v) {
    if (size == ring.length) {
      int[] wider = new int[2 * ring.length];
      for (int i = 0; i < size; i++) {
        wider[i] = ring[(head + i) & (ring.length - 1)];
      }
      ring = wider;
      head = 0;
    }
    ring[(head + size++) & (ring.length - 1)] = v;
  }

  int take() {
    int v = ring[head];
    head = (head + 1) & (ring.length - 1);
    size--;
    return v;
  }

  int size() {
    return size;
  }

  boolean isEmpty() {
    return size == 0;
  }
}
