package org.castwright.batch;

/**
 * A filament printer's rate, {@code layer × line × speed}, with a factor for travel.
 *
 * @param layerMm height of a layer
 * @param lineMm width of a line
 * @param speedMmPerS along the line
 * @param overhead factor on the time, 1 or more
 */
public record PrintRate(double layerMm, double lineMm, double speedMmPerS, double overhead) {

  /** A common nozzle of 0.4 mm; 1.1 to 1.5 for travel. Common practice, no source. */
  public static final PrintRate COMMON = new PrintRate(0.2, 0.45, 60, 1.3);

  public PrintRate {
    if (!(layerMm > 0) || !(lineMm > 0) || !(speedMmPerS > 0) || !(overhead >= 1)) {
      throw new IllegalArgumentException("layer, line and speed are above zero, overhead from 1");
    }
  }

  public double mm3PerS() {
    return layerMm * lineMm * speedMmPerS;
  }

  /** Hours for a volume of plastic laid down. */
  public double hours(double volumeMm3) {
    return volumeMm3 / mm3PerS() * overhead / 3600;
  }

  /**
   * Plastic in a piece printed with solid walls and a filling of lines: a skin all over, the rest
   * filled in part; never more than the piece.
   *
   * @param skinMm thickness of the solid skin
   * @param fill share of the inside that is filled, 0 to 1
   */
  public static double plasticMm3(double volumeMm3, double areaMm2, double skinMm, double fill) {
    double skin = Math.min(volumeMm3, areaMm2 * skinMm);
    return skin + fill * (volumeMm3 - skin);
  }

  /** Hours on a resin printer: every layer takes the same, whatever its area. */
  public static double resinHours(double heightMm, double layerMm, double secondsPerLayer) {
    return Math.ceil(heightMm / layerMm) * secondsPerLayer / 3600;
  }
}
