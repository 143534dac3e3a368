package org.castwright.proof;

import org.castwright.geom.Vec3;

/**
 * What the proof allows.
 *
 * <p>A piece that is moved by {@code t} may share with what stands still at most {@code outline
 * length × lipWidth × max(t, releaseDepth)}: the volume that a lip of the allowed width would share
 * if it ran all along the outline of the standing body, seen along the pull. Spots caught deeper
 * than {@code releaseDepth} and wider than a lip on all sides may have an area of {@code
 * (lipLengthShare × outline length)²}.
 *
 * @param releaseDepth mm; a catch shallower than this along the pull gives way
 * @param lipWidth mm across the pull; the widest lip that may stay caught
 * @param lipLengthShare share of the outline that may be caught wider than {@code lipWidth}
 * @param disjointShare shared volume of two bodies, as a share of the block
 * @param balanceShare volume that may be missing or left over, as a share of the block
 * @param minimumWall mm between the cavity and the outside
 * @param bed room of the printer, mm
 * @param keyGapTolerance mm by which the gap round a key may differ from the clearance asked
 * @param allowCaught record, but do not fail, catches of pieces with the casting (flexible casting
 *     or mold)
 */
public record ProofLimits(
    double releaseDepth,
    double lipWidth,
    double lipLengthShare,
    double disjointShare,
    double balanceShare,
    double minimumWall,
    Vec3 bed,
    double keyGapTolerance,
    boolean allowCaught) {

  /**
   * 0.05 mm of release and lip is under a fifth of a common 0.28 mm printed layer (common practice,
   * no source); a millionth of the block is some twenty times what rounding its files to 32-bit
   * floats moves; 3 mm of wall and a bed of 220 × 220 × 250 mm are common printers' (common
   * practice, no source); 0.03 mm of gap covers the facets of a round key of 8 mm with 32 sides.
   */
  public static final ProofLimits DEFAULT =
      new ProofLimits(0.05, 0.05, 0.002, 1e-6, 1e-6, 3, new Vec3(220, 220, 250), 0.03, false);

  /** The same width for catches along the pull and lips across it, mm. */
  public ProofLimits withRelease(double mm) {
    return new ProofLimits(
        mm,
        mm,
        lipLengthShare,
        disjointShare,
        balanceShare,
        minimumWall,
        bed,
        keyGapTolerance,
        allowCaught);
  }

  public ProofLimits withMinimumWall(double wall) {
    return new ProofLimits(
        releaseDepth,
        lipWidth,
        lipLengthShare,
        disjointShare,
        balanceShare,
        wall,
        bed,
        keyGapTolerance,
        allowCaught);
  }

  public ProofLimits withBed(Vec3 room) {
    return new ProofLimits(
        releaseDepth,
        lipWidth,
        lipLengthShare,
        disjointShare,
        balanceShare,
        minimumWall,
        room,
        keyGapTolerance,
        allowCaught);
  }

  public ProofLimits withAllowCaught(boolean allow) {
    return new ProofLimits(
        releaseDepth,
        lipWidth,
        lipLengthShare,
        disjointShare,
        balanceShare,
        minimumWall,
        bed,
        keyGapTolerance,
        allow);
  }

  /** The volume, mm³, that may be shared after a move of {@code t} past an outline that long. */
  double allowedOverlap(double outlineLength, double t) {
    return outlineLength * lipWidth * Math.max(t, releaseDepth);
  }
}
