package org.castwright.heat;

/**
 * Temperatures of heat contents for all kinds of cells, in arrays that inner loops read themselves:
 * a call for each cell costs as much as all its arithmetic.
 */
final class Curves {

  final double[] solidusC;
  final double[] liquidusC;
  final double[] melt;
  final double[] perSolid;
  final double[] perLiquid;
  final double[] perMelt;
  final double[] perKelvin;

  /**
   * @param substances by kind; air keeps its temperature whatever it takes up
   * @param airC °C
   * @param rangeK greatest difference of temperature, K
   */
  Curves(Substance[] substances, double airC, double rangeK) {
    int kinds = substances.length;
    solidusC = new double[kinds];
    liquidusC = new double[kinds];
    melt = new double[kinds];
    perSolid = new double[kinds];
    perLiquid = new double[kinds];
    perMelt = new double[kinds];
    perKelvin = new double[kinds];
    solidusC[Voxels.AIR] = airC;
    liquidusC[Voxels.AIR] = airC;
    perKelvin[Voxels.AIR] = Double.POSITIVE_INFINITY;
    for (int s = Voxels.AIR + 1; s < kinds; s++) {
      Substance m = substances[s];
      solidusC[s] = m.solidusC();
      liquidusC[s] = m.liquidusC();
      melt[s] = m.melt();
      perSolid[s] = 1 / m.solidHeat();
      perLiquid[s] = 1 / m.liquidHeat();
      perMelt[s] = m.melt() > 0 ? (m.liquidusC() - m.solidusC()) / m.melt() : 0;
      perKelvin[s] = m.leastHeat() + m.melt() / rangeK;
    }
  }

  double celsius(int kind, double h) {
    if (h <= 0) {
      return solidusC[kind] + h * perSolid[kind];
    }
    double over = h - melt[kind];
    return over >= 0
        ? liquidusC[kind] + over * perLiquid[kind]
        : solidusC[kind] + h * perMelt[kind];
  }

  /**
   * What a cell of a kind gives off on its whole way through the range, for each kelvin of it,
   * J/(m³ K); infinite for air.
   */
  double perKelvin(int kind) {
    return perKelvin[kind];
  }
}
