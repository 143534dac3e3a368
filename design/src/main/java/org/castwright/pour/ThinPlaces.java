package org.castwright.pour;

/**
 * What a material does not enter: slits too thin to flow through, details too fine for its skin.
 */
public final class ThinPlaces {

  private ThinPlaces() {}

  /**
   * Head, mm, that keeps a liquid moving through a slit: laminar flow between plates, {@code
   * 12µvL/h²}, plus {@code 2τL/h} for a yield stress (Bingham, from memory).
   */
  public static double headForSlitMm(
      double gapMm, double lengthMm, double speedMmPerS, Fluid fluid) {
    double h = gapMm / Liquid.MM_PER_M;
    double l = lengthMm / Liquid.MM_PER_M;
    double v = speedMmPerS / Liquid.MM_PER_M;
    double pa = 12 * fluid.viscosityPaS() * v * l / (h * h) + 2 * fluid.yieldPa() * l / h;
    return Liquid.headMm(fluid.densityKgPerM3(), pa);
  }

  /**
   * How far a liquid creeps into a slit under a head in a time, mm: the same law with the front's
   * own resistance growing, {@code L² = ρgH·h²·t/(6µ)} (Washburn's form with a driving head).
   */
  public static double reachMm(double gapMm, double headMm, double seconds, Fluid fluid) {
    double h = gapMm / Liquid.MM_PER_M;
    double pa = Liquid.pressurePa(fluid.densityKgPerM3(), headMm);
    double viscous = Math.sqrt(pa * h * h * seconds / (6 * fluid.viscosityPaS()));
    double yield = fluid.yieldPa() > 0 ? pa * h / (2 * fluid.yieldPa()) : Double.POSITIVE_INFINITY;
    return Math.min(viscous, yield) * Liquid.MM_PER_M;
  }

  /**
   * Seconds until a liquid has crept into a slit under a head: {@link #reachMm} turned round;
   * infinite where its yield stress holds it.
   */
  public static double creepS(double gapMm, double lengthMm, double headMm, Fluid fluid) {
    double h = gapMm / Liquid.MM_PER_M;
    double l = lengthMm / Liquid.MM_PER_M;
    double pa = Liquid.pressurePa(fluid.densityKgPerM3(), headMm);
    return pa * h < 2 * fluid.yieldPa() * l
        ? Double.POSITIVE_INFINITY
        : 6 * fluid.viscosityPaS() * l * l / (pa * h * h);
  }

  /**
   * Seconds that a liquid without friction takes over a way under a head: {@code L/√(2gH/(1+K))}
   * with the entry loss K of a sharp edge.
   */
  public static double runS(double lengthMm, double headMm) {
    double v = Math.sqrt(2 * Liquid.GRAVITY * headMm / Liquid.MM_PER_M / (1 + GateFlow.ENTRY_LOSS));
    return lengthMm / Liquid.MM_PER_M / v;
  }

  /**
   * The thinnest slit that fills to a length under a head in a time, mm: {@link #reachMm} turned
   * round.
   */
  public static double thinnestMm(double lengthMm, double headMm, double seconds, Fluid fluid) {
    double l = lengthMm / Liquid.MM_PER_M;
    double pa = Liquid.pressurePa(fluid.densityKgPerM3(), headMm);
    double viscous = l * Math.sqrt(6 * fluid.viscosityPaS() / (pa * seconds));
    double yield = 2 * fluid.yieldPa() * l / pa;
    return Math.max(viscous, yield) * Liquid.MM_PER_M;
  }

  /**
   * The narrowest slit a liquid that does not wet enters under a head, mm: {@code 2γ·cosθ/(ρgH)}
   * with the contact angle counted as full repulsion when {@code cos = 1}.
   */
  public static double finestMm(
      double tensionNPerM, double cosine, double densityKgPerM3, double headMm) {
    return 2 * tensionNPerM * cosine / Liquid.pressurePa(densityKgPerM3, headMm) * Liquid.MM_PER_M;
  }
}
