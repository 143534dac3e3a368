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
    List<Standing.Up> ways = Standing.ways(Primitives.sphere(10, 24), Drilled.threeWays());
    Standing.Up parted = ways.get(ways.size() - 1);
    assertEquals(-1, parted.pull());
    assertEquals(1, Math.abs(parted.direction().z()), 1e-9);
  }

  /** Along a pull one piece holds all channels, which is tried first. */
  @Test
  void alongAPullFirst() {
    List<Standing.Up> ways = Standing.ways(Primitives.sphere(10, 24), Drilled.threeWays());
    assertEquals(Drilled.threeWays().get(ways.get(0).pull()), ways.get(0).direction());
  }

  /** The worst side of an upright bore lies halfway between two pulls: cos 60°. */
  @Test
  void draftOfABoreBetweenThreePulls() {
    assertEquals(0.5, Standing.leastDraft(Vec3.Z, Drilled.threeWays()), 0.01);
    assertEquals(0, Standing.leastDraft(Vec3.Y, List.of(Vec3.X, Vec3.X.negate())), 1e-9);
  }
}
