package org.castwright.mold;

import java.util.List;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.MoldPlan;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;

/**
 * A mold as solids.
 *
 * @param plan it was cut by
 * @param pieces in the order they are taken off
 * @param casting the cavity's body, mold frame; its facets may be split along the seam
 * @param channels what cast material fills of gate and vents; may be empty
 * @param volumes for the balance
 * @param warnings the plan's and what was met while cutting
 */
public record Mold(
    MoldPlan plan,
    List<Piece> pieces,
    TriMesh casting,
    TriMesh channels,
    Volumes volumes,
    List<String> warnings) {

  /**
   * Cuts the solids.
   *
   * @throws org.castwright.solid.SolidException if the kernel cannot give a closed body
   */
  public static Mold build(MoldPlan plan, SolidKernel kernel, Progress progress) {
    return new MoldCutter(plan, kernel, progress).cut();
  }
}
