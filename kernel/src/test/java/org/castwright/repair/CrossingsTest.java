package org.castwright.repair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.SplittableRandom;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

/** Crossing triangles: the tree against all pairs, the signs against exact arithmetic. */
class CrossingsTest {

  private static int count(TriMesh mesh) {
    return new Crossings(new TriangleTree(mesh), new int[mesh.triangleCount()], Progress.NONE)
        .count();
  }

  @Test
  void signsAreExactNearAPlane() {
    SplittableRandom random = new SplittableRandom(5);
    int zeros = 0;
    for (int i = 0; i < 2000; i++) {
      double[] p = new double[12];
      for (int k = 0; k < 9; k++) {
        p[k] = (float) random.nextDouble(-10, 10);
      }
      // the fourth point in or within a few ulp of the plane of the others
      for (int k = 0; k < 3; k++) {
        double v = i % 2 == 0 ? p[k] / 4 + p[3 + k] / 4 + p[6 + k] / 2 : p[k] + p[3 + k] - p[6 + k];
        p[9 + k] = i % 4 < 2 ? v : v + random.nextInt(-3, 4) * Math.ulp(v);
      }
      int exact = exactSide(p);
      zeros += exact == 0 ? 1 : 0;
      assertEquals(exact, Sign3.side(p, 0, 3, 6, p, 9));
      assertEquals(-exact, Sign3.side(p, 3, 0, 6, p, 9));
    }
    assertTrue(zeros > 200);
  }

  private static int exactSide(double[] p) {
    BigDecimal[] d = new BigDecimal[9];
    for (int i = 0; i < 9; i++) {
      d[i] = new BigDecimal(p[i]).subtract(new BigDecimal(p[9 + i % 3]));
    }
    BigDecimal bc = d[3].multiply(d[7]).subtract(d[6].multiply(d[4]));
    BigDecimal ca = d[6].multiply(d[1]).subtract(d[0].multiply(d[7]));
    BigDecimal ab = d[0].multiply(d[4]).subtract(d[3].multiply(d[1]));
    return d[2].multiply(bc).add(d[5].multiply(ca)).add(d[8].multiply(ab)).signum();
  }

  @Test
  void treeFindsWhatAllPairsFind() {
    SplittableRandom random = new SplittableRandom(9);
    MeshBuilder m = new MeshBuilder();
    for (int f = 0; f < 400; f++) {
      double x = random.nextDouble(10);
      double y = random.nextDouble(10);
      double z = random.nextDouble(10);
      for (int k = 0; k < 3; k++) {
        m.vertex(x + random.nextDouble(2), y + random.nextDouble(2), z + random.nextDouble(2));
      }
      m.triangle(3 * f, 3 * f + 1, 3 * f + 2);
    }
    TriMesh soup = m.build();
    TriangleCrossing crossing = new TriangleCrossing(soup.xyz(), soup.tri());
    int all = 0;
    for (int f = 0; f < 400; f++) {
      for (int g = 0; g < f; g++) {
        all += crossing.meet(f, g) ? 1 : 0;
        assertEquals(crossing.meet(f, g), crossing.meet(g, f));
      }
    }
    assertTrue(all > 50);
    assertEquals(all, count(soup));
  }

  @Test
  void knownCases() {
    assertEquals(0, count(Shapes.sphere(5, 30)));
    assertEquals(0, count(Shapes.cube(2)));
    // touching along an edge is no crossing; each triangle of a shared face meets its double
    assertEquals(0, count(Broken.together(Shapes.cube(2), moved(2, 2, 0))));
    assertEquals(2, count(Broken.together(Shapes.cube(2), moved(2, 0, 0))));
    assertTrue(count(Broken.together(Shapes.cube(2), moved(1, 0.5, 0.25))) > 0);
    // one cube wholly inside the other: no triangle meets another
    assertEquals(0, count(Broken.together(Shapes.cube(2), Shapes.cube(1))));
  }

  private static TriMesh moved(double x, double y, double z) {
    return Shapes.cube(2).translated(new Vec3(x, y, z));
  }

  @Test
  void healthOfACube() {
    MeshHealth h = MeshHealth.of(Shapes.cube(2), Progress.NONE);
    assertEquals(12, h.triangles());
    assertEquals(8, h.vertices());
    assertEquals(1, h.shells());
    assertEquals(0, h.genus());
    assertEquals(8, h.volume(), 1e-12);
    assertEquals(24, h.area(), 1e-12);
    assertEquals(new Vec3(2, 2, 2), h.box().size());
    assertTrue(h.closedManifold());
    TriMesh open = Broken.turned(Broken.without(Shapes.cube(2), f -> f == 0), f -> f == 3);
    MeshHealth broken = MeshHealth.of(open, Progress.NONE);
    assertEquals(3, broken.openEdges());
    assertTrue(broken.flippedEdges() > 0);
    assertEquals(-1, broken.genus());
    assertEquals(1, MeshHealth.of(Shapes.torus(5, 1, 20, 10), Progress.NONE).genus());
  }
}
