package org.castwright.proof;

/**
 * What lies ahead in one column: spans of a moving body against spans of a standing one, the move
 * going along +w (sign 1) or −w (sign −1). A straight translation is free exactly when no column
 * has standing body ahead of moving body (Wilson and Latombe, "On the qualitative structure of a
 * mechanical assembly", AAAI 1992).
 */
final class Ahead {

  private Ahead() {}

  /**
   * The longest stretch, mm, that the two bodies share in this column at any distance of the move:
   * for each pair of spans the shorter of both, cut down to what lies ahead.
   */
  static double depth(Spans moving, int mc, Spans still, int sc, double sign) {
    double deepest = 0;
    for (int i = moving.from(mc); i < moving.to(mc); i++) {
      for (int j = still.from(sc); j < still.to(sc); j++) {
        double ahead = sign > 0 ? still.high(j) - moving.low(i) : moving.high(i) - still.low(j);
        double shorter = Math.min(moving.high(i) - moving.low(i), still.high(j) - still.low(j));
        deepest = Math.max(deepest, Math.min(ahead, shorter));
      }
    }
    return deepest;
  }

  /** The length shared after the moving body has gone {@code shift} along +w. */
  static double shared(Spans moving, int mc, Spans still, int sc, double shift) {
    double sum = 0;
    for (int i = moving.from(mc); i < moving.to(mc); i++) {
      for (int j = still.from(sc); j < still.to(sc); j++) {
        double low = Math.max(moving.low(i) + shift, still.low(j));
        double high = Math.min(moving.high(i) + shift, still.high(j));
        sum += Math.max(0, high - low);
      }
    }
    return sum;
  }
}
