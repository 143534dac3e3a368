package org.castwright.pour;

/** What liquid lifts: flat roofs, cores and masters held down in it. Forces N, upward positive. */
public final class Lift {

  private Lift() {}

  /** Lift on a level roof: pressure at its depth times its area. */
  public static double flatRoofN(double areaMm2, double densityKgPerM3, double headMm) {
    return areaMm2 / Liquid.MM2_PER_M2 * Liquid.pressurePa(densityKgPerM3, headMm);
  }

  /**
   * Buoyancy of a body wholly under the liquid less its weight (Archimedes): what must hold it
   * down; below zero it sinks.
   */
  public static double holdDownN(double volumeMm3, double densityKgPerM3, double massKg) {
    return (densityKgPerM3 * volumeMm3 / Liquid.MM3_PER_M3 - massKg) * Liquid.GRAVITY;
  }

  /** The weight of a body, N. */
  public static double weightN(double massKg) {
    return massKg * Liquid.GRAVITY;
  }
}
