package org.castwright.pour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Thin places of bodies whose walls are known. */
class WebsTest {

  private static TriMesh plate(double thick) {
    return Primitives.box(new Vec3(-20, -15, -thick / 2), new Vec3(20, 15, thick / 2));
  }

  @Test
  void aPlateHasItsThicknessAreaAndDepthHoweverItLies() {
    for (double turn : new double[] {0, 20, 37, 60}) {
      Frame f = Frame.along(new Vec3(Math.sin(Math.toRadians(turn)), 0.4 * turn / 60, 1));
      TriMesh mesh = plate(1.2).toLocal(f.turned(turn));
      List<Webs.Web> webs = Webs.of(mesh, 2, 0.5);
      assertEquals(1, webs.size(), turn + "°");
      assertEquals(1.2, webs.get(0).thicknessMm(), 1e-6);
      assertEquals(40 * 30, webs.get(0).areaMm2(), 0.06 * 1200, turn + "°");
      assertTrue(webs.get(0).depthMm() > 22 && webs.get(0).depthMm() < 36, webs + "");
    }
  }

  @Test
  void thickBodiesWedgesAndBallsHaveNone() {
    assertEquals(List.of(), Webs.of(plate(2.5), 2, 0.5));
    assertEquals(List.of(), Webs.of(Primitives.sphere(8, 64), 2, 0.25));
    // a rim of 90° between its sides: an edge, no web
    TriMesh ring = Primitives.revolve(new double[] {30, 0, 40, 10, 30, 20}, 96);
    assertEquals(List.of(), Webs.of(ring, 2, 0.5));
  }

  @Test
  void twoFinsAreTwoWebs() {
    TriMesh one = plate(1).translated(new Vec3(0, 0, 0));
    TriMesh two = plate(0.8).translated(new Vec3(0, 0, 10));
    double[] xyz = new double[one.xyz().length + two.xyz().length];
    int[] tri = new int[one.tri().length + two.tri().length];
    System.arraycopy(one.xyz(), 0, xyz, 0, one.xyz().length);
    System.arraycopy(two.xyz(), 0, xyz, one.xyz().length, two.xyz().length);
    System.arraycopy(one.tri(), 0, tri, 0, one.tri().length);
    for (int i = 0; i < two.tri().length; i++) {
      tri[one.tri().length + i] = two.tri()[i] + one.vertexCount();
    }
    List<Webs.Web> webs = Webs.of(new TriMesh(xyz, tri), 2, 0.5);
    assertEquals(2, webs.size());
    double thin = Math.min(webs.get(0).thicknessMm(), webs.get(1).thicknessMm());
    assertEquals(0.8, thin, 1e-9);
  }

  /** Of an edge of 20° the part thinner than 0.5 mm reaches 0.25 mm / sin 10° up its middle. */
  @Test
  void ofASharpEdgeLittleIsVeryThin() {
    double half = 10 * Math.tan(Math.toRadians(10));
    double[] xyz = {
      0, -20, 0, 10, -20, -half, 10, -20, half, 0, 20, 0, 10, 20, -half, 10, 20, half
    };
    int[] tri = {0, 1, 2, 3, 5, 4, 0, 3, 4, 0, 4, 1, 0, 2, 5, 0, 5, 3, 1, 4, 5, 1, 5, 2};
    TriMesh edge = new TriMesh(xyz, tri);
    assertTrue(edge.volume() > 0);
    List<Webs.Web> webs = Webs.of(edge, 2, 0.1);
    assertEquals(1, webs.size());
    double slope = Math.cos(Math.toRadians(10));
    double expected = 40 * 0.25 / Math.sin(Math.toRadians(10)) / slope;
    assertEquals(expected, webs.get(0).areaThinner(0.5), 0.1 * expected);
    assertEquals(4 * expected, webs.get(0).areaMm2(), 0.1 * 4 * expected);
    assertEquals(webs.get(0).areaMm2(), webs.get(0).areaThinner(9), 1e-9);
  }
}
