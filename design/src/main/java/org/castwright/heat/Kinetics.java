package org.castwright.heat;

/**
 * How fast a mix sets: the share set, a, grows as {@code da/dt = K (κ + a)(1 − a)ⁿ}, autocatalytic
 * (Kamal and Sourour, Polym. Eng. Sci. 13, 1973), or as {@code K (1 − a)ⁿ} when κ is infinite. K
 * grows with temperature by Arrhenius' law.
 *
 * @param rate K (1 + κ) at the reference temperature, 1/s; K itself when κ is infinite
 * @param kappa κ
 * @param order n, 1 or 2
 * @param referenceC °C
 * @param activationK activation energy over the gas constant, K; zero for none
 */
record Kinetics(double rate, double kappa, int order, double referenceC, double activationK) {

  private static final double ZERO_C = 273.15;

  /** J/(mol K). */
  private static final double GAS_CONSTANT = 8.314462618;

  /** Beyond this κ the two laws cannot be told apart. */
  private static final double LARGEST_KAPPA = 1e6;

  private static final double SMALLEST_KAPPA = 1e-12;

  /** No more than this share sets within one step of the local equation. */
  private static final double LARGEST_CHANGE = 0.02;

  /** Nor as much as warms by more than this, K: ten kelvins can double the speed. */
  private static final double LARGEST_WARMING_K = 2;

  /** Nor more than this share of what drives it on. */
  private static final double LARGEST_GROWTH = 0.05;

  /** What is left to set no longer counts. */
  private static final double DONE = 1e-6;

  Kinetics {
    if (!(rate > 0 && kappa > 0 && activationK >= 0) || order < 1 || order > 2) {
      throw new IllegalArgumentException("a reaction needs a rate, a start and an order 1 or 2");
    }
  }

  /**
   * The law that comes to two shares at two times when held at the reference temperature. Where the
   * second time is too late even without autocatalysis, {@code K (1 − a)ⁿ} through the second time.
   *
   * @param order n
   * @param workS time to {@code workShare}, s
   * @param demoldS time to {@code demoldShare}, s, later
   */
  static Kinetics through(
      int order,
      double workS,
      double workShare,
      double demoldS,
      double demoldShare,
      double referenceC,
      double activationK) {
    if (!(workS > 0 && demoldS > workS && workShare > 0 && demoldShare > workShare)
        || demoldShare >= 1) {
      throw new IllegalArgumentException(
          "setting needs a working time and a later time to demold, not "
              + workS
              + " s and "
              + demoldS
              + " s");
    }
    double ratio = demoldS / workS;
    double widest =
        grown(order, demoldShare, LARGEST_KAPPA) / grown(order, workShare, LARGEST_KAPPA);
    if (ratio >= widest) {
      double k = grown(order, demoldShare, LARGEST_KAPPA) / demoldS;
      return new Kinetics(k, Double.POSITIVE_INFINITY, order, referenceC, activationK);
    }
    double kappa =
        StrictMath.exp(
            Functions.root(
                x -> {
                  double k = StrictMath.exp(x);
                  return grown(order, demoldShare, k) / grown(order, workShare, k) - ratio;
                },
                StrictMath.log(SMALLEST_KAPPA),
                StrictMath.log(LARGEST_KAPPA)));
    double rate = grown(order, workShare, kappa) / workS;
    return new Kinetics(rate, kappa, order, referenceC, activationK);
  }

  /** K (1 + κ) t at which the share is reached. */
  private static double grown(int order, double share, double kappa) {
    double logs = StrictMath.log1p(share / kappa) - StrictMath.log1p(-share);
    return order == 1 ? logs : logs / (1 + kappa) + share / (1 - share);
  }

  /** Speed at which the unset part sets, 1/s: {@code da/dt / (1 − a)}. */
  double speed(double share, double celsius) {
    double form = Double.isInfinite(kappa) ? 1 : (kappa + share) / (kappa + 1);
    return rate * form * (order == 2 ? 1 - share : 1) * warmth(celsius);
  }

  /** How much faster than at the reference temperature. */
  private double warmth(double celsius) {
    return activationK == 0
        ? 1
        : StrictMath.exp(activationK * (1 / (referenceC + ZERO_C) - 1 / (celsius + ZERO_C)));
  }

  /** E / R of an activation energy, K. */
  static double activationK(double kJPerMol) {
    return kJPerMol * 1000 / GAS_CONSTANT;
  }

  /**
   * The share set after some time in a place whose surroundings warm or cool it evenly.
   *
   * @param share share set before
   * @param celsius temperature before, °C
   * @param riseK how much the whole reaction warms it, K
   * @param driftKPerS how fast the surroundings warm it, K/s
   * @param forS s
   */
  double advance(double share, double celsius, double riseK, double driftKPerS, double forS) {
    double a = share;
    double left = forS;
    double largest =
        riseK > 0 ? Math.min(LARGEST_CHANGE, LARGEST_WARMING_K / riseK) : LARGEST_CHANGE;
    while (left > 0 && 1 - a > DONE) {
      double drift = (forS - left) * driftKPerS;
      double v = speed(a, celsius + (a - share) * riseK + drift);
      double change = Math.min(largest, LARGEST_GROWTH * (kappa + a));
      double step = Math.min(left, change / (v * (1 - a)));
      double middle = 1 - (1 - a) * decay(v * step / 2);
      double then = celsius + (middle - share) * riseK + drift + step / 2 * driftKPerS;
      a = 1 - (1 - a) * decay(speed(middle, then) * step);
      left -= step;
    }
    return a;
  }

  /** exp(−x) for x from 0 up, good to x⁴/24: positive and falling everywhere. */
  private static double decay(double x) {
    return 1 / (1 + x * (1 + x / 2 * (1 + x / 3)));
  }
}
