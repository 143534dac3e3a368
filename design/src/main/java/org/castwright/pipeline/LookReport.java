package org.castwright.pipeline;

import java.util.List;
import org.castwright.repair.MeshHealth;
import org.castwright.survey.SurveyResult;

/**
 * What {@code look --json} prints.
 *
 * @param input the file and what healing did
 * @param health of the healed model
 * @param survey how it opens
 * @param warnings sentences for the maker
 */
public record LookReport(
    String castwright,
    Report.Input input,
    Health health,
    Report.SurveyInfo survey,
    List<String> warnings) {

  /** Measures of a model. */
  public record Health(
      int triangles,
      int vertices,
      int shells,
      int genus,
      int selfIntersectingPairs,
      double volumeMm3,
      double areaMm2) {}

  /**
   * Gathers a report.
   *
   * @param releaseMm release tolerance the survey was made with
   */
  public static LookReport of(Model model, SurveyResult survey, double releaseMm) {
    MeshHealth h = model.repair().before();
    return new LookReport(
        MoldJob.VERSION,
        ReportMaker.input(model),
        new Health(
            h.triangles(),
            h.vertices(),
            h.shells(),
            h.genus(),
            h.selfIntersectingPairs(),
            model.mesh().volume(),
            model.mesh().area()),
        ReportMaker.survey(survey, releaseMm),
        model.warnings());
  }
}
