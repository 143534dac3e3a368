package org.castwright.seams;

/**
 * An energy of yes-or-no variables that a minimum cut minimizes exactly: costs of one variable, of
 * two as long as agreeing is no dearer than differing (Kolmogorov, Zabih, "What energy functions
 * can be minimized via graph cuts?", PAMI 26(2), 2004), and implications. A variable is yes when
 * its node ends on the source side; ties go to no.
 */
final class BinaryMove {

  private final MaxFlow graph;
  private long constant;

  BinaryMove(int variables, int pairs) {
    graph = new MaxFlow(variables, pairs);
  }

  void unary(int v, long no, long yes) {
    long common = Math.min(no, yes);
    constant += common;
    graph.terminals(v, no - common, yes - common);
  }

  /**
   * A cost for each answer of u and v, in that order; {@code noYes + yesNo >= noNo + yesYes} is
   * required.
   */
  void pair(int u, int v, long noNo, long noYes, long yesNo, long yesYes) {
    long differ = noYes + yesNo - noNo - yesYes;
    if (differ < 0) {
      throw new IllegalArgumentException("agreeing must not cost more than differing");
    }
    constant += noNo;
    linear(u, yesNo - noNo);
    linear(v, yesYes - yesNo);
    graph.arc(v, u, differ, 0);
  }

  /** Adds {@code cost} if u and v differ. */
  void differ(int u, int v, long cost) {
    graph.arc(u, v, cost, cost);
  }

  /** Adds {@code cost} if u is yes and v is no. */
  void unlessFollowed(int u, int v, long cost) {
    graph.arc(u, v, cost, 0);
  }

  /** u yes needs v yes. */
  void implies(int u, int v) {
    unlessFollowed(u, v, MaxFlow.INFINITE);
  }

  private void linear(int v, long cost) {
    if (cost >= 0) {
      unary(v, 0, cost);
    } else {
      constant += cost;
      graph.terminals(v, -cost, 0);
    }
  }

  /** The least energy; call once. */
  long minimize() {
    return constant + graph.run();
  }

  boolean yes(int v) {
    return graph.sourceSide(v);
  }
}
