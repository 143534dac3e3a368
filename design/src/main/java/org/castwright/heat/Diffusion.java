package org.castwright.heat;

/**
 * Steps in time of the heat equation in the cells: heat contents follow the temperatures of their
 * neighbors, temperatures follow heat contents (the enthalpy method), so a freezing front needs no
 * tracking. A step is made of explicit stages that together reach the square of their number
 * farther than one alone: Runge-Kutta-Legendre of second order, Meyer, Balsara, Aslam, J. Comput.
 * Phys. 257, 2014; stages over enthalpies after Alexiades, Amiez, Gremaud, Commun. Numer. Meth.
 * Eng. 12, 1996. Conductances and heat made stay fixed over a step. A step is a trial until it is
 * accepted.
 */
final class Diffusion {

  /** Weights of the estimate of a step's error: Sommeijer, Shampine, Verwer, RKC, 1997. */
  private static final double DIFFERENCE = 0.8;

  private static final double SLOPES = 0.4;

  /** The first three weights of the Legendre stages. */
  private static final double THIRD = 1.0 / 3;

  private final Voxels voxels;
  private final Curves curves;
  private final Conductances conductances;
  private final Crew crew;
  private final double[] slope;
  private final double[] sums;

  /** Heat made in each cell, W/m³, the same over a step. */
  private final double[] source;

  private double[] heat;
  private double[] celsius;
  private double[] odd;
  private double[] oddCelsius;
  private double[] even;
  private double[] evenCelsius;

  /**
   * @param heat heat contents at the start, J/m³; taken over
   */
  Diffusion(Voxels voxels, Curves curves, Conductances conductances, double[] heat, Crew crew) {
    this.voxels = voxels;
    this.curves = curves;
    this.conductances = conductances;
    this.crew = crew;
    this.heat = heat;
    this.celsius = new double[heat.length];
    warm();
    this.odd = heat.clone();
    this.even = heat.clone();
    this.oddCelsius = celsius.clone();
    this.evenCelsius = celsius.clone();
    this.slope = new double[heat.length];
    this.source = new double[heat.length];
    this.sums = new double[voxels.cells.nz()];
  }

  /** Heat contents now, J/m³. Who changes them calls {@link #warm} afterwards. */
  double[] heat() {
    return heat;
  }

  /** Heat contents before the last accepted step, J/m³. */
  double[] before() {
    return odd;
  }

  /** Temperatures now, °C. */
  double[] celsius() {
    return celsius;
  }

  /** Heat made in each cell over the next step, W/m³; to be written by who knows. */
  double[] source() {
    return source;
  }

  /** Heat that flows into a cell now, W/m³. */
  double flow(int c) {
    return flow(celsius, c);
  }

  /** Temperatures anew from heat contents. */
  void warm() {
    int plane = voxels.cells.nx() * voxels.cells.ny();
    crew.each(
        0,
        voxels.cells.nz(),
        k -> {
          for (int c = k * plane; c < (k + 1) * plane; c++) {
            celsius[c] = curves.celsius(voxels.kind[c], heat[c]);
          }
        });
  }

  /** How many stages a step needs when one explicit step may be {@code stableS} long. */
  static int stages(double stepS, double stableS) {
    int s = (int) Math.ceil((Math.sqrt(9 + 16 * stepS / stableS) - 1) / 2);
    return Math.max(3, s % 2 == 0 ? s + 1 : s);
  }

  /** The longest step with that many stages, s. */
  static double longestS(int stages, double stableS) {
    return stableS * ((double) stages * stages + stages - 2) / 4;
  }

  /**
   * Tries a step.
   *
   * @param stepS length, s
   * @param stages odd, enough for it
   * @return root mean square of the estimated errors in heat, in kelvins: shares of what the cell
   *     gives off on its whole way times the range of temperature
   */
  double attempt(double stepS, int stages) {
    double w = 4.0 / ((double) stages * stages + stages - 2);
    layers(k -> first(k, THIRD * w * stepS));
    double b2 = THIRD;
    double b1 = THIRD;
    for (int j = 2; j <= stages; j++) {
      double b = j == 2 ? THIRD : (j * (double) j + j - 2) / (2.0 * j * (j + 1));
      double mu = (2.0 * j - 1) / j * b / b1;
      double nu = -(j - 1.0) / j * b / b2;
      double tau = mu * w * stepS;
      Stage stage = new Stage(mu, nu, 1 - mu - nu, tau, -(1 - b1) * tau);
      if (j == 2) {
        layers(k -> stage(k, stage, heat, odd, even, oddCelsius, evenCelsius));
      } else if (j % 2 == 1) {
        layers(k -> stage(k, stage, odd, even, odd, evenCelsius, oddCelsius));
      } else {
        layers(k -> stage(k, stage, even, odd, even, oddCelsius, evenCelsius));
      }
      b2 = b1;
      b1 = b;
    }
    layers(k -> estimate(k, stepS));
    double sum = 0;
    for (double s : sums) {
      sum += s;
    }
    int cells = voxels.kind.length - voxels.count(Voxels.AIR);
    return Math.sqrt(sum / cells);
  }

