package org.castwright.survey;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/** The axes along which pulls of a model are looked for, each standing for both of its senses. */
public final class PullAxes {

  private PullAxes() {}

  /**
   * The world axes, the normals of large flat parts, the principal axes, and an even spread: clean
   * ones first, none twice.
   *
   * @param spread how many axes are spread over the half sphere, 0 for none
   * @return unit vectors
   */
  public static List<Vec3> of(TriMesh mesh, int spread) {
    FacetTable facets = new FacetTable(mesh);
    return Candidates.of(facets, new PrincipalAxes(mesh, facets), spread).stream()
        .map(Candidate::direction)
        .toList();
  }
}
