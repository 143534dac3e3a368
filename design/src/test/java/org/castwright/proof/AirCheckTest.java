package org.castwright.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** A brick 40 x 20 x 10 mm, filled through a gate in a corner of its roof. */
class AirCheckTest {

  private static final TriMesh CASTING = box(0, 0, 0, 40, 20, 10);
  private static final TriMesh BLOCK = box(-10, -10, -10, 50, 30, 25);

  private static TriMesh box(double x0, double y0, double z0, double x1, double y1, double z1) {
    return Primitives.box(new Vec3(x0, y0, z0), new Vec3(x1, y1, z1));
  }

  private static TriMesh both(TriMesh a, TriMesh b) {
    MeshBuilder m = new MeshBuilder();
    for (TriMesh t : List.of(a, b)) {
      int first = m.vertexCount();
      for (int v = 0; v < t.vertexCount(); v++) {
        m.vertex(t.vertex(v).x(), t.vertex(v).y(), t.vertex(v).z());
      }
      for (int i = 0; i < t.tri().length; i += 3) {
        m.triangle(first + t.tri()[i], first + t.tri()[i + 1], first + t.tri()[i + 2]);
      }
    }
    return m.build();
  }

  private static List<ProofCheck> checks(TriMesh channels, Vec3 up) {
    return checks(channels, up, ProofLimits.DEFAULT);
  }

  private static List<ProofCheck> checks(TriMesh channels, Vec3 up, ProofLimits limits) {
    ProofInput.Piece piece = new ProofInput.Piece("p", BLOCK, Vec3.Z, BLOCK);
    return AirCheck.of(
        new ProofInput(
            BLOCK, CASTING, channels, List.of(piece), List.of(), List.of(), List.of(), limits, up));
  }

  @Test
  void aLevelRoofWithAGatePasses() {
    List<ProofCheck> c = checks(box(2, 8, 10, 6, 12, 25), Vec3.Z);
    assertTrue(c.get(0).passed() && c.get(1).passed(), c.toString());
    assertEquals(0, c.get(0).value());
  }

  @Test
  void tiltedAwayFromTheGateTheRoofShutsAirIn() {
    // a slope of 1:4 from the gate's near edge at x = 6 to x = 40: 34 long, 8.5 high at the end
    List<ProofCheck> c = checks(box(2, 8, 10, 6, 12, 25), new Vec3(0.25, 0, 1));
    assertFalse(c.get(0).passed(), c.toString());
    assertEquals(34 * 8.5 / 2 * 20, c.get(0).value(), 1e-6);
    assertEquals(20, c.get(0).limit(), 1e-9);
    assertTrue(c.get(0).words().contains("(40.00,"), c.get(0).words());
  }

  @Test
  void aChannelThatBreaksOutOfTheSideFails() {
    TriMesh side = box(40, 8, 4, 50, 12, 7);
    List<ProofCheck> c = checks(both(box(2, 8, 10, 6, 12, 25), side), Vec3.Z);
    assertTrue(c.get(0).passed());
    assertFalse(c.get(1).passed(), c.toString());
    assertEquals(6, c.get(1).value(), 1e-9);
    ProofLimits caught = ProofLimits.DEFAULT.withAllowCaught(true);
    ProofCheck forgiven = checks(both(box(2, 8, 10, 6, 12, 25), side), Vec3.Z, caught).get(1);
    assertTrue(forgiven.passed() && forgiven.words().contains("recorded only"), forgiven.words());
  }
}
