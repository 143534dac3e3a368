package org.castwright.survey;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/** The closed loops of edges between facets that face up the pull and facets that do not. */
final class Silhouette {

  // 0.2 degrees: steeper facets count as walls, all of them to the lower side, so that a wall
  // whose facets waver by rounding makes one loop and not many
  private static final double WALL_SINE = 0.0035;

  private Silhouette() {}

  /**
   * Counts the loops. A smooth body of genus g that opens along the pull has g + 1 of them (Elber,
   * Chen, Cohen, "Mold accessibility via Gauss map analysis", JCISE 5(2), 2005); rough walls add
   * small loops.
   */
  static int loops(TriMesh mesh, FacetTable facets, int[] twin, Vec3 pull) {
    boolean[] up = new boolean[mesh.triangleCount()];
    for (int f = 0; f < up.length; f++) {
      up[f] = facets.normalDot(f, pull.x(), pull.y(), pull.z()) > WALL_SINE;
    }
    boolean[] seen = new boolean[twin.length];
    int loops = 0;
    for (int h = 0; h < twin.length; h++) {
      if (!seen[h] && up[h / 3] && !up[twin[h] / 3]) {
        loops++;
        for (int k = h; !seen[k]; k = after(k, up, twin)) {
          seen[k] = true;
        }
      }
    }
    return loops;
  }

  /** The next side of the same loop: turn about the head of {@code side} through facets up. */
  private static int after(int side, boolean[] up, int[] twin) {
    int k = EdgeTwins.next(side);
    while (up[twin[k] / 3]) {
      k = EdgeTwins.next(twin[k]);
    }
    return k;
  }
}
