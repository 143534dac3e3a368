package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.pipeline.Report;
import org.castwright.plan.Closing;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.Pour;
import org.junit.jupiter.api.Test;

/**
 * Handles of pieces, by V − E + F = 2 − 2 g (Euler, Poincaré), where gate and vents bore through a
 * piece, and the smallest block there is.
 */
class BoredPiecesTest {

  private static StlBytes read(Workshop.Made made, String file) {
    StlBytes s = StlBytes.of(made.files().get(file));
    s.assertClosed(file);
    return s;
  }

  /** Poured along the pull: each channel is a hole through piece 1, and none touches piece 2. */
  @Test
  void channelsAlongThePull() {
    MoldOptions lying = MoldOptions.DEFAULT.with().closing(Closing.NONE).pour(Pour.PULL).build();
    Workshop.Made made = Workshop.make(Shapes.ellipsoid(40, 28, 18, 40), lying);
    made.assertProved();
    Report r = made.result().report();
    long bores = r.channels().stream().filter(c -> c.course().equals("pull")).count();
    assertTrue(bores >= 1);
    assertEquals(2 - 2 * bores, read(made, r.pieces().get(0).file()).euler());
    assertEquals(2, read(made, r.pieces().get(1).file()).euler());
  }

  /** A box block has 12 triangles: 84 + 50 · 12 = 684 bytes, 8 - 18 + 12 = 2. */
  @Test
  void boxBlock() {
    TriMesh bar = Primitives.box(Vec3.ZERO, new Vec3(50, 30, 20));
    Workshop.Made made = Workshop.make(bar, MoldOptions.DEFAULT);
    made.assertProved();
    assertEquals(684, made.files().get("block.stl").length);
    assertEquals(2, read(made, "block.stl").euler());
  }
}
