package org.castwright.heat;

/**
 * What a cell is made of, in SI units: temperature and conductivity as functions of the heat in it.
 * The heat content is in J/m³ and zero at the solidus; between zero and {@code melt} the cell is
 * partly liquid. A substance that does not melt has {@code melt = 0} and the same figures on both
 * sides.
 *
 * @param solidusC where melting begins, °C
 * @param liquidusC where it ends, °C
 * @param melt heat from solidus to liquidus, J/m³
 * @param solidHeat heat capacity of the solid, J/(m³ K)
 * @param liquidHeat of the liquid, J/(m³ K)
 * @param solidK conductivity of the solid, W/(m K)
 * @param liquidK of the liquid, W/(m K)
 */
record Substance(
    double solidusC,
    double liquidusC,
    double melt,
    double solidHeat,
    double liquidHeat,
    double solidK,
    double liquidK) {

  Substance {
    boolean figures = solidHeat > 0 && liquidHeat > 0 && solidK > 0 && liquidK > 0 && melt >= 0;
    if (!figures || !(liquidusC >= solidusC) || (liquidusC > solidusC && melt == 0)) {
      throw new IllegalArgumentException(
          "a substance needs heat capacities and conductivities above zero, and heat to melt it");
    }
  }

  /** One that does not melt; its heat content is zero at {@code zeroC}. */
  static Substance plain(double heat, double k, double zeroC) {
    return new Substance(zeroC, zeroC, 0, heat, heat, k, k);
  }

  /** Temperature at a heat content, °C. */
  double celsius(double h) {
    if (h < 0) {
      return solidusC + h / solidHeat;
    }
    return h > melt
        ? liquidusC + (h - melt) / liquidHeat
        : melt > 0 ? solidusC + (liquidusC - solidusC) * h / melt : solidusC;
  }

  /**
   * Heat content at a temperature, J/m³; of a pure melt at its melting point that of the liquid.
   */
  double heat(double celsius) {
    if (celsius < solidusC) {
      return (celsius - solidusC) * solidHeat;
    }
    return celsius >= liquidusC
        ? melt + (celsius - liquidusC) * liquidHeat
        : melt * (celsius - solidusC) / (liquidusC - solidusC);
  }

  /** Share of liquid, 0 to 1; of a substance that does not melt 1 above the zero of its heat. */
  double liquid(double h) {
    return h <= 0 ? 0 : h >= melt ? 1 : h / melt;
  }

  /**
   * Conductivity on the way to a neighbor. A cell in which the front stands has the melting point
   * at its middle, wherever in it the front is; on the average of the front's way through it, all
   * that lies between that middle and a solid neighbor's is solid, and all liquid on the other
   * side.
   *
   * @param h heat content
   * @param same whether the neighbor is of this substance
   * @param neighbor its heat content
   */
  double kToward(double h, boolean same, double neighbor) {
    return same && mushy(h) && !mushy(neighbor) ? k(neighbor) : same ? k(h) : kToSurface(h);
  }

  /** Conductivity on the way to the surface, where freezing begins. */
  double kToSurface(double h) {
    return mushy(h) ? solidK : k(h);
  }

  private boolean mushy(double h) {
    return h > 0 && h < melt;
  }

  private double k(double h) {
    return solidK + (liquidK - solidK) * liquid(h);
  }

  /** The lesser heat capacity, which bounds the step in time. */
  double leastHeat() {
    return Math.min(solidHeat, liquidHeat);
  }

  boolean oneConductivity() {
    return solidK == liquidK;
  }
}
