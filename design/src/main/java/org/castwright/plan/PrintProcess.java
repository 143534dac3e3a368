package org.castwright.plan;

/**
 * The printing process, which decides the gap that keys need and the thinnest wall. Gaps:
 * print-service design guides call over 0.4 mm loose and under 0.2 mm tight for filament, over 0.3
 * mm loose and under 0.15 mm tight for resin; the middle is taken.
 */
public enum PrintProcess {
  FDM(0.3, 1.6),
  RESIN(0.2, 1.0);

  private final double clearanceMm;
  private final double minimumWallMm;

  PrintProcess(double clearanceMm, double minimumWallMm) {
    this.clearanceMm = clearanceMm;
    this.minimumWallMm = minimumWallMm;
  }

  /** The gap between a key and its socket, normal to the surface, mm. */
  public double clearanceMm() {
    return clearanceMm;
  }

  /** The thinnest wall between cavity and outside that holds liquid, mm; common practice. */
  public double minimumWallMm() {
    return minimumWallMm;
  }
}
