package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.material.Materials;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

/** Gate and vents straight up. */
class UprightChannelsTest {

  /** Turns what stands along z to stand along y. */
  private static final Frame UPRIGHT = new Frame(Vec3.Y, Vec3.Z, Vec3.X);

  private static final SolidKernel KERNEL = new ManifoldKernel();

  private static final GateChoice AT_TOP = new GateChoice(GateEnd.TOP, false, "");

  private static PourPlan of(TriMesh casting) {
    BlockBox box = BlockBox.around(casting.bounds(), 20, 20);
    Sizes sizes = Sizes.of(casting.bounds(), Materials.of("plaster-pottery"), MoldOptions.DEFAULT);
    return new UprightChannels(casting, box, sizes, false).plan(AT_TOP);
  }

  private static UprightChannels drawn(TriMesh casting) {
    BlockBox box = BlockBox.around(casting.bounds(), 20, 20);
    Sizes sizes = Sizes.of(casting.bounds(), Materials.of("plaster-pottery"), MoldOptions.DEFAULT);
    return new UprightChannels(casting, box, sizes, true);
  }

  /** A piece that leaves along its gate lifts off only if the gate is nowhere wider above. */
  @Test
  void aGateThatIsDrawnNarrowsUpward() {
    UprightChannels channels = drawn(Primitives.box(new Vec3(-20, -10, -15), new Vec3(20, 10, 15)));
    List<Channel.Station> s = channels.plan(AT_TOP).channels().get(0).stations();
    assertFalse(channels.caught());
    for (int i = 2; i < s.size(); i++) {
      assertTrue(s.get(i).radius() <= s.get(i - 1).radius(), "at station " + i);
    }
    assertTrue(s.get(1).radius() > s.get(s.size() - 2).radius());
  }

  /** Over a blade thinner than the gate the piece would be held under the gate's foot. */
  @Test
  void aGateWiderThanItsTopHoldsThePiece() {
    UprightChannels channels =
        drawn(Primitives.revolve(new double[] {0, -30, 30, 0, 0, 30}, 48).toLocal(UPRIGHT));
    channels.plan(AT_TOP);
    assertTrue(channels.caught());
  }

  /** Two humps: the higher one gets the gate, the other a vent, each over its top. */
  @Test
  void everyHumpHasAWayOut() {
    Solid low = KERNEL.solid("low", Primitives.sphere(15, 48).translated(new Vec3(-25, 0, 0)));
    Solid high = KERNEL.solid("high", Primitives.sphere(15, 48).translated(new Vec3(25, 8, 0)));
    Solid bar = KERNEL.solid("bar", Primitives.box(new Vec3(-25, -4, -4), new Vec3(25, 4, 4)));
    TriMesh casting = FloatGrid.snap(KERNEL.union("humps", List.of(low, high, bar)).mesh());
    PourPlan plan = of(casting);
    assertEquals(2, plan.peaks());
    assertEquals(List.of("gate", "vent-1"), plan.channels().stream().map(Channel::name).toList());
    assertEquals(25, plan.channels().get(0).inner().x(), 0.5);
    assertEquals(-25, plan.channels().get(1).inner().x(), 0.5);
  }

  /** A level top is gated in its middle, not at a corner. */
  @Test
  void aLevelTopIsGatedInTheMiddle() {
    PourPlan plan = of(Primitives.box(new Vec3(-20, -10, -15), new Vec3(20, 10, 15)));
    assertEquals(0, plan.channels().get(0).inner().x(), 0.5);
    assertEquals(0, plan.channels().get(0).inner().z(), 0.5);
  }

  /**
   * Under an overhang a bore straight up would cut through the casting: it is said, not drilled.
   */
  @Test
  void aPocketUnderTheCastingIsSaid() {
    Solid foot =
        KERNEL.solid("foot", Primitives.box(new Vec3(-20, -20, -10), new Vec3(20, -10, 10)));
    Solid post =
        KERNEL.solid("post", Primitives.box(new Vec3(-20, -20, -10), new Vec3(-12, 20, 10)));
    Solid roof = KERNEL.solid("roof", Primitives.box(new Vec3(-20, 10, -10), new Vec3(20, 20, 10)));
    Solid hump = KERNEL.solid("hump", Primitives.box(new Vec3(0, -12, -6), new Vec3(12, -4, 6)));
    TriMesh casting = FloatGrid.snap(KERNEL.union("shelf", List.of(foot, post, roof, hump)).mesh());
    PourPlan plan = of(casting);
    assertEquals(1, plan.channels().size());
    assertTrue(plan.warnings().stream().anyMatch(w -> w.contains("with the casting over it")));
  }
}
