package org.castwright.mold;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Primitives;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.MoldPlan;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
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
    Mold relieved = relieved(onSeam, 5).orElseThrow();
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
    Mold relieved = relieved(corner, 5).orElseThrow();
    assertEquals(mold.channels().volume(), relieved.channels().volume(), 1e-3 * BALL);
    balances(relieved);
  }

  @Test
  void tooMuchIsLeftAlone() {
    Optional<Mold> none = relieved(onSeam, 0.01);
    assertTrue(none.isEmpty());
  }

  /** Hollows of one place in both pieces. */
  private Optional<Mold> relieved(Vec3 place, double most) {
    Map<String, List<Vec3>> edges = Map.of("piece-1", List.of(place), "piece-2", List.of(place));
    return new Relief(mold, most, kernel).with(edges, Map.of(), Set.of(), Progress.NONE);
  }

  @Test
  void aHollowIsCutFromItsOwnPieceOnly() {
    Map<String, List<Vec3>> edges = Map.of("piece-2", List.of(onSeam));
    Mold relieved =
        new Relief(mold, 5, kernel).with(edges, Map.of(), Set.of(), Progress.NONE).orElseThrow();
    assertEquals(mold.pieces().get(0), relieved.pieces().get(0));
    assertTrue(relieved.pieces().get(1).mesh().volume() < mold.pieces().get(1).mesh().volume());
    balances(relieved);
  }

  /** What was asked before leaves no trace. */
  @Test
  void askedAgainIsAsAskedOnce() {
    Map<String, List<Vec3>> one = Map.of("piece-2", List.of(onSeam));
    Map<String, List<Vec3>> both = Map.of("piece-1", List.of(onSeam), "piece-2", List.of(onSeam));
    Relief relief = new Relief(mold, 5, kernel);
    assertTrue(relief.with(one, Map.of(), Set.of(), Progress.NONE).isPresent());
    Mold again = relief.with(both, Map.of(), Set.of(), Progress.NONE).orElseThrow();
    Mold once = relieved(onSeam, 5).orElseThrow();
    for (int i = 0; i < once.pieces().size(); i++) {
      assertArrayEquals(once.pieces().get(i).mesh().xyz(), again.pieces().get(i).mesh().xyz());
    }
    assertArrayEquals(once.channels().xyz(), again.channels().xyz());
    assertEquals(once.warnings(), again.warnings());
  }

  /**
   * Two small heads on stems, each holding (1.1² - 0.3²) · 0.5 = 0.56 mm³ of the piece over them.
   */
  @Test
  void lipsAreCutBackUntilLittleEnoughIsHeld() {
    double head = 0.56;
    Mold held = withHeads();
    assertEquals(2 * head, caught(held), 0.05);
    Mold relieved = cutBack(held, 1).orElseThrow();
    assertEquals(head, caught(relieved), 0.03);
    double taken = pieces(held) - pieces(relieved);
    assertEquals(head, taken, 0.05);
    assertEquals(taken, relieved.channels().volume() - held.channels().volume(), 1e-3);
    balances(relieved);
    assertTrue(cutBack(held, 0.5).isEmpty(), "more nubs than may be");
    assertTrue(cutBack(held, 5).isEmpty(), "nothing to do");
  }

  private Optional<Mold> cutBack(Mold held, double most) {
    return new Relief(held, most, kernel)
        .with(Map.of(), Map.of(), Set.of("piece-1"), Progress.NONE);
  }

  /** What piece 1 shares with the casting after half a millimeter. */
  private double caught(Mold m) {
    Solid piece = kernel.solid("piece", m.pieces().get(0).mesh());
    return kernel.overlap(
        piece, m.pieces().get(0).pull().times(0.5), kernel.solid("casting", m.casting()));
  }

  private Mold withHeads() {
    Solid casting = kernel.solid("casting", mold.casting());
    // the disc is 8 (1 - s²) high at s of its radius of 30, scaled for shrink
    double scale = mold.plan().frame().scale().x();
    double top = mold.casting().bounds().max().z() - 8 / scale * (4.0 / 30) * (4.0 / 30);
    List<Solid> all = new ArrayList<>(List.of(casting));
    for (double x : new double[] {-4, 4}) {
      Vec3 at = new Vec3(x, 0, top);
      all.add(box(at, 0.3, -2, 0.7));
      all.add(box(at, 1.1, 0.5, 1));
    }
    Solid headed = kernel.union("headed", all);
    Piece one = mold.pieces().get(0);
    Solid less = kernel.difference("piece-1", kernel.solid("piece-1", one.mesh()), List.of(headed));
    Volumes v = mold.volumes();
    List<Piece> pieces =
        List.of(Piece.of(1, one.pull(), FloatGrid.snap(less.mesh())), mold.pieces().get(1));
    return new Mold(
        mold.plan(),
        pieces,
        FloatGrid.snap(headed.mesh()),
        mold.channels(),
        new Volumes(v.block(), headed.volume(), v.channels(), v.keyClearance(), v.features()),
        mold.warnings());
  }

  private Solid box(Vec3 at, double side, double from, double to) {
    Vec3 lo = at.plus(new Vec3(-side / 2, -side / 2, from));
    return kernel.solid("box", Primitives.box(lo, lo.plus(new Vec3(side, side, to - from))));
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
