package org.castwright.pipeline;

import java.util.List;
import org.castwright.cover.Caught;
import org.castwright.cover.CaughtRegion;
import org.castwright.cover.Certificate;
import org.castwright.cover.CoverResult;
import org.castwright.cover.CoverTolerance;
import org.castwright.cover.CurvePoint;
import org.castwright.cover.Pull;
import org.castwright.geom.Vec3;

/**
 * The fewest pulls that open a model, as a report holds them. Directions, centers and boxes in the
 * frame of the casting looked at; lengths mm, areas mm², volumes mm³.
 *
 * @param opens whether what stays caught keeps the tolerance
 * @param pulls in opening order
 * @param pieces bodies in all, never fewer than pulls
 * @param certificate how sure the number is
 * @param tolerance what may stay caught
 * @param left what no chosen pull frees though some direction does
 * @param places where that is
 * @param never what no direction frees
 * @param neverPlaces where that is
 * @param fine what is caught when only catches up to {@code fineWidthMm} are free
 * @param curve what stays caught with so many pulls
 * @param turnDegrees small turns of all pulls
 * @param holdsTurned whether the answer survives them
 * @param caughtTurned what stays caught after each
 */
public record CoverInfo(
    boolean opens,
    List<PullInfo> pulls,
    int pieces,
    CertificateInfo certificate,
    ToleranceInfo tolerance,
    CaughtSum left,
    List<Place> places,
    CaughtSum never,
    List<Place> neverPlaces,
    CaughtSum fine,
    double fineWidthMm,
    List<Point> curve,
    double turnDegrees,
    boolean holdsTurned,
    List<CaughtSum> caughtTurned) {

  // so many facets of a place are named
  private static final int FACETS = 20;

  /** One pull; what only it frees, and what it takes of the block in this order. */
  public record PullInfo(
      List<Double> direction,
      boolean given,
      double onlyAreaMm2,
      double onlyVolumeMm3,
      double ownVolumeMm3,
      int bodies) {}

  /** Least number found, proved lower bound, and the search behind it. */
  public record CertificateInfo(
      int least,
      int lowerBound,
      boolean proven,
      long nodes,
      int candidates,
      int samples,
      int rows) {}

  /** What may stay caught. */
  public record ToleranceInfo(double areaMm2, double volumeMm3, double widthMm) {}

  /** How much is caught. */
  public record CaughtSum(double areaMm2, double volumeMm3, double widthMm) {}

  /** A connected place; of its facets the first few are named. */
  public record Place(
      List<Double> center,
      List<Double> min,
      List<Double> max,
      double areaMm2,
      double volumeMm3,
      double widthMm,
      int facets,
      List<Integer> firstFacets) {}

  /** A point of the curve; directions of the set it was measured with. */
  public record Point(
      int pulls,
      double areaMm2,
      double volumeMm3,
      double widthMm,
      boolean opens,
      List<List<Double>> directions) {}

  /** Rounds a result for a report. */
  public static CoverInfo of(CoverResult r) {
    return new CoverInfo(
        r.opens(),
        r.pulls().stream().map(CoverInfo::pull).toList(),
        r.pieces(),
        certificate(r.certificate()),
        tolerance(r.tolerance()),
        sum(r.left()),
        r.regions().stream().map(CoverInfo::place).toList(),
        sum(r.never()),
        r.neverRegions().stream().map(CoverInfo::place).toList(),
        sum(r.fine()),
        r.fineWidthMm(),
        r.curve().stream().map(CoverInfo::point).toList(),
        r.turns().degrees(),
        r.turns().holds(),
        r.turns().turned().stream().map(CoverInfo::sum).toList());
  }

  private static PullInfo pull(Pull p) {
    return new PullInfo(
        ReportMaker.array(p.direction()),
        p.fixed(),
        mm(p.onlyAreaMm2()),
        mm(p.onlyVolumeMm3()),
        mm(p.ownVolumeMm3()),
        p.bodies());
  }

  private static CertificateInfo certificate(Certificate c) {
    return new CertificateInfo(
        c.least(), c.lowerBound(), c.proven(), c.nodes(), c.candidates(), c.samples(), c.rows());
  }

  private static ToleranceInfo tolerance(CoverTolerance t) {
    return new ToleranceInfo(mm(t.areaMm2()), mm(t.volumeMm3()), t.widthMm());
  }

  private static CaughtSum sum(Caught c) {
    return new CaughtSum(mm(c.areaMm2()), mm(c.volumeMm3()), mm(c.widthMm()));
  }

  private static Place place(CaughtRegion r) {
    return new Place(
        rounded(r.center()),
        rounded(r.box().min()),
        rounded(r.box().max()),
        mm(r.caught().areaMm2()),
        mm(r.caught().volumeMm3()),
        mm(r.caught().widthMm()),
        r.facets().size(),
        r.facets().subList(0, Math.min(FACETS, r.facets().size())));
  }

  private static Point point(CurvePoint p) {
    return new Point(
        p.pulls(),
        mm(p.left().areaMm2()),
        mm(p.left().volumeMm3()),
        mm(p.left().widthMm()),
        p.opens(),
        p.directions().stream().map(ReportMaker::array).toList());
  }

  private static List<Double> rounded(Vec3 v) {
    return List.of(mm(v.x()), mm(v.y()), mm(v.z()));
  }

  private static double mm(double v) {
    return ReportMaker.round(v, 3);
  }
}
