package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

class RoofPeaksTest {

  @Test
  void convexShapesHaveOnePeakInEveryPosition() {
    TriMesh m = Shapes.ellipsoid(30, 20, 10, 48);
    for (int axis = 0; axis < 3; axis++) {
      for (int sign = -1; sign <= 1; sign += 2) {
        var peaks = RoofPeaks.of(m, axis, sign, 0.5);
        assertEquals(1, peaks.size());
        assertEquals(sign * (axis == 0 ? 30 : axis == 1 ? 20 : 10), coordinate(peaks, axis), 0.2);
      }
    }
  }

  @Test
  void flatCeilingIsOnePeak() {
    assertEquals(1, RoofPeaks.of(Shapes.cube(10), 1, 1, 0.5).size());
  }

  @Test
  void standingTorusHasOnePeakBecauseAirClimbsRoundTheRing() {
    assertEquals(1, RoofPeaks.of(Shapes.torus(20, 5, 96, 24), 1, 1, 0.5).size());
  }

  @Test
  void lyingTorusIsOneRidge() {
    assertEquals(1, RoofPeaks.of(Shapes.torus(20, 5, 96, 24), 2, 1, 0.5).size());
  }

  @Test
  void aCupHoldsNoAirUnderItsFloor() {
    // a cup, open upward: the inner floor is a low place of the casting, its rim the only roof;
    // upside down the rim is below and the floor's outside is the only roof
    TriMesh cup = Primitives.revolve(new double[] {0, 0, 20, 0, 20, 30, 17, 30, 17, 3, 0, 3}, 64);
    assertEquals(1, RoofPeaks.of(cup, 2, 1, 0.5).size());
    assertEquals(1, RoofPeaks.of(cup, 2, -1, 0.5).size());
  }

  @Test
  void twoHornsAreTwoPeaksAndTheLowerOnePersistsToTheSaddle() {
    // heights 10 and 8 over a saddle at 3
    TriMesh ridge = ridge(new double[] {0, 10, 3, 8, 0});
    var peaks = RoofPeaks.of(ridge, 2, 1, 0.5);
    assertEquals(2, peaks.size());
    assertEquals(10, peaks.get(0).point().z(), 1e-9);
    assertEquals(8, peaks.get(1).point().z(), 1e-9);
    assertEquals(5, peaks.get(1).persistence(), 1e-9);
  }

  private static double coordinate(java.util.List<RoofPeaks.Peak> peaks, int axis) {
    var p = peaks.get(0).point();
    return axis == 0 ? p.x() : axis == 1 ? p.y() : p.z();
  }

  /** A closed prism 4 mm wide whose roof follows the heights given, 10 mm apart. */
  private static TriMesh ridge(double[] heights) {
    MeshBuilder m = new MeshBuilder();
    int n = heights.length;
    for (int side = 0; side < 2; side++) {
      for (int i = 0; i < n; i++) {
        m.vertex(10 * i, 4 * side, -5);
        m.vertex(10 * i, 4 * side, heights[i]);
      }
    }
    int far = 2 * n;
    for (int i = 0; i + 1 < n; i++) {
      int a = 2 * i;
      quad(m, a, a + 2, a + 3, a + 1);
      quad(m, far + a, far + a + 1, far + a + 3, far + a + 2);
      quad(m, a + 1, a + 3, far + a + 3, far + a + 1);
      quad(m, a, far + a, far + a + 2, a + 2);
    }
    quad(m, 0, 1, far + 1, far);
    int e = 2 * n - 2;
    quad(m, e, far + e, far + e + 1, e + 1);
    return m.build();
  }

  private static void quad(MeshBuilder m, int a, int b, int c, int d) {
    m.triangle(a, b, c);
    m.triangle(a, c, d);
  }
}
