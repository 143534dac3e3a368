package org.castwright.division;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Fewer triangles, no cracks. */
class SheetMeshTest {

  private static final int NX = 2 * SheetMesh.TILE + 1;
  private static final int NY = 3 * SheetMesh.TILE + 1;

  private static double[] all(double play) {
    double[] p = new double[NX * NY];
    Arrays.fill(p, play);
    return p;
  }

  @Test
  void aPlaneNeedsTwoTrianglesATile() {
    double[] h = new double[NX * NY];
    for (int o = 0; o < h.length; o++) {
      h[o] = 0.25 * (o % NX) - 0.5 * Math.floorDiv(o, NX);
    }
    assertEquals(2 * 6 * 3, SheetMesh.of(h, all(1e-9), NX, NY).length);
  }

  /** Every edge inside has two triangles, in opposite directions; the plan area is all of it. */
  @Test
  void trianglesMeetEdgeToEdge() {
    Random random = new Random(3);
    for (int round = 0; round < 20; round++) {
      double[] h = new double[NX * NY];
      for (int bump = 0; bump < 3; bump++) {
        double x = random.nextInt(NX);
        double y = random.nextInt(NY);
        double width = 1 + random.nextInt(20);
        for (int o = 0; o < h.length; o++) {
          double d = Math.hypot(o % NX - x, Math.floorDiv(o, NX) - y) / width;
          h[o] += 5 * Math.exp(-d * d);
        }
      }
      int[] t = SheetMesh.of(h, all(0.05), NX, NY);
      assertTrue(t.length / 3 < 2 * (NX - 1) * (NY - 1), "fewer than all");
      Map<Long, Integer> edges = new HashMap<>();
      long area = 0;
      for (int k = 0; k < t.length; k += 3) {
        area += twice(t[k], t[k + 1], t[k + 2]);
        for (int e = 0; e < 3; e++) {
          long a = t[k + e];
          long b = t[k + (e + 1) % 3];
          assertEquals(null, edges.put(a * NX * NY + b, 1), "an edge twice the same way");
        }
      }
      assertEquals(2L * (NX - 1) * (NY - 1), area);
      for (long e : edges.keySet()) {
        int a = (int) (e / (NX * NY));
        int b = (int) (e % (NX * NY));
        boolean twin = edges.containsKey((long) b * NX * NY + a);
        assertTrue(twin || onRim(a, b), "a crack between " + a + " and " + b);
      }
    }
  }

  private static int twice(int a, int b, int c) {
    int abx = b % NX - a % NX;
    int aby = Math.floorDiv(b, NX) - Math.floorDiv(a, NX);
    int acx = c % NX - a % NX;
    int acy = Math.floorDiv(c, NX) - Math.floorDiv(a, NX);
    return abx * acy - aby * acx;
  }

  private static boolean onRim(int a, int b) {
    int ax = a % NX;
    int bx = b % NX;
    int ay = Math.floorDiv(a, NX);
    int by = Math.floorDiv(b, NX);
    return (ax == bx && (ax == 0 || ax == NX - 1)) || (ay == by && (ay == 0 || ay == NY - 1));
  }

  /** Nothing is left out when nothing may be off. */
  @Test
  void withoutToleranceEveryRoughNodeIsUsed() {
    Random random = new Random(5);
    double[] h = random.doubles(NX * NY).toArray();
    int[] t = SheetMesh.of(h, all(0), NX, NY);
    assertEquals(2 * (NX - 1) * (NY - 1), t.length / 3);
  }

  /** A node that may not be off is drawn, whatever those round it may be. */
  @Test
  void theStrictestNodeOfATriangleCounts() {
    Random random = new Random(7);
    for (int round = 0; round < 20; round++) {
      double[] h = random.doubles(NX * NY).toArray();
      double[] play = all(2);
      assertEquals(2 * 6 * 3, SheetMesh.of(h, play, NX, NY).length);
      int strict = random.nextInt(NX * NY);
      play[strict] = 0;
      assertTrue(Arrays.stream(SheetMesh.of(h, play, NX, NY)).anyMatch(o -> o == strict));
    }
  }
}
