package org.castwright.pour;

/** What a vent costs: air pushed through it, and the skin of the liquid at its mouth. */
public final class AirVent {

  /** Viscosity of air at 20 °C, Pa·s; handbooks of physics, from memory. */
  public static final double AIR_PA_S = 1.81e-5;

  /** Pressure of the atmosphere, Pa; the standard atmosphere. */
  public static final double ATMOSPHERE_PA = 101_325;

  private AirVent() {}

  /** Back pressure of air leaving one vent at a flow, Pa (Hagen-Poiseuille). */
  public static double backPressurePa(double boreMm, double lengthMm, double mlPerS) {
    return GateFlow.poiseuillePa(AIR_PA_S, boreMm, lengthMm, mlPerS);
  }

  /** Pressure to push a liquid that does not wet into a round hole, Pa: {@code 2γ/r} (Laplace). */
  public static double skinPa(double tensionNPerM, double boreMm) {
    return 2 * tensionNPerM / (boreMm / 2 / Liquid.MM_PER_M);
  }

  /** Share by which air shut in at atmospheric pressure shrinks under a head (Boyle). */
  public static double squeezedShare(double densityKgPerM3, double headMm) {
    double p = Liquid.pressurePa(densityKgPerM3, headMm);
    return 1 - ATMOSPHERE_PA / (ATMOSPHERE_PA + p);
  }

  /** How much larger a bubble grows when the pressure falls by a part of the atmosphere (Boyle). */
  public static double growth(double atmosphere, double vacuum) {
    if (!(vacuum >= 0 && vacuum < atmosphere)) {
      throw new IllegalArgumentException("a vacuum lies between nothing and the atmosphere");
    }
    return atmosphere / (atmosphere - vacuum);
  }

  /**
   * Rise of a bubble as a rigid sphere, mm/s: Stokes, {@code 2r²ρg/(9µ)}; a clean bubble is half as
   * fast again. Holds for creeping flow only.
   */
  public static double bubbleMmPerS(double radiusMm, Fluid fluid) {
    double r = radiusMm / Liquid.MM_PER_M;
    return 2
        * r
        * r
        * fluid.densityKgPerM3()
        * Liquid.GRAVITY
        / (9 * fluid.viscosityPaS())
        * Liquid.MM_PER_M;
  }
}
