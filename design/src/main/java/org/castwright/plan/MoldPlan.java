package org.castwright.plan;

import java.util.List;
import org.castwright.cover.CoverResult;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import org.castwright.stretch.StretchResult;
import org.castwright.survey.SurveyResult;

/**
 * A mold decided but not yet cut. Everything geometric is in the mold frame.
 *
 * @param options as asked
 * @param material looked up
 * @param survey how the scaled model opens, in the model's frame
 * @param cover the fewest pulls that open it, in the scaled model's frame; null if two pieces were
 *     asked for
 * @param stretch the caught places that two pieces pass by stretching, in the scaled model's frame;
 *     null if nothing has to stretch
 * @param frame from the model's frame to the mold frame
 * @param casting what the cavity will be: the model scaled for shrink
 * @param block the outside
 * @param parted the casting with the facets the pieces have along the seam
 * @param pieces uncut, in the order they leave
 * @param seam where it runs
 * @param pour gate and vents
 * @param keys each on one piece, with a socket in another
 * @param features closing, pry slots, marks
 * @param warnings sentences for the job sheet
 */
public record MoldPlan(
    MoldOptions options,
    Material material,
    SurveyResult survey,
    CoverResult cover,
    StretchResult stretch,
    MoldFrame frame,
    TriMesh casting,
    BlockPlan block,
    TriMesh parted,
    List<RawPiece> pieces,
    SeamRun seam,
    PourPlan pour,
    List<Key> keys,
    List<Feature> features,
    List<String> warnings) {

  /** Pull of the first main piece in the mold frame; the second leaves the other way. */
  public static final Vec3 PULL = Vec3.Z;

  /**
   * Plans a mold.
   *
   * @param model closed, oriented, manifold, in millimeters, unscaled
   * @throws CaughtException if two rigid pieces cannot release it and the options do not allow that
   * @throws IllegalArgumentException if an option does not hold, e.g. an unknown material
   */
  public static MoldPlan of(
      TriMesh model, MoldOptions options, SolidKernel kernel, Progress progress) {
    return new Planner(model, options, kernel, progress).plan();
  }
}
