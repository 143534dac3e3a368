package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

class AirWayTest {

  @Test
  void onABallAirRisesToTheTop() {
    TriMesh ball = Primitives.sphere(20, 48);
    AirWay way = new AirWay(ball, Vec3.Z);
    var a = way.from(3, new Vec3(14.1, 0, 14.1));
    assertEquals(3, a.note());
    assertEquals(20, a.peak().get(2), 1e-9);
    assertEquals(45, a.roofDeg(), 4);
    assertEquals(-45, way.from(0, new Vec3(14.1, 0, -14.1)).roofDeg(), 4);
    // another position, another top
    assertEquals(20, new AirWay(ball, Vec3.X).from(0, new Vec3(0, 0, 20)).peak().get(0), 1e-6);
  }

  /** Of two humps the one is the peak on whose side the air is. */
  @Test
  void airStaysOnItsOwnHump() {
    TriMesh ring = Shapes.torus(30, 10, 96, 48);
    // standing on its rim, the ring's hole has a roof of its own
    AirWay way = new AirWay(ring, Vec3.X);
    double outer = way.from(0, new Vec3(38, 5, 0)).peak().get(0);
    assertEquals(40, outer, 0.1);
    double inner = way.from(0, new Vec3(-22, 0, 3)).peak().get(0);
    assertTrue(inner > -21, "air below the hole stays below it: " + inner);
  }
}
