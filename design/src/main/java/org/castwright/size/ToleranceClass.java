package org.castwright.size;

/**
 * Linear tolerances by published classes, to compare with by analogy: ISO 8062-3:2007 table 2 is
 * for metal castings, DIN 16742 for plastics parts from tools.
 */
public final class ToleranceClass {

  private static final double[] ISO_UP_TO = {10, 16, 25, 40, 63, 100, 160, 250, 400};

  /** Total widths, mm, ISO 8062-3:2007 table 2; a row for each grade from DCTG 4. */
  private static final double[][] ISO_WIDTH = {
    {0.26, 0.28, 0.30, 0.32, 0.36, 0.40, 0.44, 0.50, 0.56},
    {0.36, 0.38, 0.42, 0.46, 0.50, 0.56, 0.62, 0.70, 0.78},
    {0.52, 0.54, 0.58, 0.64, 0.70, 0.78, 0.88, 1.0, 1.1},
    {0.74, 0.78, 0.82, 0.90, 1.0, 1.1, 1.2, 1.4, 1.6},
    {1.0, 1.1, 1.2, 1.3, 1.4, 1.6, 1.8, 2.0, 2.2},
    {1.5, 1.6, 1.7, 1.8, 2.0, 2.2, 2.5, 2.8, 3.2},
    {2.0, 2.2, 2.4, 2.6, 2.8, 3.2, 3.6, 4.0, 4.4},
    {2.8, 3.0, 3.2, 3.6, 4.0, 4.4, 5.0, 5.6, 6.2},
    {4.2, 4.4, 4.6, 5.0, 5.6, 6.0, 7.0, 8.0, 9.0}
  };

  /** Finest grade of the table. */
  public static final int FINEST_DCTG = 4;

  /** Coarsest grade of the table. */
  public static final int COARSEST_DCTG = 12;

  private static final double[] DIN_UP_TO = {3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400};

  /** Half widths of group TG6 for sizes made by one tool part, mm, with the next range's after. */
  private static final double[] DIN_HALF = {
    0.07, 0.12, 0.18, 0.22, 0.26, 0.31, 0.37, 0.57, 0.80, 0.93, 1.05, 1.15, 1.60
  };

  private static final double DIN_FROM = 1;

  private ToleranceClass() {}

  /**
   * Half of the tolerance of ISO 8062-3 for a length, ± mm.
   *
   * @param grade DCTG, 4 to 12
   * @return not a number above 400 mm, where this table ends
   */
  public static double iso8062(int grade, double lengthMm) {
    if (grade < FINEST_DCTG || grade > COARSEST_DCTG) {
      throw new IllegalArgumentException("the table holds DCTG 4 to 12");
    }
    int i = column(ISO_UP_TO, lengthMm);
    return i < 0 ? Double.NaN : ISO_WIDTH[grade - FINEST_DCTG][i] / 2;
  }

  /**
   * The finest grade of ISO 8062-3 whose tolerance holds a deviation, or 0 when none of the table
   * does.
   */
  public static int finestIso8062(double lengthMm, double deviationMm) {
    for (int grade = FINEST_DCTG; grade <= COARSEST_DCTG; grade++) {
      if (Math.abs(deviationMm) <= iso8062(grade, lengthMm)) {
        return grade;
      }
    }
    return 0;
  }

  /**
   * Tolerance of DIN 16742 group TG6, ± mm.
   *
   * @param acrossSeam whether the size lies between two parts of the tool
   * @return not a number outside 1 to 400 mm
   */
  public static double din16742Tg6(double lengthMm, boolean acrossSeam) {
    int i = lengthMm < DIN_FROM ? -1 : column(DIN_UP_TO, lengthMm);
    return i < 0 ? Double.NaN : DIN_HALF[acrossSeam ? i + 1 : i];
  }

  private static int column(double[] upTo, double length) {
    if (!(length > 0)) {
      return -1;
    }
    for (int i = 0; i < upTo.length; i++) {
      if (length <= upTo[i]) {
        return i;
      }
    }
    return -1;
  }
}
