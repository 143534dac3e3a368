package org.castwright.parting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

class TopSheetTest {

  private static final SolidKernel KERNEL = new ManifoldKernel();
  private static final TopSheet.Need NONE = (x, y) -> Double.MAX_VALUE;

  /** A mushroom on a plate: the cap hides a ring of the plate from above. */
  private static final TriMesh MUSHROOM =
      Primitives.revolve(new double[] {0, 0, 25, 0, 25, 4, 5, 4, 5, 16, 14, 16, 14, 20, 0, 20}, 64);

  private static final BlockBox BOX = BlockBox.around(MUSHROOM.bounds(), 8, 8);

  private static TriMesh slab(TopSheet.Need need) {
    return TopSheet.slab(MUSHROOM, BOX, 2, need, PartingOptions.DEFAULT, Progress.NONE);
  }

  @Test
  void whatIsAboveTheSheetLeavesPastTheCasting() {
    TriMesh slab = slab(NONE);
    assertTrue(MeshCheck.of(slab).closedManifold());
    Solid casting = KERNEL.solid("casting", MUSHROOM);
    Solid piece = KERNEL.difference("piece", KERNEL.solid("slab", slab), List.of(casting));
    for (double t : new double[] {0.1, 1, 5, 15}) {
      // the rim of the cap is 88 mm long: a lip of 0.05 mm round it, moved by t
      double lip = 88 * 0.05 * Math.max(t, 0.05);
      double shared = KERNEL.overlap(piece, Vec3.Z.times(t), casting);
      assertTrue(shared <= lip, shared + " mm³ shared after " + t);
    }
  }

  @Test
  void theSpaceUnderTheCapIsLeftOut() {
    Solid slab = KERNEL.solid("slab", slab(NONE));
    Solid casting = KERNEL.solid("casting", MUSHROOM);
    TriMesh under = Primitives.box(new Vec3(8, -2, 6), new Vec3(12, 2, 14));
    TriMesh beside = Primitives.box(new Vec3(16, -2, 6), new Vec3(20, 2, 14));
    TriMesh over = Primitives.box(new Vec3(-3, -3, 21), new Vec3(3, 3, 24));
    assertEquals(0, KERNEL.overlap(slab, Vec3.ZERO, KERNEL.solid("under", under)), 0.5);
    assertEquals(128, KERNEL.overlap(slab, Vec3.ZERO, KERNEL.solid("beside", beside)), 0.5);
    assertEquals(108, KERNEL.overlap(slab, Vec3.ZERO, KERNEL.solid("over", over)), 0.5);
    Solid piece = KERNEL.difference("piece", slab, List.of(casting));
    // over the plate's ring beside the cap and over the cap, all of it above the casting's roof
    assertTrue(piece.volume() > 0);
  }

  @Test
  void theSheetKeepsBelowWhatIsNeededBesideTheCasting() {
    TopSheet.Need deep = (x, y) -> Math.hypot(x, y) > 25.5 && x > 20 && Math.abs(y) < 4 ? -5 : 1e9;
    TriMesh needed = Primitives.box(new Vec3(27.5, -2, -4.5), new Vec3(29.5, 2, 4));
    Solid body = KERNEL.solid("needed", needed);
    double with = KERNEL.overlap(KERNEL.solid("slab", slab(deep)), Vec3.ZERO, body);
    assertEquals(needed.volume(), with, 0.03 * needed.volume());
  }

  @Test
  void theRoofIsTheHighestSurface() {
    Roof roof = new Roof(MUSHROOM);
    assertEquals(20, roof.at(1, 2), 1e-9);
    assertEquals(20, roof.at(10, 3), 1e-9);
    assertEquals(4, roof.at(20, 3), 1e-9);
    assertEquals(Double.NEGATIVE_INFINITY, roof.at(40, 0));
  }
}
