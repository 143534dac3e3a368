package org.castwright.coupon;

import java.util.List;
import org.castwright.plan.KeyShape;
import org.castwright.plan.PrintProcess;

/**
 * What the coupons are made for.
 *
 * @param process how they are printed
 * @param keyShape of the key to try
 * @param keyMm diameter of the key at its foot
 * @param gapsMm ladder of gaps, rising
 * @param marksMm where the bar's marks are, from the first, rising
 * @param boresMm ladder of bores, rising
 */
public record CouponOptions(
    PrintProcess process,
    KeyShape keyShape,
    double keyMm,
    List<Double> gapsMm,
    List<Double> marksMm,
    List<Double> boresMm) {

  /** Most rungs of a ladder: so many pits still mark one. */
  static final int MOST_RUNGS = 8;

  /** Checks every value; the message says what is allowed. */
  public CouponOptions {
    gapsMm = List.copyOf(gapsMm);
    marksMm = List.copyOf(marksMm);
    boresMm = List.copyOf(boresMm);
    require(keyMm >= 5 && keyMm <= 20, "the key must be 5 to 20 mm across");
    ladder(gapsMm, 0.02, 1, "gaps");
    ladder(boresMm, 0.4, 15, "bores");
    ladder(marksMm, 10, 200, "marks");
  }

  private static void ladder(List<Double> values, double least, double most, String name) {
    require(
        !values.isEmpty() && values.size() <= MOST_RUNGS,
        "the " + name + " must be 1 to " + MOST_RUNGS);
    double before = 0;
    for (double v : values) {
      require(v >= least && v <= most && v > before, name + " rise from " + least + " to " + most);
      before = v;
    }
  }

  private static void require(boolean ok, String words) {
    if (!ok) {
      throw new IllegalArgumentException(words);
    }
  }

  /**
   * Gaps round the process's usual one by 0.05 mm, about what a printer repeats; marks at 50 and
   * 100 mm; bores of the usual vents and small gates. Common practice, no source.
   */
  public static CouponOptions of(PrintProcess process) {
    double first = process == PrintProcess.FDM ? 0.15 : 0.05;
    List<Double> gaps = new java.util.ArrayList<>();
    for (int i = 0; i < 6; i++) {
      gaps.add(Math.rint(100 * (first + 0.05 * i)) / 100);
    }
    return new CouponOptions(
        process,
        KeyShape.CONE,
        10,
        gaps,
        List.of(50.0, 100.0),
        List.of(0.8, 1.0, 1.5, 2.0, 3.0, 5.0));
  }

  /** With another key. */
  public CouponOptions withKey(KeyShape shape, double mm) {
    return new CouponOptions(process, shape, mm, gapsMm, marksMm, boresMm);
  }

  /** With another ladder of gaps. */
  public CouponOptions withGapsMm(List<Double> gaps) {
    return new CouponOptions(process, keyShape, keyMm, gaps, marksMm, boresMm);
  }
}
