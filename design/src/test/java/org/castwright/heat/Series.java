package org.castwright.heat;

import org.castwright.heat.OneTerm.Shape;

/**
 * The whole series of a cooling slab, long cylinder or sphere at its center: Carslaw and Jaeger,
 * Conduction of Heat in Solids, 2nd ed., 3.11, 7.6, 9.4, with as many terms as count.
 */
final class Series {

  private static final int TERMS = 30;

  private final double[] lambda = new double[TERMS];
  private final double[] a = new double[TERMS];

  Series(Shape shape, double biot) {
    int found = 0;
    double step = 0.01;
    for (double x = step; found < TERMS; x += step) {
      if (residual(shape, biot, x) * residual(shape, biot, x + step) < 0) {
        double at = bisect(shape, biot, x, x + step);
        lambda[found] = at;
        a[found++] = factor(shape, at);
      }
    }
  }

  private static double residual(Shape shape, double biot, double x) {
    double inverse = 1 / biot;
    return switch (shape) {
      case SLAB -> inverse * x * Math.sin(x) - Math.cos(x);
      case CYLINDER -> inverse * x * Functions.bessel(1, x) - Functions.bessel(0, x);
      case SPHERE -> inverse * (Math.sin(x) - x * Math.cos(x)) - Math.sin(x);
    };
  }

  private static double factor(Shape shape, double x) {
    return switch (shape) {
      case SLAB -> 4 * Math.sin(x) / (2 * x + Math.sin(2 * x));
      case CYLINDER -> {
        double j0 = Functions.bessel(0, x);
        double j1 = Functions.bessel(1, x);
        yield 2 / x * j1 / (j0 * j0 + j1 * j1);
      }
      case SPHERE -> 4 * (Math.sin(x) - x * Math.cos(x)) / (2 * x - Math.sin(2 * x));
    };
  }

  private static double bisect(Shape shape, double biot, double lo, double hi) {
    double l = lo;
    double h = hi;
    for (int i = 0; i < 60; i++) {
      double m = (l + h) / 2;
      if (residual(shape, biot, l) * residual(shape, biot, m) <= 0) {
        h = m;
      } else {
        l = m;
      }
    }
    return l;
  }

  double share(double fourier) {
    double sum = 0;
    for (int i = 0; i < TERMS; i++) {
      sum += a[i] * Math.exp(-lambda[i] * lambda[i] * fourier);
    }
    return sum;
  }

  /** The Fourier number at which a share is left at the center. */
  double fourier(double share) {
    double lo = 0.01;
    double hi = 1000;
    for (int i = 0; i < 100; i++) {
      double m = (lo + hi) / 2;
      if (share(m) > share) {
        lo = m;
      } else {
        hi = m;
      }
    }
    return lo;
  }
}
