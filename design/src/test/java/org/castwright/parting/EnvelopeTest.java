package org.castwright.parting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Columns, depth grid and hash table against closed forms and brute force. */
class EnvelopeTest {

  /** Every column through a closed mesh is crossed an even number of times. */
  @Test
  void columnsNeverSlipThrough() {
    TriMesh m = PartingShapes.turned(Shapes.torus(20, 7, 40, 24), 33, 12);
    Columns columns = new Columns(m);
    Column c = new Column();
    Random random = new Random(11);
    for (int i = 0; i < 20000; i++) {
      double x = 60 * random.nextDouble() - 30;
      double y = 60 * random.nextDouble() - 30;
      boolean hit = columns.at(x, y, c);
      assertEquals(0, c.hits % 2);
      assertEquals(hit, c.hits > 0);
    }
    // columns straight through vertices and along edges
    for (int v = 0; v < m.vertexCount(); v++) {
      columns.at(m.xyz()[3 * v], m.xyz()[3 * v + 1], c);
      assertEquals(0, c.hits % 2);
    }
  }

  @Test
  void trappedVolumeOfAnHourglass() {
    int sides = 96;
    TriMesh m = PartingShapes.snapped(Shapes.hourglass(16, 8, 50, sides));
    DepthGrid grid = new DepthGrid(m, BlockBox.around(m.bounds(), 12, 8));
    // prism over the rim's polygon less two frusta of h/3 (R² + R r + r²)
    double polygon = sides * StrictMath.sin(2 * Math.PI / sides) / 2;
    double trapped = polygon * (16 * 16 * 50 - 50.0 / 3 * (16 * 16 + 16 * 8 + 8 * 8));
    assertEquals(trapped, grid.trappedMm3, 0.01 * trapped);
    TriMesh lying = PartingShapes.turned(m, 90, 0);
    DepthGrid free = new DepthGrid(lying, BlockBox.around(lying.bounds(), 12, 8));
    assertEquals(0, free.trappedMm3, 1e-6);
  }

  @Test
  void distanceFromADisc() {
    TriMesh m = PartingShapes.snapped(Shapes.cylinder(20, 10, 128));
    DepthGrid grid = new DepthGrid(m, BlockBox.around(m.bounds(), 12, 8));
    for (int o = 0; o < grid.nx * grid.ny; o++) {
      double d = Math.max(0, Math.hypot(grid.x(o), grid.y(o)) - 20);
      // the shadow's nearest node is up to a step inside, the path along the grid up to 8 % longer
      assertTrue(grid.distance[o] >= d - 0.02 && grid.distance[o] <= 1.09 * d + 0.75);
    }
  }

  @Test
  void edgeMapAgainstAMap() {
    Random random = new Random(3);
    EdgeMap ours = new EdgeMap(4);
    Map<Long, Integer> theirs = new HashMap<>();
    for (int i = 0; i < 5000; i++) {
      long key = EdgeMap.both(random.nextInt(60), random.nextInt(60));
      Integer old = theirs.put(key, i);
      assertEquals(old == null ? EdgeMap.NONE : old, ours.put(key, i));
    }
    assertEquals(theirs.size(), ours.size());
    for (int a = 0; a < 60; a++) {
      for (int b = a; b < 60; b++) {
        long key = EdgeMap.directed(a, b);
        assertEquals(theirs.getOrDefault(key, EdgeMap.NONE), ours.get(key));
        assertEquals(theirs.containsKey(key), ours.has(key));
      }
    }
  }
}
