package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

/** Where a hole to pull a piece by finds room. */
class GripsTest {

  private static final BlockBox BOX = new BlockBox(-30, -20, 30, 20, -15, 15);
  private static final BlockPlan BLOCK =
      new BlockPlan(BlockShape.BOX, Outline.rectangle(-30, -20, 30, 20), BOX, 8);

  private static TriMesh bar(double half, double from) {
    return Primitives.box(new Vec3(from, -half, -half), new Vec3(30, half, half));
  }

  private static Grips grips(Feature... there) {
    return new Grips(BLOCK, List.of(), List.of(), List.of(there));
  }

  @Test
  void aPlugIsHeldWhereItComesOut() {
    try (SolidKernel kernel = new ManifoldKernel()) {
      Grips g = grips();
      assertTrue(g.add(3, new Vec3(1, 0.2, 0).unit(), bar(6, 10)));
      Feature f = g.features().get(0);
      assertEquals("grip-3", f.name());
      assertEquals(3, f.piece());
      Box3 b = f.tools().get(0).bounds();
      assertEquals(30 - 8, b.min().x(), 1e-9);
      assertEquals(30 + FeaturePlanner.PAST, b.max().x(), 1e-9);
      assertEquals(2 * Grips.RADIUS, b.size().y(), 1e-9);
      // what is cut off the plug is the hole, whole
      Solid plug = kernel.solid("plug", bar(6, 10));
      Solid tool = kernel.solid("tool", f.tools().get(0));
      double cut = plug.volume() - kernel.difference("drilled", plug, List.of(tool)).volume();
      double hole = Math.PI * Grips.RADIUS * Grips.RADIUS * 8;
      assertEquals(hole, cut, 0.02 * hole);
    }
  }

  @Test
  void shallowWhereAPlugIsShortAndNotAtAllWhereItIsThin() {
    Grips g = grips();
    assertTrue(g.add(1, Vec3.X, bar(6, 20.5)));
    assertEquals(24, g.features().get(0).tools().get(0).bounds().min().x(), 1e-9);
    assertFalse(grips().add(1, Vec3.X, bar(6, 21.5)));
    assertFalse(grips().add(1, Vec3.X, bar(3.5, 0)));
    assertTrue(Grips.none(4).contains("Piece 4 has no room"));
  }

  @Test
  void whatIsThereIsLeftAlone() {
    TriMesh middle = Primitives.box(new Vec3(28, -20, -2), new Vec3(31, 20, 2));
    Feature groove = new Feature("band-1", Feature.Kind.BAND_GROOVE, 0, List.of(middle));
    Grips g = grips(groove);
    assertTrue(g.add(1, Vec3.X, bar(14, 0)));
    Box3 b = g.features().get(0).tools().get(0).bounds();
    assertTrue(b.min().z() >= 2 || b.max().z() <= -2, b.toString());
    // a second one keeps off the first
    assertTrue(g.add(2, Vec3.X, bar(14, 0)));
    Box3 other = g.features().get(1).tools().get(0).bounds();
    assertTrue(b.center().minus(other.center()).length() > 2 * Grips.RADIUS + 2);
    // in the groove where there is no room beside it, never through a mark
    assertTrue(grips(groove).add(1, Vec3.X, bar(5, 0)));
    Feature mark = new Feature("mark-1", Feature.Kind.MARK, 1, List.of(middle));
    assertFalse(grips(mark).add(1, Vec3.X, bar(5, 0)));
  }

  @Test
  void channelsAndKeysAreLeftAlone() {
    Vec3 foot = new Vec3(26, -25, 0);
    List<Channel.Station> stations =
        List.of(
            new Channel.Station(foot, 3, 0),
            new Channel.Station(foot.plus(new Vec3(0, 50, 0)), 3, 0));
    Channel vent =
        new Channel("vent", Channel.Kind.VENT, Channel.Course.UP, stations, foot, foot, 6, 6);
    Grips g = new Grips(BLOCK, List.of(vent), List.of(), List.of());
    assertTrue(g.add(1, Vec3.X, bar(14, 0)));
    assertTrue(Math.abs(g.features().get(0).tools().get(0).bounds().center().z()) > 3 + 1.6);
    Key key = new Key("key-1", KeyShape.CONE, new Vec3(25, 0, 0), 4, 4, 0.3);
    Grips k = new Grips(BLOCK, List.of(), List.of(key), List.of());
    assertTrue(k.add(1, Vec3.X, bar(14, 0)));
    Vec3 c = k.features().get(0).tools().get(0).bounds().center();
    assertTrue(Math.hypot(c.y(), c.z()) > 4 + 1.6, c.toString());
  }
}
