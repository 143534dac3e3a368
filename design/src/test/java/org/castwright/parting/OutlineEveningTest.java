package org.castwright.parting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Teeth along an upright wall are evened; a round body holds the seam where it is widest. */
class OutlineEveningTest {

  private static final int POINTS = 400;

  /** Points on the outline of a round body, up and down by turns, after evening. */
  private static double[] evened(TriMesh body, double radius, double middle, double tooth) {
    BlockBox box = BlockBox.around(body.bounds(), 8, 8);
    PartingOptions o = PartingOptions.DEFAULT;
    SheetJob job =
        new SheetJob(body, box, o, new Columns(body), new DepthGrid(body, box), middle, 3);
    SheetNodes nodes = new SheetNodes();
    for (int i = 0; i < POINTS; i++) {
      double a = 2 * Math.PI * i / POINTS;
      double z = middle + (i % 2 == 0 ? tooth : -tooth);
      nodes.add(radius * Math.cos(a), radius * Math.sin(a), z, SheetNodes.SEAM);
    }
    OutlineEvening.of(nodes, job);
    return nodes.heights();
  }

  @Test
  void teethAlongAWallAreEvened() {
    double[] profile = {0, 0, 10, 0, 10, 12, 0, 12};
    TriMesh drum = FloatGrid.snap(Primitives.revolve(profile, 96));
    for (double z : evened(drum, 9.99, 7, 3)) {
      assertEquals(7, z, 0.1);
    }
  }

  @Test
  void anEvenOutlineStays() {
    double[] profile = {0, 0, 10, 0, 10, 12, 0, 12};
    TriMesh drum = FloatGrid.snap(Primitives.revolve(profile, 96));
    for (double z : evened(drum, 9.99, 11.9, 0)) {
      assertEquals(11.9, z, 1e-9);
    }
  }

  /** Within 0.03 mm of a ball's outline its surface is sqrt(2 · 5 · 0.03) mm above and below. */
  @Test
  void aBallKeepsTheSeamNearItsEquator() {
    TriMesh ball = FloatGrid.snap(Primitives.sphere(5, 128));
    double most = Math.sqrt(2 * 5 * 0.03);
    for (double z : evened(ball, 5, 3, 0)) {
      assertTrue(Math.abs(z) < most + 0.2, z + " mm from the equator");
    }
  }
}
