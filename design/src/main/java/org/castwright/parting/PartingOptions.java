package org.castwright.parting;

/**
 * What a parting is asked for.
 *
 * @param maxSlopeDeg the steepest sheet wanted, degrees from level; exceeded only where the seam
 *     itself leaves no other way
 * @param releaseMm how far sideways the wrong half may grip the casting before that counts as
 *     caught, mm; at most half a millimeter
 * @param landMm width of the strip beside the casting where the sheet tries to stay level across
 *     the seam, mm
 * @param flatRingMm width of the strip along the block's walls where the sheet is a plane, mm; less
 *     where the casting leaves no room
 * @param method how to make the halves
 */
public record PartingOptions(
    double maxSlopeDeg, double releaseMm, double landMm, double flatRingMm, Method method) {

  /**
   * 60 degrees leaves every shut-off 30 degrees of draft (common practice asks at least 5, no
   * source); 0.05 mm is below what a printed mold resolves, so it bends or wears away; a 3 mm land
   * keeps the mold's rim square where the casting is trimmed; 3 mm of plane along the wall is
   * enough to see and clamp.
   */
  public static final PartingOptions DEFAULT = new PartingOptions(60, 0.05, 3, 3, Method.AUTO);

  /**
   * @throws IllegalArgumentException if a number is out of its range
   */
  public PartingOptions {
    if (!(maxSlopeDeg > 0 && maxSlopeDeg < 90)) {
      throw new IllegalArgumentException("maxSlopeDeg must be between 0 and 90: " + maxSlopeDeg);
    }
    if (!(releaseMm > 0 && releaseMm <= 0.5)) {
      throw new IllegalArgumentException("releaseMm must be above 0 and at most 0.5: " + releaseMm);
    }
    if (!(landMm >= 0) || !(flatRingMm > 0)) {
      throw new IllegalArgumentException("landMm must not be negative, flatRingMm above 0");
    }
  }

  public PartingOptions withReleaseMm(double mm) {
    return new PartingOptions(maxSlopeDeg, mm, landMm, flatRingMm, method);
  }

  public PartingOptions with(Method m) {
    return new PartingOptions(maxSlopeDeg, releaseMm, landMm, flatRingMm, m);
  }
}
