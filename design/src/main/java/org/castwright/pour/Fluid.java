package org.castwright.pour;

/**
 * How a casting material flows.
 *
 * @param densityKgPerM3 above zero
 * @param viscosityPaS dynamic or plastic viscosity, above zero
 * @param yieldPa stress below which it does not flow; 0 for most liquids
 */
public record Fluid(double densityKgPerM3, double viscosityPaS, double yieldPa) {

  /**
   * @throws IllegalArgumentException if a value is out of its range
   */
  public Fluid {
    if (!(densityKgPerM3 > 0) || !(viscosityPaS > 0) || !(yieldPa >= 0)) {
      throw new IllegalArgumentException(
          "a liquid needs a density and a viscosity above zero and a yield stress of 0 or more");
    }
  }

  public Fluid(double densityKgPerM3, double viscosityPaS) {
    this(densityKgPerM3, viscosityPaS, 0);
  }
}
