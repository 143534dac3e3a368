package org.castwright.pour;

/**
 * Flow through a round throat under a steady head: Bernoulli with entry loss plus Hagen-Poiseuille
 * friction, {@code ρgH = (ρ/2)(1+K)v² + 8µLv/r²}, solved for the mean velocity; it tends to the
 * orifice for thin liquids and to laminar pipe flow for thick ones. A yield stress takes {@code
 * 2τL/r} of the pressure before anything moves (Bingham; Buckingham 1921 for the flow, whose linear
 * part with 4/3 of that loss is used here; from memory).
 *
 * @param mlPerS flow, 1 ml = 1000 mm³; 0 when it does not move
 * @param mPerS mean velocity
 * @param reynolds {@code ρvd/µ}
 * @param regime which resistance rules
 */
public record GateFlow(double mlPerS, double mPerS, double reynolds, Regime regime) {

  /** Entry loss of a sharp-edged throat, handbooks of hydraulics; from memory. */
  public static final double ENTRY_LOSS = 0.5;

  /** Loss of pressure to a yield stress once it flows, of {@code 2τL/r}: Buckingham's 4/3. */
  private static final double BINGHAM = 4.0 / 3;

  private static final double ML_PER_M3 = 1e6;

  /** What resists most. */
  public enum Regime {
    /** The speed of the liquid itself: as out of a hole. */
    ORIFICE,
    /** Friction in the throat. */
    LAMINAR,
    /** It stands still: its yield stress holds the head. */
    STANDS
  }

  /**
   * A round throat.
   *
   * @param boreMm diameter
   * @param lengthMm of the narrow part, 0 for a plain hole
   * @param headMm from the throat's end up to the free surface
   */
  public record Throat(double boreMm, double lengthMm, double headMm) {
    public Throat {
      if (!(boreMm > 0) || !(lengthMm >= 0) || !(headMm >= 0)) {
        throw new IllegalArgumentException("a throat needs a bore above 0 and no negative length");
      }
    }
  }

  /** The flow with the entry loss of a sharp edge. */
  public static GateFlow of(Fluid fluid, Throat throat) {
    return of(fluid, throat, ENTRY_LOSS);
  }

  /** The flow with a given entry loss K. */
  public static GateFlow of(Fluid fluid, Throat throat, double entryLoss) {
    double r = throat.boreMm / 2 / Liquid.MM_PER_M;
    double length = throat.lengthMm / Liquid.MM_PER_M;
    double pressure = Liquid.pressurePa(fluid.densityKgPerM3(), throat.headMm);
    double held = 2 * fluid.yieldPa() * length / r;
    if (pressure <= held || pressure == 0) {
      return new GateFlow(0, 0, 0, Regime.STANDS);
    }
    double driving = Math.max(0, pressure - BINGHAM * held);
    double a = fluid.densityKgPerM3() / 2 * (1 + entryLoss);
    double b = 8 * fluid.viscosityPaS() * length / (r * r);
    // the stable form of the root of a v² + b v = p
    double v = 2 * driving / (b + Math.sqrt(b * b + 4 * a * driving));
    Regime regime = b * v > a * v * v ? Regime.LAMINAR : Regime.ORIFICE;
    double re = fluid.densityKgPerM3() * v * 2 * r / fluid.viscosityPaS();
    return new GateFlow(Math.PI * r * r * v * ML_PER_M3, v, re, regime);
  }

  /** Seconds to pass a volume at this flow; infinite when it stands. */
  public double secondsFor(double volumeMm3) {
    return mlPerS > 0 ? volumeMm3 / 1000 / mlPerS : Double.POSITIVE_INFINITY;
  }

  /** Flow of a laminar pipe alone, ml/s: Hagen-Poiseuille, {@code πr⁴Δp/(8µL)}. */
  public static double poiseuilleMlPerS(Fluid fluid, Throat throat) {
    double r = throat.boreMm / 2 / Liquid.MM_PER_M;
    double pressure = Liquid.pressurePa(fluid.densityKgPerM3(), throat.headMm);
    return Math.PI
        * Math.pow(r, 4)
        * pressure
        / (8 * fluid.viscosityPaS() * throat.lengthMm / Liquid.MM_PER_M)
        * ML_PER_M3;
  }

  /** Pressure a laminar pipe takes, Pa: {@code 8µLQ/(πr⁴)}. */
  public static double poiseuillePa(
      double viscosityPaS, double boreMm, double lengthMm, double mlPerS) {
    double r = boreMm / 2 / Liquid.MM_PER_M;
    return 8
        * viscosityPaS
        * (lengthMm / Liquid.MM_PER_M)
        * (mlPerS / ML_PER_M3)
        / (Math.PI * Math.pow(r, 4));
  }
}
