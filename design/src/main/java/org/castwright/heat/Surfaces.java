package org.castwright.heat;

/**
 * Coefficients of surfaces, W/(m² K); infinite means no resistance, zero no heat.
 *
 * @param sides of the block's six sides: low x, high x, low y, high y, low z, high z
 * @param contact between casting and wall
 * @param bare of a casting that stands in the air without a mold
 */
@SuppressWarnings("ArrayRecordComponent") // six numbers, never compared
record Surfaces(double[] sides, double contact, double bare) {

  /** The same coefficient on all outsides. */
  static Surfaces even(double air, double contact) {
    return new Surfaces(new double[] {air, air, air, air, air, air}, contact, air);
  }

  double outside(int axis, boolean low) {
    return sides[2 * axis + (low ? 0 : 1)];
  }
}
