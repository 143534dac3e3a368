package org.castwright.heat;

/**
 * The temperature that two thick bodies take at their surfaces in the moment of contact: {@code (e1
 * T1 + e2 T2) / (e1 + e2)} with effusivities {@code e = √(k ρ c)} (Carslaw and Jaeger, Conduction
 * of Heat in Solids, 2nd ed., 2.15).
 */
public final class Contact {

  private Contact() {}

  /**
   * Effusivity, J/(m² K √s).
   *
   * @param k W/(m K)
   * @param heatPerM3 heat capacity, J/(m³ K)
   */
  public static double effusivity(double k, double heatPerM3) {
    return Math.sqrt(k * heatPerM3);
  }

  /** The temperature between two bodies of these temperatures, °C, and effusivities. */
  public static double celsius(
      double firstC, double firstEffusivity, double secondC, double secondEffusivity) {
    return (firstEffusivity * firstC + secondEffusivity * secondC)
        / (firstEffusivity + secondEffusivity);
  }
}
