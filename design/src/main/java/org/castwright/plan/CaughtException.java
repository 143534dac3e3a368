package org.castwright.plan;

import java.util.List;
import java.util.Locale;
import org.castwright.cover.Caught;
import org.castwright.cover.CaughtRegion;
import org.castwright.cover.CoverResult;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.side.SidePieces;
import org.castwright.survey.SurveyResult;

/** The model cannot be molded in so many rigid pieces: trapped space is left. */
public final class CaughtException extends RuntimeException {

  private final transient TriMesh scaled;
  private final transient SurveyResult survey;
  private final double releaseMm;
  private final transient CoverResult cover;
  private final boolean speck;

  /** So many places are named in the message. */
  private static final int NAMED = 3;

  CaughtException(TriMesh scaled, SurveyResult survey, double releaseMm) {
    this(
        scaled,
        survey,
        releaseMm,
        String.format(
            Locale.ROOT,
            "two rigid pieces do not open: the best pull leaves %.3g mm³ of mold trapped in %d"
                + " place(s), up to %.2f mm wide; use a material that stretches, --pieces auto or a"
                + " jacket, fill it with --block-out MM3, or use --allow-caught to build it all the"
                + " same",
            survey.best().trappedVolume(),
            survey.caught().places().size(),
            survey.best().caughtWidth()));
  }

  CaughtException(
      TriMesh scaled, SurveyResult survey, double releaseMm, SidePieces sides, int most) {
    this(
        scaled,
        survey,
        releaseMm,
        String.format(
            Locale.ROOT,
            "%d rigid pieces do not open: of %.3g mm³ of mold that the two main pieces trap,"
                + " %d side piece(s) free all but %.3g mm³; use a material that stretches, a larger"
                + " --release, more --pieces or a jacket, or --allow-caught to build it all the"
                + " same",
            most,
            sides.trappedMm3(),
            sides.pieces().size(),
            sides.leftMm3()));
  }

  CaughtException(
      TriMesh scaled, SurveyResult survey, double releaseMm, CoverResult cover, int most) {
    this(scaled, survey, releaseMm, words(cover, most), cover);
  }

  private static String words(CoverResult c, int most) {
    if (c.opens()) {
      return String.format(
          Locale.ROOT,
          "the fewest rigid pieces that open are %d, more than the %d asked for; allow more with"
              + " --pieces, or use a material that stretches or a jacket",
          c.pulls().size(),
          most);
    }
    Caught left = noneFrees(c) ? c.never() : c.left();
    List<CaughtRegion> regions = noneFrees(c) ? c.neverRegions() : c.regions();
    StringBuilder where = new StringBuilder();
    for (CaughtRegion r : regions.subList(0, Math.min(NAMED, regions.size()))) {
      Vec3 size = r.box().size();
      where.append(
          String.format(
              Locale.ROOT,
              "%s %.1f mm³ near (%.1f, %.1f, %.1f) of the scaled model, %.1f × %.1f × %.1f mm",
              where.isEmpty() ? ":" : ",",
              r.caught().volumeMm3(),
              r.center().x(),
              r.center().y(),
              r.center().z(),
              size.x(),
              size.y(),
              size.z()));
    }
    return String.format(
        Locale.ROOT,
        "%s: %.1f mm³ of mold and %.1f mm² of surface stay caught in %d place(s)%s; %s",
        noneFrees(c)
            ? "no number of rigid pieces opens it, for there is space that no direction frees"
            : "even "
                + c.pieces()
                + " rigid pieces "
                + (c.pieces() > c.pulls().size() ? "along " + c.pulls().size() + " pulls " : "")
                + "do not open",
        left.volumeMm3(),
        left.areaMm2(),
        regions.size(),
        where,
        noneFrees(c)
            ? "mold it with a flexible skin in a rigid jacket, or fill that space"
            : "use a material that stretches or a jacket round a flexible skin");
  }

  /** Whether what no direction frees is more than may stay caught. */
  private static boolean noneFrees(CoverResult c) {
    return !c.opens() && !c.never().within(c.tolerance());
  }

  CaughtException(TriMesh scaled, SurveyResult survey, double releaseMm, String message) {
    this(scaled, survey, releaseMm, message, null);
  }

  /**
   * For pulls that open, but whose pieces fall into too many parts.
   *
   * @param less what stays caught along some of them
   */
  static CaughtException tooMany(
      TriMesh scaled,
      SurveyResult survey,
      double releaseMm,
      CoverResult cover,
      CoverResult less,
      int most) {
    String words =
        String.format(
            Locale.ROOT,
            "%d pulls would open it, but what leaves along them falls into %d pieces, more than %d;"
                + " %s",
            cover.pulls().size(),
            cover.pieces(),
            most,
            words(less, most));
    return new CaughtException(scaled, survey, releaseMm, words, less);
  }

  /** For pieces that would open, but one of which nobody could hold. */
  static CaughtException speck(
      TriMesh scaled, SurveyResult survey, double releaseMm, CoverResult cover, double mm3) {
    String words =
        String.format(
            Locale.ROOT,
            "%d rigid pieces would open, but one of them would free no more than %.0f mm³, too"
                + " little to hold",
            cover.pulls().size(),
            mm3);
    return new CaughtException(scaled, survey, releaseMm, words, cover, true);
  }

  private CaughtException(
      TriMesh scaled, SurveyResult survey, double releaseMm, String message, CoverResult cover) {
    this(scaled, survey, releaseMm, message, cover, false);
  }

  private CaughtException(
      TriMesh scaled,
      SurveyResult survey,
      double releaseMm,
      String message,
      CoverResult cover,
      boolean speck) {
    super(message);
    this.speck = speck;
    this.cover = cover;
    this.scaled = scaled;
    this.survey = survey;
    this.releaseMm = releaseMm;
  }

  /** The scaled model the survey's places refer to. */
  public TriMesh scaled() {
    return scaled;
  }

  public SurveyResult survey() {
    return survey;
  }

  /** The fewest pulls that were found, or null if only two pieces were asked for. */
  public CoverResult cover() {
    return cover;
  }

  /** Whether no number of rigid pieces opens it, for no direction frees some of its space. */
  public boolean never() {
    return cover != null && noneFrees(cover);
  }

  /** Where space stays caught with as many pieces as may be; empty if more pieces would open it. */
  public List<CaughtRegion> unfreed() {
    return cover == null || cover.opens()
        ? List.of()
        : never() ? cover.neverRegions() : cover.regions();
  }

  /** Whether pieces would open it all the same, but one of them is too small to hold. */
  public boolean speck() {
    return speck;
  }

  /** The width of a catch that would have counted as free, mm. */
  public double releaseMm() {
    return releaseMm;
  }
}
