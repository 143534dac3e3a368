package org.castwright.plan;

import java.util.List;
import java.util.Locale;
import org.castwright.cover.Caught;
import org.castwright.cover.CaughtRegion;
import org.castwright.cover.CoverResult;
import org.castwright.mesh.TriMesh;
import org.castwright.side.SidePieces;
import org.castwright.survey.SurveyResult;

/** The model cannot be molded in so many rigid pieces: trapped space is left. */
public final class CaughtException extends RuntimeException {

  private final transient TriMesh scaled;
  private final transient SurveyResult survey;
  private final double releaseMm;

  CaughtException(TriMesh scaled, SurveyResult survey, double releaseMm) {
    this(
        scaled,
        survey,
        releaseMm,
        String.format(
            Locale.ROOT,
            "two rigid pieces do not open: the best pull leaves %.3g mm³ of mold trapped in %d"
                + " place(s), up to %.2f mm wide; use a material that stretches, --pieces auto or a"
                + " jacket, or --allow-caught to build it all the same",
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
    this(scaled, survey, releaseMm, words(cover, most));
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
    boolean never = c.never().volumeMm3() > 0 || c.never().areaMm2() > 0;
    Caught left = never ? c.never() : c.left();
    List<CaughtRegion> regions = never ? c.neverRegions() : c.regions();
    return String.format(
        Locale.ROOT,
        "%s: %.3g mm³ of mold and %.3g mm² of surface stay caught in %d place(s)%s; use a material"
            + " that stretches or a jacket round a flexible skin",
        never
            ? "no number of rigid pieces opens it, for there is space that no direction frees"
            : "even " + c.pulls().size() + " rigid pieces do not open",
        left.volumeMm3(),
        left.areaMm2(),
        regions.size(),
        regions.isEmpty()
            ? ""
            : String.format(
                Locale.ROOT,
                ", the largest near (%.1f, %.1f, %.1f) of the scaled model",
                regions.get(0).center().x(),
                regions.get(0).center().y(),
                regions.get(0).center().z()));
  }

  CaughtException(TriMesh scaled, SurveyResult survey, double releaseMm, String message) {
    super(message);
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

  /** The width of a catch that would have counted as free, mm. */
  public double releaseMm() {
    return releaseMm;
  }
}
