package org.castwright.geom;

/** Length units at the edges of the program; everything inside is in millimeters. */
public enum LengthUnit {
  MICRON("micron", 0.001),
  MILLIMETER("mm", 1),
  CENTIMETER("cm", 10),
  INCH("in", 25.4),
  FOOT("ft", 304.8),
  METER("m", 1000);

  private final String symbol;
  private final double millimeters;

  LengthUnit(String symbol, double millimeters) {
    this.symbol = symbol;
    this.millimeters = millimeters;
  }

  public String symbol() {
    return symbol;
  }

  /** How many millimeters one of this unit is. */
  public double millimeters() {
    return millimeters;
  }
}
