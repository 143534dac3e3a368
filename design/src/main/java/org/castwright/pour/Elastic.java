package org.castwright.pour;

/**
 * A stiff material.
 *
 * @param modulusMPa Young's modulus
 * @param poisson Poisson's ratio, 0 to below 0.5
 */
public record Elastic(double modulusMPa, double poisson) {

  /** Printed PLA: 3 to 4 GPa (additive-manufacturing materials database); ratio common practice. */
  public static final Elastic PLA = new Elastic(3500, 0.35);

  /** Standard photopolymer: 1.5 to 2.8 GPa, common practice, no source; the low end. */
  public static final Elastic PHOTOPOLYMER = new Elastic(1500, 0.35);

  /** What a mold is printed of: filament, else resin. */
  public static Elastic ofPrint(boolean filament) {
    return filament ? PLA : PHOTOPOLYMER;
  }

  public Elastic {
    if (!(modulusMPa > 0) || !(poisson >= 0 && poisson < 0.5)) {
      throw new IllegalArgumentException(
          "a modulus is above 0 MPa and Poisson's ratio from 0 to below 0.5");
    }
  }

  /** Stiffness of a plate against bending, N·mm: {@code Et³/(12(1−ν²))}. */
  public double plateNmm(double thicknessMm) {
    return modulusMPa * Math.pow(thicknessMm, 3) / (12 * (1 - poisson * poisson));
  }

  /**
   * Modulus of a rubber from its Shore A hardness, MPa, after Gent 1958 (from memory): {@code
   * 0.0981(56 + 7.62336S)/(0.137505(254 − 2.54S))}.
   */
  public static double gentMPa(double shoreA) {
    requireShore(shoreA);
    return 0.0981 * (56 + 7.62336 * shoreA) / (0.137505 * (254 - 2.54 * shoreA));
  }

  /** The same after Qi, Joyce and Boyce 2003: {@code log10 E = 0.0235S − 0.6403}. */
  public static double logMPa(double shoreA) {
    requireShore(shoreA);
    return Math.pow(10, 0.0235 * shoreA - 0.6403);
  }

  private static void requireShore(double shoreA) {
    if (!(shoreA >= 0 && shoreA < 100)) {
      throw new IllegalArgumentException("a Shore A hardness lies from 0 to below 100");
    }
  }
}
