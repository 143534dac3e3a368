package org.castwright.side;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.MinimumDiameter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

class FootprintTest {

  private static double[] cloud(Random random, int n, double x, double y, double z, double size) {
    double[] p = new double[3 * n];
    for (int i = 0; i < n; i++) {
      p[3 * i] = x + size * random.nextDouble();
      p[3 * i + 1] = y + size * random.nextDouble();
      p[3 * i + 2] = z + size * random.nextDouble();
    }
    return p;
  }

  @Test
  void holdsItsPointsWithAMarginAndWidensByItsDraft() {
    Footprint f = Footprint.of(cloud(new Random(3), 500, 5, -3, 10, 12), 3).get(0);
    var hull = f.outline();
    GeometryFactory factory = new GeometryFactory();
    double[] p = cloud(new Random(3), 500, 5, -3, 10, 12);
    for (int i = 0; i < p.length; i += 3) {
      var point = factory.createPoint(new Coordinate(p[i], p[i + 1]));
      assertTrue(hull.contains(point));
      // round corners are cut by polygons of 12 sides a turn
      assertTrue(hull.getBoundary().distance(point) > 0.9 * Footprint.MARGIN);
      assertTrue(p[i + 2] >= f.floor() + Footprint.MARGIN - 1e-9);
    }
    TriMesh body = f.body(60);
    assertTrue(MeshCheck.of(body).closedManifold());
    // convex outlines moved outward: Steiner's formula, with corners mitered instead of rounded
    double core = (f.head() - f.floor()) * Math.tan(Math.toRadians(Footprint.CORE_DRAFT_DEG));
    double wide = (60 - f.head()) * Math.tan(Math.toRadians(Footprint.DRAFT_DEG));
    double middle = hull.getArea() + hull.getLength() * core + Math.PI * core * core;
    double low = (f.head() - f.floor()) * (hull.getArea() + middle) / 2;
    double around = hull.getLength() + 2 * Math.PI * core;
    double high = (60 - f.head()) * (middle + around * wide / 2 + Math.PI * wide * wide / 3);
    assertEquals(low + high, body.volume(), 0.02 * (low + high));
    assertTrue(f.head() > 21 && f.head() < 22);
  }

  @Test
  void aThinPocketGetsAPlugThatCanBeHeld() {
    Footprint f = Footprint.of(new double[] {0, 0, 0, 10, 0.1, 0, 5, 0.2, 0}, 50).get(0);
    assertTrue(new MinimumDiameter(f.outline()).getLength() > 5.5);
  }

  @Test
  void pocketsFarApartGetPlugsOfTheirOwnAndNearOnesShareOne() {
    Random random = new Random(5);
    double[] a = cloud(random, 300, 0, 0, 0, 5);
    double[] b = cloud(random, 300, 40, 0, 0, 5);
    double[] both = new double[1800];
    System.arraycopy(a, 0, both, 0, 900);
    System.arraycopy(b, 0, both, 900, 900);
    assertEquals(2, Footprint.of(both, 3).size());
    List<Footprint> one = Footprint.of(both, 60);
    assertEquals(1, one.size());
    assertEquals(-Footprint.MARGIN, one.get(0).floor(), 0.2);
  }
}
