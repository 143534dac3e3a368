package org.castwright.plan;

/**
 * The printing process, which decides the gap that keys need and how thin a place may be. Gaps:
 * print-service design guides call over 0.4 mm loose and under 0.2 mm tight for filament, over 0.3
 * mm loose and under 0.15 mm tight for resin; the middle is taken.
 */
public enum PrintProcess {
  FDM(0.3, 1.6, 0.8),
  RESIN(0.2, 1.0, 0.5);

  private final double clearanceMm;
  private final double minimumWallMm;
  private final double minimumWebMm;

  PrintProcess(double clearanceMm, double minimumWallMm, double minimumWebMm) {
    this.clearanceMm = clearanceMm;
    this.minimumWallMm = minimumWallMm;
    this.minimumWebMm = minimumWebMm;
  }

  /** The gap between a key and its socket, normal to the surface, mm. */
  public double clearanceMm() {
    return clearanceMm;
  }

  /** The thinnest wall between cavity and outside that holds liquid, mm; common practice. */
  public double minimumWallMm() {
    return minimumWallMm;
  }

  /**
   * The thinnest place that holds together but need not hold liquid, mm: two lines of a 0.4 mm
   * nozzle, half the wall in resin; common practice.
   */
  public double minimumWebMm() {
    return minimumWebMm;
  }
}
