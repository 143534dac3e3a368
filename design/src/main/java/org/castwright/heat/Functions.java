package org.castwright.heat;

import java.util.function.DoubleUnaryOperator;

/** The few special functions that the closed forms need, to about twelve digits. */
final class Functions {

  /** Beyond this the error function is 1 to the last digit of a double. */
  private static final double ERF_IS_ONE = 6;

  /** Halvings that take any bracket down to neighboring doubles. */
  private static final int HALVINGS = 200;

  /** Points of the Bessel integral beyond the argument; its error falls faster than any power. */
  private static final int BESSEL_POINTS = 40;

  private Functions() {}

  /**
   * The error function for arguments from 0 up, by the series with terms of one sign only
   * (Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.6).
   */
  static double erf(double x) {
    if (x < 0) {
      throw new IllegalArgumentException("erf is needed from 0 up only, not at " + x);
    }
    if (x >= ERF_IS_ONE) {
      return 1;
    }
    double term = x;
    double sum = x;
    for (int n = 1; sum + term != sum; n++) {
      term *= 2 * x * x / (2 * n + 1);
      sum += term;
    }
    return Math.min(1, 2 / Math.sqrt(Math.PI) * StrictMath.exp(-x * x) * sum);
  }

  /** The Bessel function J of whole order, by its integral (Abramowitz and Stegun, 9.1.21). */
  static double bessel(int order, double x) {
    int n = BESSEL_POINTS + 2 * (int) Math.ceil(Math.abs(x));
    double sum = 0;
    for (int i = 0; i < n; i++) {
      double a = Math.PI * (i + 0.5) / n;
      sum += StrictMath.cos(order * a - x * StrictMath.sin(a));
    }
    return sum / n;
  }

  /** Where a rising or falling function passes zero between two places, the second included. */
  static double root(DoubleUnaryOperator f, double lo, double hi) {
    double a = lo;
    double b = hi;
    boolean rises = f.applyAsDouble(a) < 0;
    for (int i = 0; i < HALVINGS; i++) {
      double m = (a + b) / 2;
      if (f.applyAsDouble(m) > 0 == rises) {
        b = m;
      } else {
        a = m;
      }
    }
    return (a + b) / 2;
  }
}
