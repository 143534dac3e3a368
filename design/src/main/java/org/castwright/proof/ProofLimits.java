package org.castwright.proof;

import java.util.function.Consumer;
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
 * @param shakeShare share of the directions 1° and 2° off its pull along which a piece must leave
 *     too
 * @param wedgeDegrees ° of the thinnest wedge that a piece may have along its shut-off faces
 * @param minimumWeb mm; the thinnest place of a piece that does not lie between cavity and outside
 * @param creaseMm3 mm³ that a piece may share with the casting at any step before a catch fails
 * @param gates to pour through that a mold must have at least
 * @param allowCaught record, but do not fail, catches of pieces with the casting (flexible casting
 *     or mold), and the feather edges and thin webs that a seam through caught space leaves
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
    double shakeShare,
    double wedgeDegrees,
    double minimumWeb,
    double creaseMm3,
    int gates,
    boolean allowCaught) {

  /**
   * 0.05 mm of release and lip is under a fifth of a common 0.28 mm printed layer (common practice,
   * no source); a millionth of the block is some twenty times what rounding its files to 32-bit
   * floats moves; 3 mm of wall and a bed of 220 × 220 × 250 mm are common printers' (common
   * practice, no source); 0.03 mm of gap covers the facets of a round key of 8 mm with 32 sides;
   * straight bores keep sound pieces from leaving off their pull, so that is not asked; edges under
   * 25° chip, and 0.8 mm are two lines of a common nozzle (both common practice, no source).
   */
  public static final ProofLimits DEFAULT =
      new ProofLimits(
          0.05, 0.05, 0.002, 1e-6, 1e-6, 3, new Vec3(220, 220, 250), 0.03, 0, 25, 0.8, 0, 0, false);

  /** The same width for catches along the pull and lips across it, mm. */
  public ProofLimits withRelease(double mm) {
    return but(
        c -> {
          c.releaseDepth = mm;
          c.lipWidth = mm;
        });
  }

  public ProofLimits withMinimumWall(double wall) {
    return but(c -> c.minimumWall = wall);
  }

  public ProofLimits withBed(Vec3 room) {
    return but(c -> c.bed = room);
  }

  public ProofLimits withAllowCaught(boolean allow) {
    return but(c -> c.allowCaught = allow);
  }

  public ProofLimits withShakeShare(double share) {
    return but(c -> c.shakeShare = share);
  }

  public ProofLimits withWedge(double degrees) {
    return but(c -> c.wedgeDegrees = degrees);
  }

  public ProofLimits withMinimumWeb(double web) {
    return but(c -> c.minimumWeb = web);
  }

  public ProofLimits withCrease(double mm3) {
    return but(c -> c.creaseMm3 = mm3);
  }

  public ProofLimits withGates(int least) {
    return but(c -> c.gates = least);
  }

  private ProofLimits but(Consumer<Copy> change) {
    Copy copy = new Copy(this);
    change.accept(copy);
    return copy.limits();
  }

  /** The values on their way into the next limits. */
  private static final class Copy {
    private double releaseDepth;
    private double lipWidth;
    private double lipLengthShare;
    private double disjointShare;
    private double balanceShare;
    private double minimumWall;
    private Vec3 bed;
    private double keyGapTolerance;
    private double shakeShare;
    private double wedgeDegrees;
    private double minimumWeb;
    private double creaseMm3;
    private int gates;
    private boolean allowCaught;

    Copy(ProofLimits from) {
      releaseDepth = from.releaseDepth;
      lipWidth = from.lipWidth;
      lipLengthShare = from.lipLengthShare;
      disjointShare = from.disjointShare;
      balanceShare = from.balanceShare;
      minimumWall = from.minimumWall;
      bed = from.bed;
      keyGapTolerance = from.keyGapTolerance;
      shakeShare = from.shakeShare;
      wedgeDegrees = from.wedgeDegrees;
      minimumWeb = from.minimumWeb;
      creaseMm3 = from.creaseMm3;
      gates = from.gates;
      allowCaught = from.allowCaught;
    }

    ProofLimits limits() {
      return new ProofLimits(
          releaseDepth,
          lipWidth,
          lipLengthShare,
          disjointShare,
          balanceShare,
          minimumWall,
          bed,
          keyGapTolerance,
          shakeShare,
          wedgeDegrees,
          minimumWeb,
          creaseMm3,
          gates,
          allowCaught);
    }
  }

  /** The volume, mm³, that may be shared after a move of {@code t} past an outline that long. */
  double allowedOverlap(double outlineLength, double t) {
    return outlineLength * lipWidth * Math.max(t, releaseDepth);
  }
}
