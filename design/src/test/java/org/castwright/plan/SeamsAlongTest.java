package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.division.Asked;
import org.castwright.division.Division;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.parting.BlockBox;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

/** Grooves keep off seams that run along them. */
class SeamsAlongTest {

  /** A ball in two halves that part along y: the seam runs level round the block at y = 0. */
  @Test
  void aLevelSeamCountsOnlyNearIt() {
    BlockBox box = BlockBox.around(Primitives.sphere(20, 32).bounds(), 10, 10);
    Division division =
        Division.of(
            Primitives.sphere(20, 32),
            box.mesh().bounds(),
            List.of(Vec3.Y, Vec3.Y.negate()),
            Asked.nothing(2),
            0.05,
            Progress.NONE);
    SeamsAlong along = new SeamsAlong(division, box);
    double round = 4 * 58;
    assertEquals(round, along.at(0.5), 0.25 * round);
    assertEquals(0, along.at(12), 1e-9);
    BlockPlan plan =
        new BlockPlan(
            BlockShape.BOX, Outline.rectangle(box.x0(), box.y0(), box.x1(), box.y1()), box, 8);
    BandGrooves plain = BandGrooves.of(plan);
    assertEquals(plain.strips().get(0)[0], BandGrooves.of(plan, along::at).strips().get(0)[0], 12);
    for (double[] strip : BandGrooves.of(plan, y -> Math.max(0, y + 3)).strips()) {
      assertTrue(strip[1] < plain.strips().get(1)[1], "grooves go where least is thin");
    }
  }
}
