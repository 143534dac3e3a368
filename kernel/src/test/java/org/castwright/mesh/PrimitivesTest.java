package org.castwright.mesh;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.castwright.geom.Vec3;
import org.junit.jupiter.api.Test;

/** Volumes of the simple shapes against their closed forms; polygons approach circles as 1/n². */
class PrimitivesTest {

  @Test
  void boxIsExact() {
    TriMesh m = Primitives.box(new Vec3(1, 2, 3), new Vec3(4, 6, 8));
    assertEquals(60, m.volume(), 1e-12);
    assertEquals(2 * (12 + 15 + 20), m.area(), 1e-12);
  }

  @Test
  void pappusTorus() {
    // Pappus: V = 2 pi^2 R r^2, A = 4 pi^2 R r (trade tables D7.1: R 3, r 1 gives 59.218, 118.435)
    TriMesh m = Shapes.torus(3, 1, 400, 200);
    assertEquals(59.218, m.volume(), 59.218 * 3e-4);
    assertEquals(118.435, m.area(), 118.435 * 3e-4);
  }

  @Test
  void coneHemisphereEllipsoid() {
    // closed forms: cone r 3 h 4 37.699; sphere r 2 33.510; ellipsoid 30, 20, 10 25132.7
    assertEquals(37.699, Shapes.cone(3, 4, 400).volume(), 0.004);
    assertEquals(33.510, Shapes.sphere(2, 400).volume(), 0.01);
    assertEquals(25132.7, Shapes.ellipsoid(30, 20, 10, 400).volume(), 6);
  }
}
