package org.castwright.batch;

/**
 * Plaster slurry by additive volumes: hemihydrate of 2630 kg/m³ and water of 1000. Setting binds
 * 18.617 g of water to 100 g of plaster ({@code 1.5·18.015/145.15}); the rest dries off.
 *
 * @param waterPer100 g of water to 100 g of plaster
 */
public record PlasterMix(double waterPer100) {

  /** Density of calcium sulfate hemihydrate, kg/m³; gypsum handbooks. */
  public static final double POWDER = 2630;

  private static final double WATER = 1000;

  /** Water bound by 100 g of plaster, g. */
  public static final double BOUND = 100 * 1.5 * 18.015 / 145.15;

  public PlasterMix {
    if (!(waterPer100 >= BOUND && waterPer100 <= 200)) {
      throw new IllegalArgumentException("plaster takes 19 to 200 g of water for each 100 g");
    }
  }

  /** Of the slurry, kg/m³. */
  public double wetKgPerM3() {
    return (100 + waterPer100) / volume();
  }

  /** Of the dried cast, kg/m³, which keeps the slurry's volume. */
  public double dryKgPerM3() {
    return (100 + BOUND) / volume();
  }

  /** Plaster for a volume of slurry, g. */
  public double plasterG(double volumeMl) {
    return volumeMl / 1000 * 100 / volume();
  }

  /** Water for a volume of slurry, g. */
  public double waterG(double volumeMl) {
    return plasterG(volumeMl) * waterPer100 / 100;
  }

  /** Volume of slurry from a mass of plaster, ml. */
  public double slurryMl(double plasterG) {
    return plasterG / 100 * volume() * 1000;
  }

  /** Liters of slurry from 100 g of plaster. */
  private double volume() {
    return 100 / POWDER + waterPer100 / WATER;
  }
}
