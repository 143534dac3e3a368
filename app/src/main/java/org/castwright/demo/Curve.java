package org.castwright.demo;

/** Smooth functions the demo models are drawn with; the same digits on every machine. */
final class Curve {

  private Curve() {}

  /** 0 up to {@code from}, 1 beyond {@code to}, an S between; {@code to} may lie below. */
  static double step(double from, double to, double x) {
    double t = Math.min(1, Math.max(0, (x - from) / (to - from)));
    return t * t * (3 - 2 * t);
  }

  /** A rounded maximum; {@code round} is how far the corner is rounded, in the values' unit. */
  static double max(double a, double b, double round) {
    double high = Math.max(a, b);
    return high
        + round
            * StrictMath.log(
                StrictMath.exp((a - high) / round) + StrictMath.exp((b - high) / round));
  }

  static double min(double a, double b, double round) {
    return -max(-a, -b, round);
  }
}
