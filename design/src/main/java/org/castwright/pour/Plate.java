package org.castwright.pour;

/**
 * A rectangular plate under even pressure: factors of its bending. With {@code q} the pressure,
 * {@code a} the short side and {@code D} the plate's stiffness, deflection {@code w = deflection ·
 * q·a⁴/D} and moments per length {@code M = factor · q·a²}.
 *
 * @param deflection of the center
 * @param momentAcross at the center, bending across the short side
 * @param momentAlong at the center, bending along the long side
 * @param edgeMoment at the middle of the long edge, size; 0 when supported simply
 * @param edgeMomentShort at the middle of the short edge, size; 0 when supported simply
 * @param edgeReaction highest reaction, at the middle of the long edge, as a share of {@code q·a}
 */
public record Plate(
    double deflection,
    double momentAcross,
    double momentAlong,
    double edgeMoment,
    double edgeMomentShort,
    double edgeReaction) {

  /** Terms of the series: the first left out changes no twelfth digit. */
  private static final int LAST_TERM = 199;

  /** {@code 10.92 = 12(1 − 0.3²)} turns the factor of deflection into Roark's. */
  private static final double ROARK_DEFLECTION = 12 * (1 - 0.3 * 0.3);

  /**
   * Supported simply on all edges: Levy's single series (Timoshenko and Woinowsky-Krieger, Theory
   * of Plates and Shells, article 30; Roark's Formulas, table 11.4 case 1a).
   *
   * @param ratio long side over short side, 1 or more; infinite for a strip
   */
  public static Plate simple(double ratio, double poisson) {
    requireRatio(ratio);
    double w = 0;
    double across = 0;
    double along = 0;
    double reaction = 0.5;
    for (int m = 1; m <= LAST_TERM; m += 2) {
      double sign = m % 4 == 1 ? 1 : -1;
      double k = Math.PI * m;
      double alpha = k * ratio / 2;
      double cosh = Math.cosh(alpha);
      double over = 1 / cosh;
      double edge = Double.isInfinite(cosh) ? 0 : (alpha * Math.tanh(alpha) + 2) / (2 * cosh);
      w += sign * 4 / Math.pow(k, 5) * (1 - edge);
      across += sign * 4 / Math.pow(k, 3) * (1 - edge + poisson * (edge - over));
      along += sign * 4 / Math.pow(k, 3) * (edge - over + poisson * (1 - edge));
      reaction += 4 / (k * k) * (-edge + (2 - poisson) * (edge - over));
    }
    return new Plate(w, across, along, 0, 0, reaction);
  }

  /**
   * Clamped on all edges, by the method of Ritz (Timoshenko and Woinowsky-Krieger, article 44 and
   * table 35; Roark's Formulas, table 11.4 case 8a).
   */
  public static Plate clamped(double ratio, double poisson) {
    requireRatio(ratio);
    if (Double.isInfinite(ratio)) {
      return new Plate(1.0 / 384, 1.0 / 24, poisson / 24, 1.0 / 12, poisson / 12, 0.5);
    }
    Ritz ritz = new Ritz(Ritz.Ends.BOTH_CLAMPED, Ritz.Ends.BOTH_CLAMPED, ratio, poisson);
    Ritz.Bent b = ritz.under((x, y) -> 1);
    double mid = 0.5;
    return new Plate(
        b.deflection(mid, mid),
        b.momentX(mid, mid),
        b.momentY(mid, mid),
        -b.momentX(0, mid),
        -b.momentY(mid, 0),
        Double.NaN);
  }

  /**
   * Clamped on three edges with the fourth free, by the method of Ritz: deflection of the middle of
   * the free edge, the highest for even pressure, with {@code a} the side along the free edge.
   *
   * @param heightRatio the other side over {@code a}, 0.2 or more: flatter plates are cantilevers
   */
  public static double freeEdgeDeflection(double heightRatio, double poisson) {
    if (!(heightRatio >= 0.2)) {
      throw new IllegalArgumentException("a wall with a free edge is not so flat");
    }
    return new Ritz(Ritz.Ends.BOTH_CLAMPED, Ritz.Ends.FIRST_CLAMPED, heightRatio, poisson)
        .under((x, y) -> 1)
        .deflection(0.5, 1);
  }

  /** Roark's factor of deflection, {@code y = factor·q·b⁴/(E·t³)}, for Poisson's ratio 0.3. */
  public double roarkDeflection() {
    return ROARK_DEFLECTION * deflection;
  }

  /** Roark's factor of stress, {@code σ = factor·q·b²/t²}, the greater of center and edge. */
  public double roarkStress() {
    return 6 * Math.max(Math.max(momentAcross, momentAlong), Math.max(edgeMoment, edgeMomentShort));
  }

  /**
   * Deflection of the center, mm.
   *
   * @param shortMm short side
   * @param thicknessMm thickness
   * @param pressurePa even pressure
   */
  public double deflectionMm(Elastic e, double shortMm, double thicknessMm, double pressurePa) {
    double q = pressurePa / Liquid.MM2_PER_M2;
    return deflection * q * Math.pow(shortMm, 4) / e.plateNmm(thicknessMm);
  }

  /** Highest bending stress, MPa: {@code 6M/t²}. */
  public double stressMPa(double shortMm, double thicknessMm, double pressurePa) {
    double q = pressurePa / Liquid.MM2_PER_M2;
    return roarkStress() * q * shortMm * shortMm / (thicknessMm * thicknessMm);
  }

  /** The thickness, mm, at which the center gives way by just {@code allowedMm}. */
  public double thicknessMm(Elastic e, double shortMm, double allowedMm, double pressurePa) {
    double atOne = deflectionMm(e, shortMm, 1, pressurePa);
    return Math.cbrt(atOne / allowedMm);
  }

  private static void requireRatio(double ratio) {
    if (!(ratio >= 1)) {
      throw new IllegalArgumentException("the long side of a plate is not below the short one");
    }
  }
}
