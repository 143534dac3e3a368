package org.castwright.mold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.Channel;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.MoldPlan;
import org.castwright.plan.Openings;
import org.castwright.plan.Pour;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

/** Gate and vents go where they are asked for, as near as they can be joined. */
class OpeningsTest {

  private static final TriMesh EGG = Shapes.ellipsoid(24, 17, 11, 32);

  private static MoldPlan plan(Openings o, Pour pour) {
    try (SolidKernel kernel = new ManifoldKernel()) {
      MoldOptions options = MoldOptions.DEFAULT.with().pull(Vec3.Z).pour(pour).openings(o).build();
      MoldPlan plan = MoldPlan.of(EGG, options, kernel, Progress.NONE);
      Mold mold = Mold.build(plan, kernel, Progress.NONE);
      double gap =
          mold.volumes().block() - mold.pieces().stream().mapToDouble(q -> q.mesh().volume()).sum();
      assertTrue(gap > EGG.volume(), "the cavity is not there");
      return plan;
    }
  }

  private static Vec3 inModel(MoldPlan plan, Channel c) {
    return plan.frame().pointToModel(c.inner());
  }

  @Test
  void aGateGoesToThePlaceAskedFor() {
    // on the waist of the egg, a quarter of the way round from the top
    MoldPlan free = plan(Openings.BY_RULE, Pour.SEAM);
    Vec3 top = inModel(free, free.pour().channels().get(0));
    Vec3 asked = new Vec3(24 * 0.5, -17 * Math.sqrt(0.75), 0);
    if (asked.minus(top).length() < 8) {
      asked = new Vec3(-24 * 0.5, 17 * Math.sqrt(0.75), 0);
    }
    MoldPlan plan = plan(Openings.BY_RULE.withGateAt(asked), Pour.SEAM);
    Channel gate = plan.pour().channels().get(0);
    assertEquals(Channel.Kind.GATE, gate.kind());
    double off = inModel(plan, gate).minus(asked).length();
    // the axis starts a bore's radius inside
    assertTrue(off < gate.boreMm(), "off by " + off);
    // and the top, which the gate has left, has a vent
    assertTrue(
        plan.pour().channels().stream()
            .anyMatch(
                c -> c.kind() == Channel.Kind.VENT && inModel(plan, c).minus(top).length() < 8));
  }

  @Test
  void aVentIsAddedWhereAsked() {
    MoldPlan free = plan(Openings.BY_RULE, Pour.SEAM);
    Vec3 top = inModel(free, free.pour().channels().get(0));
    Vec3 asked = new Vec3(24 * Math.sqrt(0.5) * Math.signum(top.x() + 1e-3), 0, 0);
    asked = new Vec3(asked.x(), 17 * Math.sqrt(0.5) * Math.signum(top.y() + 1e-3), 0);
    MoldPlan plan = plan(Openings.BY_RULE.withVentsAt(List.of(asked)), Pour.SEAM);
    // gate, the vent asked for; a vent beside the gate only if that one is far below it
    assertTrue(plan.pour().channels().size() >= 2);
    Channel made = plan.pour().channels().get(1);
    assertEquals(Channel.Kind.VENT, made.kind());
    assertTrue(inModel(plan, made).minus(asked).length() < 4, made.toString());
  }

  @Test
  void onALyingMoldThePlaceIsSeenFromAbove() {
    Vec3 asked = new Vec3(9, -6, 30);
    MoldPlan plan = plan(Openings.BY_RULE.withGateAt(asked), Pour.PULL);
    Vec3 gate = inModel(plan, plan.pour().channels().get(0));
    assertEquals(0, Math.hypot(gate.x() - 9, gate.y() + 6), 0.05);
  }

  @Test
  void aWiderBoreIsMade() {
    MoldPlan usual = plan(Openings.BY_RULE, Pour.SEAM);
    MoldPlan thin = plan(Openings.BY_RULE.withGateMm(4).withVentMm(1), Pour.SEAM);
    assertTrue(usual.pour().channels().get(0).boreMm() > 4.5);
    assertEquals(4, thin.pour().channels().get(0).boreMm(), 1e-9);
    // more than the fifth of the casting that the rule allows
    MoldPlan wide = plan(Openings.BY_RULE.withGateMm(12), Pour.SEAM);
    assertEquals(12, wide.pour().channels().get(0).boreMm(), 1e-9);
  }

  @Test
  void aPlaceWithNoWayOutIsSaid() {
    // straight above the gate there is no room for a vent
    MoldPlan free = plan(Openings.BY_RULE, Pour.SEAM);
    Vec3 top = inModel(free, free.pour().channels().get(0));
    MoldPlan plan = plan(Openings.BY_RULE.withVentsAt(List.of(top, top, top)), Pour.SEAM);
    assertTrue(
        plan.warnings().stream().anyMatch(w -> w.contains("asked for") && w.contains("off.")),
        plan.warnings().toString());
  }

  @Test
  void impossibleBoresAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Openings(null, List.of(), null, 1, 0));
    assertThrows(IllegalArgumentException.class, () -> new Openings(null, null, null, 0, 21));
  }
}
