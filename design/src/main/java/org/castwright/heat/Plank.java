package org.castwright.heat;

/**
 * Plank's estimate of a freezing time: the front runs inward without storing heat, so the time is
 * {@code ρ L / ΔT · (P d / h + R d² / k)}. Factors P and R: Plank 1941 as in food engineering
 * textbooks, from memory.
 */
public enum Plank {
  SLAB(1.0 / 2, 1.0 / 8),
  CYLINDER(1.0 / 4, 1.0 / 16),
  CUBE(1.0 / 6, 1.0 / 24),
  SPHERE(1.0 / 6, 1.0 / 24);

  private static final double M_PER_MM = 1e-3;

  private final double surface;
  private final double inner;

  Plank(double surface, double inner) {
    this.surface = surface;
    this.inner = inner;
  }

  /**
   * The freezing time, s.
   *
   * @param density kg/m³
   * @param latent J/kg
   * @param solidK conductivity of the frozen material, W/(m K)
   * @param h coefficient of the surface, walls included, W/(m² K)
   * @param thicknessMm thickness, diameter or edge, mm
   * @param freezingC °C
   * @param airC °C, below the freezing point
   * @throws IllegalArgumentException if it is not
   */
  public double timeS(
      double density,
      double latent,
      double solidK,
      double h,
      double thicknessMm,
      double freezingC,
      double airC) {
    if (!(airC < freezingC)) {
      throw new IllegalArgumentException(
          "nothing freezes at " + freezingC + " °C in air of " + airC + " °C");
    }
    double d = thicknessMm * M_PER_MM;
    return density * latent / (freezingC - airC) * (surface * d / h + inner * d * d / solidK);
  }
}
