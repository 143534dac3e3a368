package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.mesh.Shapes;
import org.castwright.plan.Channel;
import org.castwright.plan.Key;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.MoldPlan;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

/** Sizes of a table-top mold for 100 mm of plaster: common practice, no source. */
class TableTopTest {

  private static final MoldPlan PLAN =
      MoldPlan.of(
          Shapes.ellipsoid(50, 35, 25, Workshop.SIDES),
          MoldOptions.DEFAULT.with().material("plaster-pottery").build(),
          Workshop.KERNEL,
          Progress.NONE);

  /** A gate of 10 mm give or take 5, its mouth 18 give or take 8; common practice, no source. */
  @Test
  void gate() {
    Channel gate = PLAN.pour().channels().get(0);
    assertEquals(Channel.Kind.GATE, gate.kind());
    assertEquals(10, gate.boreMm(), 5);
    assertEquals(18, gate.mouthMm(), 8);
    assertTrue(gate.mouthMm() > gate.boreMm());
  }

  /**
   * Three keys or more, 6 to 12 mm across, half as high as wide, cones of 10 to 30° of draft, not
   * less than one diameter apart; common practice, no source.
   */
  @Test
  void keys() {
    assertTrue(PLAN.keys().size() >= 3);
    assertTrue(Key.DRAFT_DEG >= 10 && Key.DRAFT_DEG <= 30);
    for (Key k : PLAN.keys()) {
      double across = 2 * k.radius();
      assertTrue(across >= 6 && across <= 12, across + " mm");
      assertEquals(across / 2, k.height(), 0.1 * across);
      for (Key other : PLAN.keys()) {
        double apart = other.center().minus(k.center()).length();
        assertTrue(other.equals(k) || apart >= 2 * across, apart + " mm apart");
      }
    }
  }

  /** A printed wall of 3 to 8 mm between cavity and outside; common practice, no source. */
  @Test
  void wall() {
    assertTrue(PLAN.block().wallMm() >= 3 && PLAN.block().wallMm() <= 8);
    assertTrue(PLAN.casting().bounds().min().z() - PLAN.block().box().z0() >= 3);
    assertTrue(PLAN.block().box().z1() - PLAN.casting().bounds().max().z() >= 3);
  }
}
