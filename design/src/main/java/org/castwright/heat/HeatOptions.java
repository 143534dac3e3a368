package org.castwright.heat;

/**
 * How a casting stands while it sets, and how finely to look.
 *
 * @param airC temperature of the air, °C
 * @param air coefficient of the block's outside to the air, radiation included, W/(m² K)
 * @param contact coefficient between casting and wall, W/(m² K); infinite for perfect contact
 * @param pourC temperature of the pour, °C, or null for the material's own
 * @param moldC temperature of the mold at the pour, °C, or null for that of the air
 * @param cells cells of the grid, about
 * @param band whether to run the ends of all ranges too, on a coarser grid
 * @param longestS time after which to give up, s
 * @param threads worker threads, at least 1; no result depends on them
 */
public record HeatOptions(
    double airC,
    Figure air,
    double contact,
    Double pourC,
    Double moldC,
    int cells,
    boolean band,
    double longestS,
    int threads) {

  private static final int FEWEST_CELLS = 1000;
  private static final double A_WEEK_S = 7 * 24 * 3600.0;
  private static final double ABSOLUTE_ZERO_C = -273.15;

  /**
   * A room of 20 °C; 5 to 15 W/(m² K) for still air with radiation is common practice, no source.
   * Casts are taken to touch the wall, which is the cooler case for the casting and the hotter for
   * the wall. 300,000 cells resolve a mold of 120 mm to about 1.7 mm.
   */
  public static final HeatOptions FINE =
      new HeatOptions(
          20,
          new Figure(5, 15, "still air with radiation: common practice, no source"),
          Double.POSITIVE_INFINITY,
          null,
          null,
          300_000,
          true,
          A_WEEK_S,
          Math.max(1, Math.min(2, Runtime.getRuntime().availableProcessors())));

  /** An answer in seconds: cells about twice as large. */
  public static final HeatOptions COARSE = FINE.withCells(30_000);

  /** Checks ranges; the message says what is allowed. */
  public HeatOptions {
    if (!(air.low() > 0 && contact > 0)) {
      throw new IllegalArgumentException(
          "the coefficients of air and contact are above 0 W/(m² K), not "
              + air.low()
              + " and "
              + contact);
    }
    if (cells < FEWEST_CELLS || threads < 1 || !(longestS > 0)) {
      throw new IllegalArgumentException(
          "heat needs at least "
              + FEWEST_CELLS
              + " cells, one thread and some time, not "
              + cells
              + ", "
              + threads
              + " and "
              + longestS
              + " s");
    }
    checkC(airC, "the air");
    checkC(pourC == null ? airC : pourC, "the pour");
    checkC(moldC == null ? airC : moldC, "the mold");
  }

  private static void checkC(double celsius, String what) {
    if (!(celsius > ABSOLUTE_ZERO_C && celsius < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(what + " cannot have " + celsius + " °C");
    }
  }

  public HeatOptions withCells(int count) {
    return new HeatOptions(airC, air, contact, pourC, moldC, count, band, longestS, threads);
  }

  public HeatOptions withThreads(int count) {
    return new HeatOptions(airC, air, contact, pourC, moldC, cells, band, longestS, count);
  }

  public HeatOptions withBand(boolean wanted) {
    return new HeatOptions(airC, air, contact, pourC, moldC, cells, wanted, longestS, threads);
  }

  /** In air and a mold of that temperature. */
  public HeatOptions inAirOf(double celsius) {
    return new HeatOptions(celsius, air, contact, pourC, null, cells, band, longestS, threads);
  }

  public HeatOptions pouredAt(double celsius) {
    return new HeatOptions(airC, air, contact, celsius, moldC, cells, band, longestS, threads);
  }
}
