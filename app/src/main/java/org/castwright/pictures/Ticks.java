package org.castwright.pictures;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Round numbers along a scale. */
final class Ticks {

  private static final double[] ROUND = {1, 2, 5, 10};

  /** About this many ticks. */
  private static final int WANTED = 6;

  private Ticks() {}

  static double step(double low, double high) {
    double rough = (high - low) / WANTED;
    double power = 1;
    while (power > rough) {
      power /= 10;
    }
    while (power * 10 <= rough) {
      power *= 10;
    }
    for (double r : ROUND) {
      if (r * power >= rough) {
        return r * power;
      }
    }
    return 10 * power;
  }

  static List<Double> of(double low, double high) {
    double step = step(low, high);
    List<Double> ticks = new ArrayList<>();
    // a hundredth of a step lets the last tick stand on the end in spite of rounding
    for (long k = (long) Math.ceil(low / step - 0.01); k * step <= high + 0.01 * step; k++) {
      ticks.add(k * step);
    }
    return ticks;
  }

  static String label(double value, double step) {
    int decimals = 0;
    for (double s = step; s < 0.99 && decimals < 6; s *= 10) {
      decimals++;
    }
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }
}
