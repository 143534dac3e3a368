package org.castwright.cover;

import java.util.Arrays;

/** An order of pulls and the bodies it gives. */
final class PullOrder {

  private final int[] order;
  private final int[] bodies;
  private final double[] volumes;
  private final double smallest;

  /**
   * @param order places in the list of pulls
   * @param bodies by pull, in that order
   * @param volumes taken by each pull, in that order, mm³
   * @param smallest volume of the smallest body, mm³
   */
  PullOrder(int[] order, int[] bodies, double[] volumes, double smallest) {
    this.order = order.clone();
    this.bodies = bodies.clone();
    this.volumes = volumes.clone();
    this.smallest = smallest;
  }

  /** The place in the list of pulls of the one taken {@code i}th. */
  int at(int i) {
    return order[i];
  }

  /** The same with the {@code i}th and the next exchanged: places in the list of pulls. */
  int[] exchanged(int i) {
    int[] out = order.clone();
    out[i] = order[i + 1];
    out[i + 1] = order[i];
    return out;
  }

  /** In how many bodies the {@code i}th piece falls. */
  int bodies(int i) {
    return bodies[i];
  }

  /** What the {@code i}th pull takes, mm³. */
  double volume(int i) {
    return volumes[i];
  }

  int total() {
    return Arrays.stream(bodies).sum();
  }

  /** Fewer bodies are better, then a larger smallest body. */
  boolean betterThan(PullOrder o) {
    return total() != o.total() ? total() < o.total() : smallest > o.smallest;
  }
}
