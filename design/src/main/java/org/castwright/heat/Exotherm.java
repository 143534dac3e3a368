package org.castwright.heat;

/** How much a mass warms when all its reaction heat stays in it. */
public final class Exotherm {

  /** Molar masses of CaSO4·2H2O and CaSO4·½H2O, g/mol. */
  private static final double DIHYDRATE_PER_HEMIHYDRATE = 172.17 / 145.15;

  /** J/(kg K): set gypsum from memory of handbooks, water from memory of steam tables. */
  private static final double GYPSUM_HEAT_CAPACITY = 1090;

  private static final double WATER_HEAT_CAPACITY = 4190;
  private static final double J_PER_KJ = 1000;

  private Exotherm() {}

  /**
   * Adiabatic rise, K.
   *
   * @param kJPerKg reaction heat
   * @param heatCapacity J/(kg K)
   */
  public static double riseK(double kJPerKg, double heatCapacity) {
    return kJPerKg * J_PER_KJ / heatCapacity;
  }

  /**
   * Heat capacity of set, still wet plaster, J/(kg K): gypsum and the water left over.
   *
   * @param waterPerPlaster by weight, e.g. 0.7 for 70 : 100
   */
  public static double plasterHeatCapacity(double waterPerPlaster) {
    return (DIHYDRATE_PER_HEMIHYDRATE * GYPSUM_HEAT_CAPACITY
            + (1 + waterPerPlaster - DIHYDRATE_PER_HEMIHYDRATE) * WATER_HEAT_CAPACITY)
        / (1 + waterPerPlaster);
  }

  /**
   * Adiabatic rise of setting plaster, K.
   *
   * @param kJPerKgPlaster heat for each kg of dry plaster
   * @throws IllegalArgumentException if there is less water than the gypsum binds
   */
  public static double plasterRiseK(double waterPerPlaster, double kJPerKgPlaster) {
    if (waterPerPlaster < DIHYDRATE_PER_HEMIHYDRATE - 1) {
      throw new IllegalArgumentException(
          "plaster binds more water than " + waterPerPlaster + " of its own weight");
    }
    return riseK(kJPerKgPlaster / (1 + waterPerPlaster), plasterHeatCapacity(waterPerPlaster));
  }
}
