package org.castwright.mold;

import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.TriMesh;
import org.castwright.repair.SelfCrossing;
import org.castwright.repair.ShortEdges;

/**
 * Bodies as files hold them: every coordinate a 32-bit float, and none of the splinters that
 * rounding would turn through the surface.
 */
final class Rounded {

  /** Edges shorter than some steps of the numbers in files, mm; no more than must go. */
  private static final double[] SPLINTER = {2e-5, 1e-4, 5e-4, 2e-3};

  private Rounded() {}

  /**
   * A piece of a mold, also without crumbs.
   *
   * @param fresh whether its seam runs along fresh cuts, as in a filled model: elsewhere rounding
   *     turns nothing over
   */
  static TriMesh piece(TriMesh body, boolean fresh) {
    return Crumbs.swept(fresh ? of(body) : FloatGrid.snap(body));
  }

  /** Any body. */
  static TriMesh of(TriMesh body) {
    TriMesh mesh = FloatGrid.snap(body);
    if (!crosses(mesh)) {
      return mesh;
    }
    for (double mm : SPLINTER) {
      TriMesh out = FloatGrid.snap(ShortEdges.without(body, mm));
      if (!crosses(out)) {
        return out;
      }
    }
    return mesh;
  }

  private static boolean crosses(TriMesh mesh) {
    return SelfCrossing.of(mesh).count() > 0;
  }
}
