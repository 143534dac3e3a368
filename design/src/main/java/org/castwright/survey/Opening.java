package org.castwright.survey;

import org.castwright.geom.Vec3;

/**
 * How a model opens along one pull: one piece taken off along {@code direction}, the other against
 * it.
 *
 * @param direction unit vector in the model's frame; the sense is chosen by {@link Sense}, or is
 *     the caller's when the caller gave the direction
 * @param trappedVolume space that neither piece can leave, mm³
 * @param noiseFloor trapped volumes up to this may come from rounded coordinates and from sampling,
 *     mm³: the area of walls under 1° of draft times the step of 32-bit coordinates, plus the
 *     standard error between four interleaved pictures
 * @param caughtArea surface neither piece's side sees, in places wider and deeper than the release
 *     tolerance, mm²; an estimate from samples
 * @param caughtDepth the most space shut in along the pull in such places, mm
 * @param caughtWidth width of the widest catch: the largest disc, in the plane across the pull,
 *     that fits in the columns shutting in more than the release tolerance, mm; to be compared with
 *     the release tolerance
 * @param widthResolution the width is right to about this, mm
 * @param free whether nothing is caught wider than the release tolerance: two rigid pieces open
 * @param seamLevel height of the seam along {@code direction}: the middle of the heights at which a
 *     plane seam fits, or comes nearest to fitting, mm from the origin
 * @param drawAbove how far the model reaches above the seam level, mm
 * @param drawBelow how far it reaches below, mm
 * @param shadowArea area of the model's shadow along the pull, mm²
 * @param flatness how far the seam has to leave a plane, mm; 0 when a plane fits
 * @param seamSlope the steepest rise the seam is forced to, degrees from the plane across the pull
 * @param draft shares of the surface with little draft
 * @param silhouetteLoops closed loops between facets facing up and facets not facing up
 */
public record Opening(
    Vec3 direction,
    double trappedVolume,
    double noiseFloor,
    double caughtArea,
    double caughtDepth,
    double caughtWidth,
    double widthResolution,
    boolean free,
    double seamLevel,
    double drawAbove,
    double drawBelow,
    double shadowArea,
    double flatness,
    double seamSlope,
    DraftShares draft,
    int silhouetteLoops) {

  /** The model's whole height along the pull, mm. */
  public double drawDepth() {
    return drawAbove + drawBelow;
  }
}
