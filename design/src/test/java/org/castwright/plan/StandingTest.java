package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.side.Drilled;
import org.junit.jupiter.api.Test;

/** Which way up a mold stands. */
class StandingTest {

  /** Three pulls in a plane: only along its normal do all sides of a channel come off. */
  @Test
  void threePullsInAPlaneStandOnItsNormal() {
    Vec3 up = Standing.up(Primitives.sphere(10, 24), Drilled.threeWays());
    assertEquals(1, Math.abs(up.z()), 1e-9);
  }

  /** The worst side of an upright bore lies halfway between two pulls: cos 60°. */
  @Test
  void draftOfABoreBetweenThreePulls() {
    assertEquals(0.5, Standing.leastDraft(Vec3.Z, Drilled.threeWays()), 0.01);
    assertEquals(0, Standing.leastDraft(Vec3.Y, List.of(Vec3.X, Vec3.X.negate())), 1e-9);
  }
}
