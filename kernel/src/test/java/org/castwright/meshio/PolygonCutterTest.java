package org.castwright.meshio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** A cut must keep the signed area of the outline (shoelace) and turn no triangle over. */
class PolygonCutterTest {

  private boolean clean;

  private TriMesh cut(double... uv) {
    double[] xyz = new double[uv.length / 2 * 3];
    for (int i = 0; i < uv.length / 2; i++) {
      xyz[3 * i] = uv[2 * i];
      xyz[3 * i + 1] = uv[2 * i + 1];
      // a tilted plane, so that the projection has work to do
      xyz[3 * i + 2] = 3 * uv[2 * i] - uv[2 * i + 1];
    }
    int n = uv.length / 2;
    int[] out = new int[3 * (n - 2)];
    clean = new PolygonCutter(xyz).cut(IntStream.range(0, n).toArray(), 0, n, out, 0);
    return new TriMesh(xyz, out);
  }

  private static double shoelace(double... uv) {
    double sum = 0;
    int n = uv.length / 2;
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      sum += uv[2 * i] * uv[2 * j + 1] - uv[2 * j] * uv[2 * i + 1];
    }
    return sum / 2;
  }

  private void check(double... uv) {
    TriMesh m = cut(uv);
    double sign = Math.signum(shoelace(uv));
    double area = 0;
    for (int f = 0; f < m.triangleCount(); f++) {
      Vec3 a = m.areaVector(f);
      assertTrue(sign * a.z() >= -1e-9, "triangle " + f + " is turned over");
      area += a.z();
    }
    assertEquals(shoelace(uv), area, 1e-9);
    assertTrue(clean);
  }

  @Test
  void convexConcaveAndTurnedRound() {
    check(0, 0, 2, 0, 2, 2, 0, 2);
    check(0, 2, 2, 2, 2, 0, 0, 0);
    // an L, an arrow whose fan from the first corner would fold, a comb
    check(0, 0, 2, 0, 2, 1, 1, 1, 1, 2, 0, 2);
    check(2, 1, 0, 2, 1, 1, 0, 0);
    check(0, 0, 7, 0, 7, 3, 6, 3, 6, 1, 5, 1, 5, 3, 4, 3, 4, 1, 3, 1, 3, 3, 0, 3);
  }

  @Test
  void cornersOnAStraightLine() {
    check(0, 0, 1, 0, 2, 0, 2, 1, 2, 2, 1, 2, 0, 2, 0, 1);
  }

  @Test
  void aHoleReachedThroughASlit() {
    check(0, 0, 4, 0, 4, 4, 0, 4, 0, 0, 1, 1, 1, 3, 3, 3, 3, 1, 1, 1);
  }

  @Test
  void seededStars() {
    SplittableRandom random = new SplittableRandom(77);
    for (int run = 0; run < 200; run++) {
      int n = random.nextInt(4, 40);
      double[] uv = new double[2 * n];
      for (int i = 0; i < n; i++) {
        double r = random.nextDouble(0.2, 1);
        uv[2 * i] = r * Math.cos(2 * Math.PI * i / n);
        uv[2 * i + 1] = r * Math.sin(2 * Math.PI * i / n);
      }
      check(uv);
    }
  }

  @Test
  void crossedOutlinesAreToldApart() {
    assertEquals(2, cut(0, 0, 2, 2, 2, 0, 0, 2.5).triangleCount());
    assertFalse(clean);
    assertEquals(3, cut(0, 0, 0, 0, 0, 0, 0, 0, 0, 0).triangleCount());
    assertFalse(clean);
  }
}
