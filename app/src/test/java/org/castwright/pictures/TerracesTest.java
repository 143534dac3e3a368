package org.castwright.pictures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

class TerracesTest {

  /** A ball and a box whose corners lie on levels: same body, still closed, no facet over two. */
  @Test
  void facetsLieBetweenLevelsAndTheBodyStays() {
    Vec3 up = new Vec3(0.3, 1, -0.2).unit();
    double[] levels = {-12, -4.5, 0, 3, 10};
    for (TriMesh body :
        new TriMesh[] {
          Primitives.sphere(20, 24), Primitives.box(new Vec3(-12, -12, -12), new Vec3(10, 10, 10))
        }) {
      for (Vec3 way : new Vec3[] {up, Vec3.Y}) {
        TriMesh cut = Terraces.of(body, way, levels);
        assertEquals(body.volume(), cut.volume(), 1e-9 * body.volume());
        assertEquals(body.area(), cut.area(), 1e-9 * body.area());
        assertTrue(MeshCheck.of(cut).closedManifold());
        for (int f = 0; f < cut.triangleCount(); f++) {
          for (double level : levels) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int k = 0; k < 3; k++) {
              double h = cut.vertex(cut.tri()[3 * f + k]).dot(way) - level;
              low = Math.min(low, h);
              high = Math.max(high, h);
            }
            assertTrue(low > -1e-9 || high < 1e-9, low + " to " + high);
          }
        }
      }
    }
  }
}
