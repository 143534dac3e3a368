package org.castwright.plan;

import java.util.Locale;
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

  private CaughtException(TriMesh scaled, SurveyResult survey, double releaseMm, String message) {
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
