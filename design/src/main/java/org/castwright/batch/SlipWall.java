package org.castwright.batch;

/**
 * Growth of a slip-cast wall, {@code L² = k·t} (square-root law of filtration; some measurements
 * are nearer to linear). The factor comes from the user's own first cast.
 *
 * @param mm2PerMin k
 */
public record SlipWall(double mm2PerMin) {

  public SlipWall {
    if (!(mm2PerMin > 0)) {
      throw new IllegalArgumentException("a wall grows: its factor is above zero");
    }
  }

  /** From one wall measured. */
  public static SlipWall measured(double wallMm, double minutes) {
    return new SlipWall(wallMm * wallMm / minutes);
  }

  /** Minutes until the wall is so thick. */
  public double minutes(double wallMm) {
    return wallMm * wallMm / mm2PerMin;
  }

  /** Thickness after so many minutes, mm. */
  public double wallMm(double minutes) {
    return Math.sqrt(mm2PerMin * minutes);
  }

  /** Share of solids by weight in a slip, from its density and that of the solids, kg/m³. */
  public static double solidsShare(double slip, double solids) {
    double water = 1000;
    double volume = (slip - water) / (solids - water);
    return volume * solids / slip;
  }
}
