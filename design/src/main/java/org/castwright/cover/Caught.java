package org.castwright.cover;

/**
 * How much is caught.
 *
 * @param areaMm2 surface, mm²
 * @param volumeMm3 space of the mold, mm³
 * @param widthMm width of the widest catch, mm: how far its innermost point would have to move
 *     sideways to be free, half a square's side that fits in: about the width of the ledge that
 *     holds it; measured up to 65 columns of the pictures; 0 when nothing is caught or the width
 *     was not asked for
 */
public record Caught(double areaMm2, double volumeMm3, double widthMm) {

  /** Nothing at all. */
  public static final Caught NOTHING = new Caught(0, 0, 0);

  /** Whether area and volume are within a tolerance. */
  public boolean within(CoverTolerance t) {
    return areaMm2 <= t.areaMm2() && volumeMm3 <= t.volumeMm3();
  }
}
