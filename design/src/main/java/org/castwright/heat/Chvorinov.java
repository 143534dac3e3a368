package org.castwright.heat;

import org.castwright.mesh.TriMesh;

/**
 * Chvorinov's rule: freezing time goes with the square of the modulus, volume over cooled surface
 * (Chvorinov 1940, as in Groover, Fundamentals of Modern Manufacturing). For comparing parts of one
 * casting in one mold: the constant must come from a trial.
 */
public final class Chvorinov {

  private Chvorinov() {}

  /** Volume over surface of a closed body, mm. */
  public static double modulusMm(TriMesh body) {
    return body.volume() / body.area();
  }

  /** The constant of a trial, s/mm². */
  public static double constant(double timeS, double modulusMm) {
    return timeS / (modulusMm * modulusMm);
  }

  /** Freezing time, s. */
  public static double timeS(double constant, double modulusMm) {
    return constant * modulusMm * modulusMm;
  }

  /** The modulus that takes that time, mm. */
  public static double modulusMm(double constant, double timeS) {
    return Math.sqrt(timeS / constant);
  }

  /**
   * The diameter of an upright cylinder with that modulus, cooled all over, mm.
   *
   * @param slenderness height over diameter, above 0
   */
  public static double riserDiameterMm(double modulusMm, double slenderness) {
    if (!(slenderness > 0)) {
      throw new IllegalArgumentException("a riser's height over diameter is above 0");
    }
    return modulusMm * (4 * slenderness + 2) / slenderness;
  }
}
