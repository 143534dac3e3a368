package org.castwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Trapped space of bodies of revolution about z, whose volumes are closed forms. */
class TrappedSpaceTest {

  /** A spool: flanges of radius 20, a core of radius 10, 12 mm apart. */
  private static final TriMesh SPOOL =
      Primitives.revolve(
          new double[] {0, 0, 20, 0, 20, 4, 10, 4, 10, 16, 20, 16, 20, 20, 0, 20}, 180);

  @Test
  void aSpoolTrapsTheRingBetweenItsFlanges() {
    TrappedSpace space = TrappedSpace.of(SPOOL, 0.25, 0.05);
    double ring = Math.PI * (400 - 100) * 12;
    assertEquals(ring, space.size() * space.pointMm3(), 0.01 * ring);
    for (int i = 0; i < space.size(); i++) {
      double r = Math.hypot(space.x(i), space.y(i));
      assertTrue(r > 9.9 && r < 20.1 && space.z(i) > 4 && space.z(i) < 16);
    }
  }

  @Test
  void pointsInsideABodyAreThoseItHolds() {
    TrappedSpace space = TrappedSpace.of(SPOOL, 0.5, 0.05);
    TriMesh half = Primitives.box(new Vec3(0, -30, 7), new Vec3(30, 30, 13));
    boolean[] in = space.inside(half);
    int held = 0;
    for (int i = 0; i < in.length; i++) {
      assertEquals(space.x(i) > 0 && space.z(i) > 7 && space.z(i) < 13, in[i]);
      held += in[i] ? 1 : 0;
    }
    assertEquals(in.length / 4.0, held, 0.03 * in.length);
  }

  @Test
  void whatOpensTrapsNothing() {
    assertEquals(0, TrappedSpace.of(Primitives.sphere(10, 48), 0.2, 0.05).size());
  }

  @Test
  void gapsShallowerThanTheReleaseAreFree() {
    TriMesh slit =
        Primitives.revolve(
            new double[] {0, 0, 20, 0, 20, 4, 10, 4, 10, 4.3, 20, 4.3, 20, 8, 0, 8}, 90);
    assertTrue(TrappedSpace.of(slit, 0.5, 0.05).size() > 0);
    assertEquals(0, TrappedSpace.of(slit, 0.5, 0.35).size());
  }
}
