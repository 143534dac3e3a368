package org.castwright.pipeline;

import java.util.List;
import org.castwright.blocking.BlockOut;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.plan.MoldOptions;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import org.castwright.survey.Opening;
import org.castwright.survey.Survey;
import org.castwright.survey.SurveyOptions;

/**
 * A model that is blocked out, and what is then asked of its mold: two pieces along the axis it was
 * filled for.
 */
record Filled(Model model, MoldOptions options) {

  /**
   * What may be added unasked, as a share of the casting: it is seen where it is looked for. Common
   * practice fills whatever the maker can do without; no source.
   */
  private static final double AUTO_SHARE = 0.06;

  /**
   * Fills what two pieces catch along the axis where that is least.
   *
   * @param why a sentence on why that is done unasked, or nothing
   * @return null if nothing is caught, or the filling takes more than it may
   */
  static Filled of(Model model, MoldOptions o, String why, SolidKernel kernel, Progress progress) {
    double most =
        o.blockOutMm3() > 0 ? o.blockOutMm3() : AUTO_SHARE * Math.abs(model.mesh().volume());
    SurveyOptions look =
        SurveyOptions.DEFAULT.withThreads(o.threads()).withReleaseMm(o.releaseMm());
    progress.at("survey", 0);
    Progress watch = progress.as("survey");
    Opening best =
        (o.fixedPulls().isEmpty()
                ? Survey.of(model.mesh(), look, watch)
                : Survey.along(model.mesh(), o.fixedPulls().get(0), look, watch))
            .best();
    if (best.free() || best.trappedVolume() > most) {
      return null;
    }
    BlockOut filled = BlockOut.of(model.mesh(), best.direction(), most, kernel, progress);
    if (filled == null || filled.places().isEmpty()) {
      return null;
    }
    Vec3 pull = scaled(filled.pull(), o.shrinkPercent());
    return new Filled(
        model.with(filled, why),
        o.with().pieces(2).pull(pull).pulls(List.of()).blockedOut(true).build());
  }

  /** A line of the model, in the model scaled for shrink. */
  private static Vec3 scaled(Vec3 d, Vec3 shrink) {
    return shrink == null
        ? d
        : new Vec3(
                d.x() * Material.scaleFactor(shrink.x()),
                d.y() * Material.scaleFactor(shrink.y()),
                d.z() * Material.scaleFactor(shrink.z()))
            .unit();
  }
}
