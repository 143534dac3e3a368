package org.castwright.repair;

import java.util.List;
import org.castwright.mesh.TriMesh;

/**
 * A model made ready for the solid kernel.
 *
 * @param mesh closed, oriented outward, manifold, of positive volume; possibly several shells, none
 *     of which overlap. The very mesh that came in when it needed nothing
 * @param steps what was done, in order; empty when nothing was
 * @param voids the enclosed voids that were filled
 * @param before the state of the model as it came
 */
public record RepairResult(
    TriMesh mesh, List<HealingStep> steps, List<EnclosedVoid> voids, MeshHealth before) {

  public RepairResult {
    steps = List.copyOf(steps);
    voids = List.copyOf(voids);
  }
}
