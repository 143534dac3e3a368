package org.castwright.pipeline;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.castwright.cover.CoverResult;
import org.castwright.repair.MeshHealth;
import org.castwright.survey.SurveyResult;

/**
 * What {@code look --json} prints.
 *
 * @param input the file and what healing did
 * @param health of the healed model
 * @param survey how it opens in two
 * @param cover the fewest pulls that open it; null when they were not asked for
 * @param warnings sentences for the maker
 */
public record LookReport(
    String castwright,
    Report.Input input,
    Health health,
    Report.SurveyInfo survey,
    @JsonInclude(JsonInclude.Include.NON_NULL) CoverInfo cover,
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
   * @param cover the fewest pulls, or null
   */
  public static LookReport of(
      Model model, SurveyResult survey, double releaseMm, CoverResult cover) {
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
        cover == null ? null : CoverInfo.of(cover),
        model.warnings());
  }
}
