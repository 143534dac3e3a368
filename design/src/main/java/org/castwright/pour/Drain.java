package org.castwright.pour;

/** How long vessels take to run empty. Lengths mm, times s. */
public final class Drain {

  private Drain() {}

  /** Discharge factor of a plain sharp-edged hole (Midoux, Mécanique et rhéologie des fluides). */
  public static final double PLAIN_HOLE = 0.6;

  /** An upright cylinder through a hole: {@code (A/(C·a))·√(2h/g)}, after Torricelli. */
  public static double cylinderS(double boreMm, double holeMm, double headMm, double discharge) {
    double areas = boreMm * boreMm / (holeMm * holeMm);
    return areas / discharge * Math.sqrt(2 * headMm / Liquid.MM_PER_M / Liquid.GRAVITY);
  }

  /**
   * A funnel tapering straight from {@code topMm} across to its hole over {@code heightMm}:
   * integral of {@code A(y)/(C·a·√(2gy))} with the depth counted from the hole.
   */
  public static double frustumS(double topMm, double holeMm, double heightMm, double discharge) {
    double d = holeMm;
    double k = (topMm - holeMm) / heightMm;
    double h = heightMm;
    // ∫ (d + k y)² y^-1/2 dy from 0 to h
    double integral =
        2 * d * d * Math.sqrt(h)
            + 4.0 / 3 * d * k * Math.pow(h, 1.5)
            + 2.0 / 5 * k * k * Math.pow(h, 2.5);
    double g = Liquid.GRAVITY * Liquid.MM_PER_M;
    return integral / (discharge * d * d * Math.sqrt(2 * g));
  }

  /**
   * A cone that would end in a point below its hole, from one depth to another, the hole so small
   * that depths count from the point: {@code (2/5)·tan²θ·(y1^2.5 − y2^2.5)/(√(2g)·r²)}.
   */
  public static double coneS(double halfAngleDeg, double holeMm, double fromMm, double toMm) {
    double tan = Math.tan(Math.toRadians(halfAngleDeg));
    double r = holeMm / 2;
    double g = Liquid.GRAVITY * Liquid.MM_PER_M;
    return 2.0
        / 5
        * tan
        * tan
        * (Math.pow(fromMm, 2.5) - Math.pow(toMm, 2.5))
        / (Math.sqrt(2 * g) * r * r);
  }

  /** A cylinder through a laminar pipe: {@code (8µLA/(πr⁴ρg))·ln(h1/h2)}. */
  public static double viscousS(double boreMm, GateFlow.Throat pipe, double toHeadMm, Fluid fluid) {
    double r = pipe.boreMm() / 2 / Liquid.MM_PER_M;
    double area = Math.PI * Math.pow(boreMm / 2 / Liquid.MM_PER_M, 2);
    return 8
        * fluid.viscosityPaS()
        * (pipe.lengthMm() / Liquid.MM_PER_M)
        * area
        / (Math.PI * Math.pow(r, 4) * fluid.densityKgPerM3() * Liquid.GRAVITY)
        * Math.log(pipe.headMm() / toHeadMm);
  }
}
