package org.castwright.heat;

/**
 * The mold's wall as it is made.
 *
 * @param material what it is made of
 * @param infill share of material between the skins, above 0 to 1; 1 for a full wall
 * @param skinMm thickness of the full skins round the cavity and outside, mm
 */
public record MoldWall(MoldMaterial material, double infill, double skinMm) {

  /** Still air at room temperature, W/(m K): from memory of handbooks. */
  private static final double AIR_K = 0.026;

  public MoldWall {
    if (!(infill > 0 && infill <= 1)) {
      throw new IllegalArgumentException("infill is a share above 0 and up to 1, not " + infill);
    }
    if (!(skinMm >= 0)) {
      throw new IllegalArgumentException("a skin has a thickness from 0 mm up, not " + skinMm);
    }
    if (infill < 1 && !material.printed()) {
      throw new IllegalArgumentException(material.name() + " is not printed and has no infill");
    }
  }

  /** A wall of full material. */
  public static MoldWall full(MoldMaterial material) {
    return new MoldWall(material, 1, 0);
  }

  /**
   * Conductivity of a printed body with air between its lines, W/(m K): Maxwell's formula with the
   * solid as the connected part, which is also the upper bound of Hashin and Shtrikman (J. Appl.
   * Phys. 33, 1962) for a body alike in all directions.
   *
   * @param k of the full material, W/(m K)
   */
  public static double withAir(double k, double infill) {
    double air = 1 - infill;
    return k * (2 * k + AIR_K - 2 * air * (k - AIR_K)) / (2 * k + AIR_K + air * (k - AIR_K));
  }
}
