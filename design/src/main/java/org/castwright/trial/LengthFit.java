package org.castwright.trial;

import java.util.List;

/**
 * Linear shrink from lengths before and after, by least squares through the origin: of all factors
 * k the one with the least sum of (after − k·before)². Its spread is Student's two-sided 95 %
 * interval (W. S. Gosset, "The probable error of a mean", Biometrika 6, 1908).
 *
 * @param percent 100·(1 − k); above zero the length gets smaller
 * @param spreadPercent half the interval, or null with a single length
 * @param lengths how many
 * @param worstMm largest misfit of a length
 */
public record LengthFit(double percent, Double spreadPercent, int lengths, double worstMm) {

  /** Quantiles of Student's t for 97.5 % and 1, 2, ... degrees of freedom, of any table. */
  private static final double[] STUDENT = {
    12.7062, 4.3027, 3.1824, 2.7764, 2.5706, 2.4469, 2.3646, 2.3060, 2.2622, 2.2281
  };

  /**
   * A length before and after.
   *
   * @param beforeMm as drawn
   * @param afterMm as measured
   */
  public record Pair(double beforeMm, double afterMm) {}

  /**
   * Fits at least one length.
   *
   * @throws IllegalArgumentException if there is none
   */
  public static LengthFit of(List<Pair> pairs) {
    if (pairs.isEmpty()) {
      throw new IllegalArgumentException("a shrink needs at least one measured length");
    }
    double xx = 0;
    double xy = 0;
    for (Pair p : pairs) {
      xx += p.beforeMm() * p.beforeMm();
      xy += p.beforeMm() * p.afterMm();
    }
    double k = xy / xx;
    double squares = 0;
    double worst = 0;
    for (Pair p : pairs) {
      double off = p.afterMm() - k * p.beforeMm();
      squares += off * off;
      worst = Math.max(worst, Math.abs(off));
    }
    int free = pairs.size() - 1;
    Double spread = free == 0 ? null : 100 * student(free) * Math.sqrt(squares / free / xx);
    return new LengthFit(100 * (1 - k), spread, pairs.size(), worst);
  }

  /**
   * The quantile; beyond ten degrees of freedom by the first terms of Fisher's expansion about the
   * normal quantile (R. A. Fisher and E. A. Cornish, Technometrics 2, 1960), good to 0.001.
   */
  static double student(int free) {
    if (free <= STUDENT.length) {
      return STUDENT[free - 1];
    }
    double z = 1.959964;
    double first = (z * z * z + z) / 4;
    double second = (5 * Math.pow(z, 5) + 16 * z * z * z + 3 * z) / 96;
    double third = (3 * Math.pow(z, 7) + 19 * Math.pow(z, 5) + 17 * z * z * z - 15 * z) / 384;
    return z + (first + (second + third / free) / free) / free;
  }
}
