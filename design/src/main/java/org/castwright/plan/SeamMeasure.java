package org.castwright.plan;

/**
 * How long seams are on the casting, gate and vents left out, and how the maker's wishes fare.
 *
 * @param lengthMm all seams together
 * @param visibleMm outside regions marked hide; nothing else is taken for hidden
 * @param showMm on faces marked show
 * @param noSeamMm where none was to run
 * @param missedMm2 surface not formed by the piece wished for
 */
public record SeamMeasure(
    double lengthMm, double visibleMm, double showMm, double noSeamMm, double missedMm2) {

  /** A seam of which nothing is hidden and nothing was wished. */
  static SeamMeasure inSight(double lengthMm) {
    return new SeamMeasure(lengthMm, lengthMm, 0, 0, 0);
  }

  /** What crosses faces marked show, as a share of all seams. */
  public double showShare() {
    return lengthMm > 0 ? showMm / lengthMm : 0;
  }
}
