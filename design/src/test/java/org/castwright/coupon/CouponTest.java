package org.castwright.coupon;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.KeyShape;
import org.castwright.plan.PrintProcess;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.SolidStatus;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class CouponTest {

  private SolidKernel kernel;

  @BeforeAll
  void open() {
    kernel = new ManifoldKernel();
  }

  @AfterAll
  void close() {
    kernel.close();
  }

  @ParameterizedTest
  @EnumSource(PrintProcess.class)
  void everyBodyIsClosedInOnePieceAndLiesOnTheBed(PrintProcess process) {
    for (KeyShape shape : KeyShape.values()) {
      Coupon c = Coupon.of(CouponOptions.of(process).withKey(shape, 9), kernel);
      for (TriMesh m : List.of(c.key(), c.sockets(), c.bar(), c.plate())) {
        assertEquals(SolidStatus.OK, kernel.status(m));
        assertTrue(MeshCheck.of(m).closedManifold());
        assertEquals(1, MeshCheck.of(m).components());
        assertEquals(0, m.bounds().min().z(), 1e-9);
        assertTrue(m.bounds().size().x() <= 220 && m.bounds().size().y() <= 220, "too large");
      }
    }
  }

  /** The key goes into each socket from above and ends the gap away from its floor. */
  @ParameterizedTest
  @EnumSource(KeyShape.class)
  void theKeyFitsEachSocketWithItsGap(KeyShape shape) {
    CouponOptions o =
        CouponOptions.of(PrintProcess.FDM).withKey(shape, 10).withGapsMm(List.of(0.1, 0.3, 0.5));
    Coupon c = Coupon.of(o, kernel);
    Solid sockets = kernel.solid("sockets", c.sockets());
    double top = c.sockets().bounds().max().z();
    double[] at = centers(c.sockets(), 3);
    for (int i = 0; i < 3; i++) {
      // grip up, bump down, its foot on the sockets' face
      TriMesh turned =
          c.key()
              .toLocal(new org.castwright.geom.Frame(Vec3.X, Vec3.Y.negate(), Vec3.Z.negate()))
              .translated(new Vec3(at[i], 0, top + 8));
      Solid key = kernel.solid("key", turned);
      assertEquals(0, kernel.overlap(key, Vec3.ZERO, sockets), 0.01);
      double gap = o.gapsMm().get(i);
      // pressed down by the gap it touches, by more it cuts
      assertEquals(0, kernel.overlap(key, new Vec3(0, 0, -0.9 * gap), grown(sockets, top)), 0.2);
      assertTrue(
          kernel.overlap(key, new Vec3(0, 0, -gap - 0.5), grown(sockets, top)) > 1,
          "the socket is deeper than its gap");
      assertTrue(kernel.overlap(key, new Vec3(3 * gap + 1, 0, 0), sockets) > 1, "no flank");
    }
  }

  /** The sockets without a thin layer at the top, on which the grip would rest. */
  private Solid grown(Solid sockets, double top) {
    Solid layer =
        kernel.solid(
            "layer", Primitives.box(new Vec3(-500, -500, top - 1.2), new Vec3(500, 500, top + 1)));
    return kernel.difference("deep", sockets, List.of(layer));
  }

  private static double[] centers(TriMesh sockets, int n) {
    double length = sockets.bounds().size().x();
    double[] out = new double[n];
    for (int i = 0; i < n; i++) {
      out[i] = sockets.bounds().min().x() + (i + 0.5) * length / n;
    }
    return out;
  }

  /** Edges of the ridges stand exactly at the marks, and a bar cast in the trough comes out. */
  @Test
  void theBarsRidgesAreTheMarks() {
    CouponOptions o = CouponOptions.of(PrintProcess.FDM);
    TriMesh bar = Coupon.of(o, kernel).bar();
    for (double mark : new double[] {0, 50, 100}) {
      boolean edge = false;
      for (int v = 0; v < bar.vertexCount(); v++) {
        Vec3 p = bar.vertex(v);
        edge |= Math.abs(p.x() - mark) < 1e-5 && Math.abs(p.z() - 4.8) < 1e-5;
      }
      assertTrue(edge, "no ridge at " + mark);
    }
    double z = bar.bounds().max().z();
    Vec3 lo = bar.bounds().min();
    Vec3 hi = bar.bounds().max();
    Solid all = kernel.solid("all", Primitives.box(new Vec3(lo.x(), lo.y(), 1), hi));
    Solid trough = kernel.solid("trough", bar);
    Solid cast = kernel.difference("cast", all, List.of(trough));
    assertEquals(1, kernel.decompose(cast).size());
    for (double up : new double[] {0.1, 1, 5, z}) {
      assertEquals(0, kernel.overlap(cast, new Vec3(0, 0, up), trough), 1e-3);
    }
  }

  /** What is missing of the plate is its tray, its bores and its pits. */
  @Test
  void thePlatesBoresGoThrough() {
    CouponOptions o = CouponOptions.of(PrintProcess.RESIN);
    TriMesh plate = Coupon.of(o, kernel).plate();
    // a hole through a body makes one handle more: V - E + F = 2 - 2·holes
    int v = plate.vertexCount();
    int f = plate.triangleCount();
    assertEquals(2 - 2 * o.boresMm().size(), v - 3 * f / 2 + f);
  }

  @Test
  void laddersThatDoNotRiseAreRefused() {
    CouponOptions o = CouponOptions.of(PrintProcess.FDM);
    assertThrows(IllegalArgumentException.class, () -> o.withGapsMm(List.of(0.3, 0.2)));
    assertThrows(IllegalArgumentException.class, () -> o.withGapsMm(List.of()));
    assertThrows(IllegalArgumentException.class, () -> o.withKey(KeyShape.CONE, 40));
  }
}
