package org.castwright.plan;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.Parting;
import org.castwright.progress.Progress;
import org.castwright.side.SidePiece;
import org.castwright.solid.SolidKernel;
import org.castwright.survey.SurveyResult;

/**
 * A mold of two main pieces and any side pieces, decided but not yet cut. Everything geometric is
 * in the mold frame.
 *
 * @param options as asked
 * @param material looked up
 * @param survey how the scaled model opens, in the model's frame
 * @param frame from the model's frame to the mold frame
 * @param casting what the cavity will be: the model scaled for shrink
 * @param block the outside
 * @param main the seam and the two main pieces, uncut
 * @param sides side pieces, in the order they leave, before the two main ones
 * @param pour gate and vents
 * @param keys on piece 2, with sockets in piece 1
 * @param features closing, pry slots, marks
 * @param warnings sentences for the job sheet
 */
public record MoldPlan(
    MoldOptions options,
    Material material,
    SurveyResult survey,
    MoldFrame frame,
    TriMesh casting,
    BlockPlan block,
    MainPieces main,
    List<SidePiece> sides,
    PourPlan pour,
    List<Key> keys,
    List<Feature> features,
    List<String> warnings) {

  /** The seam between the main pieces. */
  public Parting parting() {
    return main.parting();
  }

  /** Pull of piece 1 in the mold frame; piece 2 leaves the other way. */
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
