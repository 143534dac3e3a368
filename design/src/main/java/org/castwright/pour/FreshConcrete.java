package org.castwright.pour;

/**
 * Side pressure of fresh concrete by CIRIA Report 108: {@code P = D(C1√R + C2·K·√(H − C1√R))},
 * never above the hydrostatic {@code D·h}, with {@code K = (36/(T+16))²}. Where the inner root has
 * no real value the hydrostatic pressure stands: every table-top mold is in that branch.
 *
 * @param weightKnPerM3 weight density D
 * @param shape C1: 1.0 for walls, 1.5 for columns
 * @param mix C2: 0.3 normal, 0.45 retarded, 0.6 strongly retarded
 */
public record FreshConcrete(double weightKnPerM3, double shape, double mix) {

  /**
   * Highest side pressure, kN/m².
   *
   * @param formM height of the form H
   * @param pourM height of the pour h
   * @param riseMPerH rate of rise R
   * @param temperatureC of the concrete at placing T
   */
  public double pressureKnPerM2(double formM, double pourM, double riseMPerH, double temperatureC) {
    double hydrostatic = weightKnPerM3 * pourM;
    double rise = shape * Math.sqrt(riseMPerH);
    if (rise > formM) {
      return hydrostatic;
    }
    double k = Math.pow(36 / (temperatureC + 16), 2);
    double p = weightKnPerM3 * (rise + mix * k * Math.sqrt(formM - rise));
    return Math.min(p, hydrostatic);
  }
}
