package org.castwright.division;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.seams.Freedom;
import org.castwright.seams.ShadowFreedom;
import org.junit.jupiter.api.Test;

/** A cone: its flank faces up, so a pull down rubs on it though cells beside it are free. */
class RubsTest {

  private static final List<Vec3> PULLS = List.of(Vec3.Z, Vec3.Z.negate());

  @Test
  void theFlankOfAConeRubsOnThePullDown() {
    TriMesh cone = Primitives.revolve(new double[] {0, -10, 20, -10, 0, 30}, 64);
    Cells cells = new Cells(cone, BlockBox.around(cone.bounds(), 8, 8).mesh().bounds(), 1);
    Freedom exact = ShadowFreedom.of(cone, PULLS, 0.05, 2000);
    Rubs rubs = new Rubs(cells, cone, exact);
    int onFlank = beside(cells, new Vec3(10.8, 0, 11));
    int underFoot = beside(cells, new Vec3(3, 3, -10.7));
    int far = beside(cells, new Vec3(24, 24, 20));
    assertEquals(0b01, rubs.without(onFlank));
    assertEquals(0b10, rubs.without(underFoot));
    assertEquals(0b11, rubs.without(far));
  }

  private static int beside(Cells cells, Vec3 p) {
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int c = 0; c < cells.size(); c++) {
      double d = new Vec3(cells.x(c), cells.y(c), cells.z(c)).minus(p).length();
      if (!cells.solid[c] && d < least) {
        least = d;
        best = c;
      }
    }
    return best;
  }
}
