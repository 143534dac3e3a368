package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.castwright.stretch.StretchPlace;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** A bead on a neck on a foot, pulled along its axis: the mold round the neck must let it pass. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ByStretchTest {

  private static final double NECK = 5;
  private static final String GUMMY = "gelatin-gummy"; // takes 25 %, of which half is allowed

  private final SolidKernel kernel = new ManifoldKernel();

  @AfterAll
  void close() {
    kernel.close();
  }

  /** Strain by closed form: (bead − neck) / neck. */
  private static TriMesh bead(double bead) {
    return Primitives.revolve(
        new double[] {0, -4, 14, -4, 14, 0, NECK, 1, NECK, 6, bead, 8, bead, 9, 4, 12, 0, 12}, 64);
  }

  private MoldPlan plan(double bead, String material, double moldStrain, int pieces) {
    MoldOptions o =
        MoldOptions.DEFAULT
            .with()
            .pull(Vec3.Z)
            .material(material)
            .shrinkPercent(Vec3.ZERO)
            .moldStrain(moldStrain)
            .pieces(pieces)
            .build();
    return MoldPlan.of(bead(bead), o, kernel, Progress.NONE);
  }

  @Test
  void whatGivesEnoughTakesTwoPieces() {
    for (int pieces : new int[] {2, 8}) {
      MoldPlan p = plan(5.5, GUMMY, 0, pieces);
      assertEquals(2, p.pieces().size());
      assertNull(p.cover(), "no more pulls are looked for");
      assertEquals(1, p.stretch().places().size());
      StretchPlace place = p.stretch().places().get(0);
      assertEquals(0.1, place.strain(), 0.02);
      assertEquals(0.125, place.limit(), 1e-12);
      assertEquals(0.5, place.width(), 1.5 * p.stretch().resolution());
      assertTrue(p.warnings().stream().anyMatch(w -> w.contains("passes by stretching")), "said");
    }
  }

  @Test
  void whatGivesTooLittleIsCaught() {
    assertThrows(CaughtException.class, () -> plan(6, GUMMY, 0, 2));
    assertThrows(CaughtException.class, () -> plan(5.5, "plaster-pottery", 0, 2));
    assertThrows(CaughtException.class, () -> plan(5.5, "plaster-pottery", 0.15, 2));
  }

  @Test
  void theMoldMayBeTheOneThatGives() {
    MoldPlan p = plan(6, "plaster-pottery", 0.5, 2);
    assertEquals(0.2, p.stretch().places().get(0).strain(), 0.03);
    assertEquals(0.25, p.stretch().limit(), 1e-12);
  }

  @Test
  void withoutCatchNothingStretches() {
    assertNull(plan(NECK, GUMMY, 0, 2).stretch());
  }
}
