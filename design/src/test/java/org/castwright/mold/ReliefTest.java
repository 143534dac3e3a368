package org.castwright.mold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.MoldPlan;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Hollows at places on the seam, and the balance of what fills the block with them. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReliefTest {

  /** Volume of a ball of 0.5 mm, mm³; the hollow is a polyhedron inside it. */
  private static final double BALL = 4.0 / 3 * Math.PI * 0.125;

  private final SolidKernel kernel = new ManifoldKernel();
  private Mold mold;
  private Vec3 onSeam;

  @BeforeAll
  void build() {
    MoldPlan plan = MoldPlan.of(Wavy.disc(30, 4), MoldOptions.DEFAULT, kernel, Progress.NONE);
    mold = Mold.build(plan, kernel, Progress.NONE);
    double[] line = plan.seam().lines().get(0);
    int far = 0;
    for (int i = 0; i < line.length; i += 3) {
      far = line[i + 1] < line[far + 1] ? i : far;
    }
    onSeam = new Vec3(line[far], line[far + 1], line[far + 2]);
  }

  @AfterAll
  void close() throws Exception {
    kernel.close();
  }

  @Test
  void aHollowOnTheSeamIsFilledByTheCasting() {
    Mold relieved = Relief.of(mold, List.of(onSeam), 5, kernel, Progress.NONE).orElseThrow();
    double taken = pieces(mold) - pieces(relieved);
    assertTrue(taken > 0.2 * BALL && taken < BALL, "taken " + taken);
    double nub = relieved.channels().volume() - mold.channels().volume();
    assertEquals(taken, nub, 0.02 * BALL);
    for (Piece p : relieved.pieces()) {
      assertTrue(MeshCheck.of(p.mesh()).closedManifold(), p.name());
    }
    balances(relieved);
    assertEquals(mold.warnings().size() + 1, relieved.warnings().size());
  }

  @Test
  void aHollowAwayFromTheCavityStaysEmpty() {
    Vec3 corner = mold.plan().block().box().mesh().bounds().max();
    Mold relieved = Relief.of(mold, List.of(corner), 5, kernel, Progress.NONE).orElseThrow();
    assertEquals(mold.channels().volume(), relieved.channels().volume(), 1e-3 * BALL);
    balances(relieved);
  }

  @Test
  void tooMuchIsLeftAlone() {
    Optional<Mold> none = Relief.of(mold, List.of(onSeam), 0.01, kernel, Progress.NONE);
    assertTrue(none.isEmpty());
  }

  private static double pieces(Mold m) {
    return m.pieces().stream().mapToDouble(p -> p.mesh().volume()).sum();
  }

  private static void balances(Mold m) {
    Volumes v = m.volumes();
    double sum = pieces(m) + v.casting() + v.channels() + v.keyClearance() + v.features();
    assertEquals(v.block(), sum, 1e-6 * v.block());
  }
}
