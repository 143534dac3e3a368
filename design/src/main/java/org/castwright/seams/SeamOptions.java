package org.castwright.seams;

/**
 * How seams are weighed. The unit of cost is a millimeter of plain seam.
 *
 * @param releaseMm width of catch that counts as free, within a factor of two either way; 0.05 is
 *     the flow of a printed wall, common practice, no source
 * @param mostPixels columns along a depth image at most; 2000 shows a 100 mm model at 0.05 mm
 * @param splitMm facets partly in shadow are split down to this edge length before labels are
 *     chosen; finer than any land a seam needs
 * @param draftDeg draft below which a facet is dear; 1 degree is the usual least draft, common
 *     practice, no source
 * @param draftWeight cost of a square millimeter at a draft shortfall of 1 (a facet that faces
 *     straight back); 0.2 keeps the seam of any body rounder than a 5 mm radius at its widest
 *     place, where pure shortening would slip off
 * @param creaseShare weight of a millimeter along a sharp edge: seams in creases are hard to see
 * @param creaseDeg angle between facets from which an edge is sharp
 * @param hideWeight weight of a millimeter where the seam may be hidden
 * @param showWeight weight of a millimeter on a show face
 * @param noSeamWeight weight of a millimeter where no seam may run: more than any detour, yet
 *     finite, so that an unmeetable wish ends in a measure, not in no answer
 * @param pieceCost cost of one more piece, mm of seam
 * @param patchMm2 patches smaller than this are merged into a neighbor that may take them
 * @param creaseMm2 patches smaller than this are merged even where no neighbor may take them: a
 *     catch as small as that is a crease; it counts as caught in the measures
 */
public record SeamOptions(
    double releaseMm,
    int mostPixels,
    double splitMm,
    double draftDeg,
    double draftWeight,
    double creaseShare,
    double creaseDeg,
    double hideWeight,
    double showWeight,
    double noSeamWeight,
    double pieceCost,
    double patchMm2,
    double creaseMm2) {

  public static final SeamOptions DEFAULT =
      new SeamOptions(0.05, 2000, 1, 1, 0.2, 0.4, 35, 0.2, 5, 1e4, 20, 10, 1);

  /** Checks that nothing is below its least. */
  public SeamOptions {
    if (!(releaseMm > 0) || mostPixels < 1 || !(splitMm > 0) || !(creaseDeg > 0)) {
      throw new IllegalArgumentException("tolerances and resolutions must be above zero");
    }
    double[] costs = {
      draftWeight, creaseShare, hideWeight, showWeight, noSeamWeight, pieceCost, patchMm2, creaseMm2
    };
    for (double cost : costs) {
      if (!(cost >= 0) || Double.isInfinite(cost)) {
        throw new IllegalArgumentException("weights and areas must be finite and not below zero");
      }
    }
  }

  public SeamOptions withRelease(double mm) {
    return new SeamOptions(
        mm,
        mostPixels,
        splitMm,
        draftDeg,
        draftWeight,
        creaseShare,
        creaseDeg,
        hideWeight,
        showWeight,
        noSeamWeight,
        pieceCost,
        patchMm2,
        creaseMm2);
  }
}
