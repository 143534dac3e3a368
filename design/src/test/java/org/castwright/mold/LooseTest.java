package org.castwright.mold;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

/**
 * A casting in the middle, piece 1 over it, piece 2 under it, and a chip of piece 2 beside the
 * casting that hangs on piece 1 only.
 */
class LooseTest {

  private static final SolidKernel KERNEL = new ManifoldKernel();
  private static final List<Vec3> PULLS = List.of(Vec3.Z, Vec3.Z.negate());

  private static Solid box(String name, Vec3 lo, Vec3 hi) {
    return KERNEL.solid(name, Primitives.box(lo, hi));
  }

  private static final Solid OVER = box("piece-1", new Vec3(-10, -10, 0), new Vec3(10, 10, 10));
  private static final Solid UNDER = box("piece-2", new Vec3(-10, -10, -20), new Vec3(10, 10, -10));
  private static final Solid CHIP = box("chip", new Vec3(6, 6, -2), new Vec3(8, 8, 0));

  private static List<Solid> handed(Solid casting) {
    Solid two = KERNEL.union("piece-2", List.of(UNDER, CHIP));
    return Loose.handed(List.of(OVER, two), PULLS, List.of(casting), KERNEL);
  }

  @Test
  void aChipGoesToThePieceItHangsOn() {
    List<Solid> handed = handed(box("casting", new Vec3(-5, -5, -10), new Vec3(5, 5, 0)));
    assertEquals(OVER.volume() + CHIP.volume(), handed.get(0).volume(), 1e-6);
    assertEquals(UNDER.volume(), handed.get(1).volume(), 1e-6);
  }

  /** A casting that reaches over the chip holds it: it stays where it was. */
  @Test
  void notWhereItCouldNotLeave() {
    Solid hook = box("casting", new Vec3(-5, -5, -10), new Vec3(5, 5, 0));
    Solid arm = box("arm", new Vec3(4, 4, 0), new Vec3(9, 9, 1));
    List<Solid> handed = handed(KERNEL.union("casting", List.of(hook, arm)));
    assertEquals(OVER.volume(), handed.get(0).volume(), 1e-6);
    assertEquals(UNDER.volume() + CHIP.volume(), handed.get(1).volume(), 1e-6);
  }

  /** A second chip hovers under the first, clear of both pieces: only the first is handed on. */
  @Test
  void whatHoldsToNoOtherPieceStays() {
    Solid hovers = box("hovers", new Vec3(6, 6, -6), new Vec3(8, 8, -4));
    Solid two = KERNEL.union("piece-2", List.of(UNDER, CHIP, hovers));
    Solid casting = box("casting", new Vec3(-5, -5, -10), new Vec3(5, 5, 0));
    List<Solid> handed = Loose.handed(List.of(OVER, two), PULLS, List.of(casting), KERNEL);
    assertEquals(OVER.volume() + CHIP.volume(), handed.get(0).volume(), 1e-6);
    assertEquals(1, KERNEL.decompose(handed.get(0)).size());
    assertEquals(UNDER.volume() + hovers.volume(), handed.get(1).volume(), 1e-6);
  }
}
