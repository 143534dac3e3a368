package org.castwright.mesh;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.castwright.geom.Vec3;
import org.junit.jupiter.api.Test;

class FacetDistanceTest {

  /** Against the nearest of many points spread over the facet, which is never nearer. */
  @Test
  void agreesWithPointsSpreadOverTheFacet() {
    Random r = new Random(7);
    int n = 120;
    for (int t = 0; t < 60; t++) {
      double[] xyz = r.doubles(9, -10, 10).toArray();
      TriMesh one = new TriMesh(xyz, new int[] {0, 1, 2});
      Vec3 p = new Vec3(r.nextDouble(-20, 20), r.nextDouble(-20, 20), r.nextDouble(-20, 20));
      double least = Double.POSITIVE_INFINITY;
      for (int i = 0; i <= n; i++) {
        for (int j = 0; j <= n - i; j++) {
          Vec3 q =
              one.vertex(0)
                  .times((double) i / n)
                  .plus(one.vertex(1).times((double) j / n))
                  .plus(one.vertex(2).times((double) (n - i - j) / n));
          least = Math.min(least, p.minus(q).length());
        }
      }
      double d = FacetDistance.of(one, 0, p);
      assertTrue(d <= least + 1e-9, d + " and " + least);
      assertEquals(least, d, 0.1);
    }
  }

  @Test
  void aFacetWithoutAreaIsItsEdges() {
    TriMesh flat = new TriMesh(new double[] {0, 0, 0, 1, 0, 0, 2, 0, 0}, new int[] {0, 1, 2});
    assertEquals(3, FacetDistance.of(flat, 0, new Vec3(1.5, 3, 0)), 1e-12);
    assertEquals(5, FacetDistance.of(flat, 0, new Vec3(6, 3, 0)), 1e-12);
  }
}
