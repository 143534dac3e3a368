package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
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

/** Gate and vents straight up from where they are asked for; shapes in the mold frame, mm. */
class AskedUprightTest {

  private static final SolidKernel KERNEL = new ManifoldKernel();

  private static final List<Vec3> FOUR = List.of(Vec3.X, Vec3.X.negate(), Vec3.Z, Vec3.Z.negate());

  private static final GateChoice AT_TOP = new GateChoice(GateEnd.TOP, false, "");

  /** Channels asked for, with how far off the gate is. */
  private record Asked(double off, PourPlan pour) {

    Channel gate() {
      return pour.channels().get(0);
    }

    boolean told(String words) {
      return pour.warnings().stream().anyMatch(w -> w.contains(words));
    }
  }

  private static Asked of(TriMesh casting, Vec3 gate, Vec3... vents) {
    BlockBox box = BlockBox.around(casting.bounds(), 20, 20);
    Sizes sizes = Sizes.of(casting.bounds(), Materials.of("plaster-pottery"), MoldOptions.DEFAULT);
    UprightChannels channels = new UprightChannels(casting, box, sizes, false);
    Releases releases = new Releases(casting, box.mesh().bounds(), FOUR, 0.05);
    double off = channels.ask(new AskedPlaces(gate, List.of(vents)), releases);
    return new Asked(off, channels.plan(AT_TOP));
  }

  private static TriMesh box(double x0, double y0, double z0, double x1, double y1, double z1) {
    return Primitives.box(new Vec3(x0, y0, z0), new Vec3(x1, y1, z1));
  }

  private static TriMesh union(TriMesh a, TriMesh b) {
    List<Solid> both = List.of(KERNEL.solid("a", a), KERNEL.solid("b", b));
    return FloatGrid.snap(KERNEL.union("both", both).mesh());
  }

  /** A step 20 mm high whose top is level, with a tower 30 mm higher at its −x end. */
  private static TriMesh step() {
    return union(box(-30, -20, -15, 30, 0, 15), box(-30, -5, -15, -10, 30, 15));
  }

  /** A wall with a foot toward +x; in the wall, over the foot, a blind hole along x or none. */
  private static TriMesh wall(boolean hole) {
    TriMesh wall = union(box(-20, -20, -25, 0, 30, 25), box(-5, -20, -25, 40, -5, 25));
    Solid bit = KERNEL.solid("bit", box(-10, 5, -5, 5, 15, 5));
    return hole
        ? FloatGrid.snap(
            KERNEL.difference("holed", KERNEL.solid("wall", wall), List.of(bit)).mesh())
        : wall;
  }

  @Test
  void aGateStandsWhereItIsAskedForAndTheTopGetsAVent() {
    Asked a = of(step(), new Vec3(12, 0, 2));
    assertEquals(0, a.off, 0.3);
    assertEquals(a.off, a.gate().inner().minus(new Vec3(12, 0, 2)).length(), 1e-9);
    assertEquals(Channel.Kind.GATE, a.gate().kind());
    assertTrue(
        a.pour.channels().stream()
            .anyMatch(c -> c.kind() == Channel.Kind.VENT && c.inner().y() > 29.9),
        "the tower has a vent");
  }

  /** Beside the tower there is no room for the bore, let alone the funnel. */
  @Test
  void nextToAWallItKeepsOffAndSaysHowFar() {
    Asked a = of(step(), new Vec3(-9, 0, 0));
    double beside = a.gate().inner().x() + 10;
    assertTrue(beside >= a.gate().boreMm() / 2 + 3 - 0.5, "material beside the bore: " + beside);
    assertTrue(a.off > 3 && a.off < 15, "off by " + a.off);
    assertTrue(a.told(String.format("joins %.1f mm off", a.off)), a.pour.warnings().toString());
  }

  @Test
  void aVentStandsWhereItIsAskedForToo() {
    Vec3 asked = new Vec3(25, 0, -10);
    Asked a = of(step(), new Vec3(8, 0, 5), asked);
    assertTrue(
        a.pour.channels().stream()
            .anyMatch(c -> c.kind() == Channel.Kind.VENT && c.inner().minus(asked).length() < 0.5),
        a.pour.channels().toString());
  }

  /** A place underneath sees no way up. */
  @Test
  void whatCannotBeIsSaid() {
    Asked a = of(step(), new Vec3(10, -20, 0), new Vec3(10, -20, 0));
    assertEquals(Double.POSITIVE_INFINITY, a.off);
    assertTrue(a.told("The vent asked for at (10.0, -20.0, 0.0)"), a.pour.warnings().toString());
    assertTrue(a.gate().inner().y() > 29.9, "the gate stands on the tower as if not asked for");
  }

  /** In front of a hole that opens along x alone a channel would lock the piece in it. */
  @Test
  void noChannelStandsInAPiecesWay() {
    Vec3 asked = new Vec3(20, -5, 0);
    assertEquals(0, of(wall(false), asked).off, 0.3);
    Asked a = of(wall(true), asked);
    double aside = Math.abs(a.gate().inner().z());
    assertTrue(aside >= 5 + a.gate().boreMm() / 2 - 1, "aside by " + aside);
    assertTrue(a.off < 15, "off by " + a.off);
  }
}
