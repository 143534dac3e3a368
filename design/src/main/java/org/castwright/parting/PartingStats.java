package org.castwright.parting;

import java.util.List;

/**
 * Figures about a parting.
 *
 * @param maxSlopeDeg steepest triangle of the sheet outside the shadow, degrees from level
 * @param steepShare share of the sheet's area outside the shadow that is steeper than the limit by
 *     more than a degree
 * @param crossings places where the seam's image crosses or covers itself
 * @param caughtMm3 volume that neither half can leave along the pull because casting lies both
 *     above and below, mm³, from columns every half millimeter; 0 up to rounding for a casting that
 *     opens
 * @param leftovers loose pieces that were given to the other half
 * @param loose bodies that hang on neither half, as in an enclosed void; they are with the upper
 *     one
 * @param lips grid nodes at which the sheet leaves the casting on the wrong side
 * @param slivers triangles of both halves thinner than a micron, beyond those of the casting
 * @param triangles triangles of both halves
 * @param toleranceMm how far from the outline the seam was allowed to move inside its band, mm
 * @param why why the stitch way was not taken; empty if it was or was not asked for
 * @param seconds wall-clock time of each stage in order
 */
public record PartingStats(
    double maxSlopeDeg,
    double steepShare,
    int crossings,
    double caughtMm3,
    int leftovers,
    int loose,
    int lips,
    int slivers,
    int triangles,
    double toleranceMm,
    String why,
    List<StageSeconds> seconds) {

  public PartingStats {
    seconds = List.copyOf(seconds);
  }

  /** Seconds of all stages. */
  public double totalSeconds() {
    double sum = 0;
    for (StageSeconds s : seconds) {
      sum += s.seconds();
    }
    return sum;
  }

  /** Wall-clock seconds spent in one stage. */
  public record StageSeconds(String stage, double seconds) {}
}