  /** Takes the result of the last attempt, which had an odd number of stages. */
  void accept() {
    double[] h = heat;
    heat = odd;
    odd = h;
    double[] t = celsius;
    celsius = oddCelsius;
    oddCelsius = t;
  }

  private record Stage(double mu, double nu, double rest, double tau, double gamma) {}

  private void layers(Crew.Layer work) {
    crew.each(1, voxels.cells.nz() - 1, work);
  }

  private void first(int k, double tau) {
    Cells cells = voxels.cells;
    for (int j = 1; j < cells.ny() - 1; j++) {
      int from = (k * cells.ny() + j) * cells.nx() + 1;
      for (int c = from; c < from + cells.nx() - 2; c++) {
        double s = flow(celsius, c) + source[c];
        slope[c] = s;
        double h = heat[c] + tau * s;
        odd[c] = h;
        oddCelsius[c] = curves.celsius(voxels.kind[c], h);
      }
    }
  }

  /** One stage, the inner loop of all; {@code past} and {@code to} may be the same array. */
  private void stage(
      int k,
      Stage stage,
      double[] past,
      double[] last,
      double[] to,
      double[] lastCelsius,
      double[] toCelsius) {
    int row = voxels.cells.nx();
    int plane = row * voxels.cells.ny();
    byte[] kind = voxels.kind;
    double[] start = heat;
    double[] startSlope = slope;
    double[] made = source;
    float[] gx = conductances.through(0);
    float[] gy = conductances.through(1);
    float[] gz = conductances.through(2);
    double[] solidusC = curves.solidusC;
    double[] perSolid = curves.perSolid;
    double[] melt = curves.melt;
    double[] perMelt = curves.perMelt;
    double[] liquidusC = curves.liquidusC;
    double[] perLiquid = curves.perLiquid;
    for (int j = 1; j < voxels.cells.ny() - 1; j++) {
      int from = k * plane + j * row + 1;
      for (int c = from; c < from + row - 2; c++) {
        double at = lastCelsius[c];
        double flow =
            made[c]
                + gx[c] * (lastCelsius[c + 1] - at)
                + gx[c - 1] * (lastCelsius[c - 1] - at)
                + gy[c] * (lastCelsius[c + row] - at)
                + gy[c - row] * (lastCelsius[c - row] - at)
                + gz[c] * (lastCelsius[c + plane] - at)
                + gz[c - plane] * (lastCelsius[c - plane] - at);
        double h =
            stage.mu * last[c]
                + stage.nu * past[c]
                + stage.rest * start[c]
                + stage.tau * flow
                + stage.gamma * startSlope[c];
        to[c] = h;
        int s = kind[c];
        if (h <= 0) {
          toCelsius[c] = solidusC[s] + h * perSolid[s];
        } else {
          double over = h - melt[s];
          toCelsius[c] =
              over >= 0 ? liquidusC[s] + over * perLiquid[s] : solidusC[s] + h * perMelt[s];
        }
      }
    }
  }

  private double flow(double[] t, int c) {
    float[] gx = conductances.through(0);
    float[] gy = conductances.through(1);
    float[] gz = conductances.through(2);
    int row = voxels.cells.nx();
    int plane = row * voxels.cells.ny();
    double at = t[c];
    return gx[c] * (t[c + 1] - at)
        + gx[c - 1] * (t[c - 1] - at)
        + gy[c] * (t[c + row] - at)
        + gy[c - row] * (t[c - row] - at)
        + gz[c] * (t[c + plane] - at)
        + gz[c - plane] * (t[c - plane] - at);
  }

  private void estimate(int k, double stepS) {
    Cells cells = voxels.cells;
    double sum = 0;
    for (int j = 1; j < cells.ny() - 1; j++) {
      int from = (k * cells.ny() + j) * cells.nx() + 1;
      for (int c = from; c < from + cells.nx() - 2; c++) {
        double e =
            DIFFERENCE * (heat[c] - odd[c])
                + SLOPES * stepS * (slope[c] + flow(oddCelsius, c) + source[c]);
        e /= curves.perKelvin(voxels.kind[c]);
        sum += e * e;
      }
    }
    sums[k] = sum;
  }
}
