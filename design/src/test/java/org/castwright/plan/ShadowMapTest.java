package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.mesh.Shapes;
import org.junit.jupiter.api.Test;

class ShadowMapTest {

  @Test
  void distanceToADiscAndToARing() {
    // closed form: a disc of radius R casts a shadow at distance |p| - R
    ShadowMap disc = ShadowMap.of(Shapes.cylinder(20, 5, 256), 15, 0.25);
    assertEquals(10, disc.distanceAt(30, 0), 0.3);
    assertEquals(Math.hypot(25, 25) - 20, disc.distanceAt(25, 25), 0.3);
    assertEquals(0, disc.distanceAt(5, 5), 0);
    ShadowMap ring = ShadowMap.of(Shapes.torus(20, 5, 200, 40), 15, 0.25);
    assertEquals(15, ring.distanceAt(0, 0), 0.3);
    assertTrue(ring.distanceAt(20, 0) == 0);
  }
}
