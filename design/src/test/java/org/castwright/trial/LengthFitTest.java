package org.castwright.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LengthFitTest {

  private static LengthFit.Pair pair(double before, double after) {
    return new LengthFit.Pair(before, after);
  }

  @Test
  void exactLengthsGiveTheShrinkWithoutSpread() {
    LengthFit f = LengthFit.of(List.of(pair(50, 49), pair(100, 98), pair(20, 19.6)));
    assertEquals(2, f.percent(), 1e-12);
    assertEquals(0, f.spreadPercent(), 1e-12);
    assertEquals(3, f.lengths());
    assertEquals(0, f.worstMm(), 1e-12);
  }

  @Test
  void twoLengthsByHand() {
    // k = (10·9.9 + 20·19.6)/(100 + 400) = 491/500; residuals 0.08 and -0.04, sum of squares 0.008
    LengthFit f = LengthFit.of(List.of(pair(10, 9.9), pair(20, 19.6)));
    assertEquals(1.8, f.percent(), 1e-12);
    assertEquals(0.08, f.worstMm(), 1e-12);
    assertEquals(100 * 12.7062 * Math.sqrt(0.008 / 500), f.spreadPercent(), 1e-9);
  }

  @Test
  void oneLengthTellsNoSpread() {
    LengthFit f = LengthFit.of(List.of(pair(120, 118.8)));
    assertEquals(1, f.percent(), 1e-12);
    assertNull(f.spreadPercent());
    assertThrows(IllegalArgumentException.class, () -> LengthFit.of(List.of()));
  }

  /** Of many casts measured with noise, the interval holds the true shrink 95 times in 100. */
  @Test
  void theIntervalHoldsTheTruthAsOftenAsItSays() {
    Random noise = new Random(5);
    int held = 0;
    int tries = 4000;
    for (int t = 0; t < tries; t++) {
      List<LengthFit.Pair> pairs = new ArrayList<>();
      for (double l : new double[] {30, 60, 90, 120}) {
        pairs.add(pair(l, l * 0.985 + 0.1 * noise.nextGaussian()));
      }
      LengthFit f = LengthFit.of(pairs);
      held += Math.abs(f.percent() - 1.5) <= f.spreadPercent() ? 1 : 0;
    }
    assertEquals(0.95, held / (double) tries, 0.012);
  }

  /** The area under Student's density between the quantiles is 0.95, by Simpson's rule. */
  @Test
  void quantilesCutOffTwoAndAHalfPercent() {
    for (int n : new int[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 20, 50, 200}) {
      double t = LengthFit.student(n);
      int steps = 20_000;
      double h = t / steps;
      double area = 0;
      double whole = 0;
      for (int i = 0; i <= steps; i++) {
        double w = i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2;
        area += w * density(i * h, n);
        // the rest to infinity by x = t / u
        double u = (double) i / steps;
        whole += u == 0 ? w * tail(t, n) : w * density(t / u, n) * t / u / u;
      }
      area *= h / 3;
      whole = whole / steps / 3 + area;
      assertEquals(0.95, area / whole, 3e-4, "degrees of freedom: " + n);
    }
    assertTrue(LengthFit.student(1000) > 1.9599);
  }

  private static double density(double x, int n) {
    return Math.pow(1 + x * x / n, -(n + 1) / 2.0);
  }

  /** The limit of the substituted density at u = 0. */
  private static double tail(double t, int n) {
    return n == 1 ? 1 / t : 0;
  }
}
