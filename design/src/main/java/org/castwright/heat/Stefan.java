package org.castwright.heat;

/**
 * The freezing front that runs into a melt from a wall held at one temperature: its depth is {@code
 * 2 λ √(α t)}, α of the solid. Formulas: Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed.,
 * 11.2.
 */
public final class Stefan {

  private static final double M_PER_MM = 1e-3;

  /** No front of a real material runs faster than this λ. */
  private static final double LARGEST = 5;

  private static final double SMALLEST = 1e-9;

  private Stefan() {}

  /**
   * λ of a melt that is at its melting point: √π λ exp(λ²) erf λ = Ste.
   *
   * @param ste Stefan number c (melting point − wall) / L, above 0
   */
  public static double lambda(double ste) {
    positive(ste, "a Stefan number");
    return Functions.root(
        x -> Math.sqrt(Math.PI) * x * StrictMath.exp(x * x) * Functions.erf(x) - ste,
        SMALLEST,
        LARGEST);
  }

  /**
   * λ of a melt poured above its melting point (Neumann's two phases).
   *
   * @param ste c_solid (melting point − wall) / L, above 0
   * @param excess (pour − melting point) / (melting point − wall), from 0 up
   * @param solidK conductivity of the solid, W/(m K)
   * @param liquidK of the liquid
   * @param solidAlpha diffusivity of the solid, m²/s
   * @param liquidAlpha of the liquid
   */
  public static double lambda(
      double ste,
      double excess,
      double solidK,
      double liquidK,
      double solidAlpha,
      double liquidAlpha) {
    positive(ste, "a Stefan number");
    double nu = Math.sqrt(solidAlpha / liquidAlpha);
    return Functions.root(
        x ->
            StrictMath.exp(-x * x) / Functions.erf(x)
                - liquidK
                    / solidK
                    * nu
                    * excess
                    * StrictMath.exp(-nu * nu * x * x)
                    / (1 - Functions.erf(nu * x))
                - x * Math.sqrt(Math.PI) / ste,
        SMALLEST,
        LARGEST / Math.max(1, nu));
  }

  /**
   * The time until the front is that deep, s.
   *
   * @param solidAlpha diffusivity of the solid, m²/s
   */
  public static double timeS(double lambda, double solidAlpha, double depthMm) {
    double half = depthMm * M_PER_MM / (2 * lambda);
    return half * half / solidAlpha;
  }

  private static void positive(double v, String what) {
    if (!(v > 0)) {
      throw new IllegalArgumentException(what + " is above 0, not " + v);
    }
  }
}
