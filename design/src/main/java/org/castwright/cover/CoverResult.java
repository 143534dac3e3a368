package org.castwright.cover;

import java.util.List;

/**
 * The pulls that free a casting, and how good they are.
 *
 * @param pulls in opening order
 * @param pieces bodies in all, when in this order each pull takes all it can: never fewer than
 *     pulls
 * @param opens whether what stays caught, what no direction frees included, keeps the tolerance
 * @param tolerance in force
 * @param certificate how sure the number is
 * @param left what no chosen pull frees though some candidate does
 * @param regions where that is, largest first
 * @param never what no candidate frees: no number of rigid pieces molds it
 * @param neverRegions where that is, largest first
 * @param fine what no chosen pull frees when only catches narrower than {@code fineWidthMm} are
 *     creases
 * @param fineWidthMm the narrowest width that could be told, mm
 * @param curve what stays caught with 1, 2, 3 ... pulls, up to the first number that leaves nothing
 * @param turns whether small turns of the pulls change the answer
 */
public record CoverResult(
    List<Pull> pulls,
    int pieces,
    boolean opens,
    CoverTolerance tolerance,
    Certificate certificate,
    Caught left,
    List<CaughtRegion> regions,
    Caught never,
    List<CaughtRegion> neverRegions,
    Caught fine,
    double fineWidthMm,
    List<CurvePoint> curve,
    Turns turns) {

  /** Copies the lists. */
  public CoverResult {
    pulls = List.copyOf(pulls);
    regions = List.copyOf(regions);
    neverRegions = List.copyOf(neverRegions);
    curve = List.copyOf(curve);
  }
}
