package org.castwright.seams;

/**
 * Sites that each get one of {@link #labels} labels, 0 to labels - 1. The energy is the sum of the
 * sites' costs, of the weights of edges whose ends differ, and of the costs of all labels in use.
 */
final class PottsProblem {

  final int labels;

  /**
   * The cost of label l at site s is {@code unary[s * labels + l]}, zero or above; {@link
   * MaxFlow#INFINITE} forbids it.
   */
  final long[] unary;

  /** Edge e joins sites {@code from[e]} and {@code to[e]} with weight {@code weight[e]}. */
  final int[] from;

  final int[] to;
  final long[] weight;

  /** Paid once for a label in use anywhere, zero or above. */
  final long[] labelCost;

  PottsProblem(int labels, long[] unary, int[] from, int[] to, long[] weight, long[] labelCost) {
    this.labels = labels;
    this.unary = unary;
    this.from = from;
    this.to = to;
    this.weight = weight;
    this.labelCost = labelCost;
  }

  int sites() {
    return unary.length / labels;
  }

  long energy(byte[] label) {
    long sum = 0;
    boolean[] used = new boolean[labels];
    for (int s = 0; s < label.length; s++) {
      sum += unary[s * labels + label[s]];
      used[label[s]] = true;
    }
    for (int e = 0; e < from.length; e++) {
      sum += label[from[e]] != label[to[e]] ? weight[e] : 0;
    }
    for (int l = 0; l < labels; l++) {
      sum += used[l] ? labelCost[l] : 0;
    }
    return sum;
  }
}
