package org.castwright.heat;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

/** The casting in the cells of the grid. */
class VoxelsTest {

  private static final Box3 BLOCK = new Box3(new Vec3(-30, -28, -26), new Vec3(30, 28, 26));

  /** True area of the casting's surface as the faces know it, mm². */
  private static double area(Voxels v) {
    double sum = 0;
    for (int q = 0; q < v.faceCell.length; q++) {
      sum += v.faceFacing[q] * v.cells.volumeMm3() / v.cells.edge(v.faceAxis[q]);
    }
    return sum;
  }

  @Test
  void sphereHasItsVolumeAndItsArea() {
    TriMesh sphere = Primitives.sphere(20, 128).translated(new Vec3(1.3, -0.7, 0.4));
    Voxels v = Voxels.of(sphere, Cells.over(BLOCK, 200_000), Voxels.WALL, Double.POSITIVE_INFINITY);
    double volume = v.count(Voxels.CASTING) * v.cells.volumeMm3();
    assertEquals(1, volume / sphere.volume(), 0.004);
    // the bare faces of the cells would have half as much again
    assertEquals(1, area(v) / sphere.area(), 0.01);
    assertTrue(v.faceCell.length * Math.pow(v.cells.meanEdgeMm(), 2) > 1.4 * sphere.area());
  }

  @Test
  void aBoxLiesWhereItLies() {
    TriMesh box = Primitives.box(new Vec3(-10.25, -8, -6), new Vec3(10, 8, 6));
    Voxels v = Voxels.of(box, Cells.over(BLOCK, 60, 56, 52), Voxels.WALL, Double.POSITIVE_INFINITY);
    assertEquals(20 * 16 * 12, v.count(Voxels.CASTING));
    int seen = 0;
    for (int q = 0; q < v.faceCell.length; q++) {
      if (v.faceAxis[q] == 0 && v.kind[v.faceCell[q]] != Voxels.CASTING) {
        // middles at −10.5 and −9.5, the surface a quarter of the way
        assertEquals(0.25, v.faceShare[q], 1e-6);
        assertEquals(1, v.faceFacing[q], 1e-6);
        assertEquals(-10.5, v.cells.middle(v.faceCell[q]).x(), 1e-9);
        seen++;
      }
    }
    assertEquals(16 * 12, seen);
  }

  /** Where casting and channels touch, at any height between cells, they are one body. */
  @Test
  void channelsJoinTheCasting() {
    Random random = new Random(21);
    Cells cells = Cells.over(BLOCK, 30, 28, 26);
    for (int i = 0; i < 40; i++) {
      // every other one through the middles of cells
      double y = i % 2 == 0 ? 2.0 * random.nextInt(8) - 7 : 16 * random.nextDouble() - 8;
      TriMesh low = Primitives.box(new Vec3(-11, -15, -9), new Vec3(12, y, 8));
      TriMesh high = Primitives.box(new Vec3(-11, y, -9), new Vec3(12, 28, 8));
      TriMesh both = Primitives.box(new Vec3(-11, -15, -9), new Vec3(12, 28, 8));
      Voxels joined = Voxels.of(new Poured(low, high).all(), cells, Voxels.WALL, 3);
      Voxels whole = Voxels.of(both, cells, Voxels.WALL, 3);
      assertArrayEquals(whole.kind, joined.kind, "at " + y);
      assertArrayEquals(whole.faceCell, joined.faceCell);
      assertArrayEquals(whole.faceShare, joined.faceShare, 1e-6f);
      double share = joined.outside(low).cardinality() / (double) joined.count(Voxels.CASTING);
      assertEquals((28 - y) / 43, share, 0.05);
    }
  }

  /** A ball and the bore that is left of a cylinder outside it: the cells hold both volumes. */
  @Test
  void liquidHasTheVolumeOfBoth() {
    try (SolidKernel kernel = new ManifoldKernel()) {
      TriMesh ball = Primitives.sphere(18, 96).translated(new Vec3(0.3, -6, -0.7));
      TriMesh rod = Primitives.frustum(6, 0, 8, 26, 64);
      Solid cut = kernel.difference("b", kernel.solid("r", rod), List.of(kernel.solid("c", ball)));
      TriMesh bore = cut.mesh();
      Cells cells = Cells.over(BLOCK, 300_000);
      Voxels v =
          Voxels.of(new Poured(ball, bore).all(), cells, Voxels.WALL, Double.POSITIVE_INFINITY);
      double liquid = v.count(Voxels.CASTING) * cells.volumeMm3();
      assertEquals(1, liquid / (ball.volume() + bore.volume()), 0.004);
      assertEquals(
          bore.volume(), v.outside(ball).cardinality() * cells.volumeMm3(), 0.03 * bore.volume());
      assertTrue(bore.volume() > 1000 && bore.volume() < rod.volume(), bore.volume() + "");
    }
  }

  /** A hollow stays wall, whichever way it is looked at. */
  @Test
  void holesAreNotFilled() {
    Cells cells = Cells.over(BLOCK, 60, 56, 52);
    Voxels v = Voxels.of(ring(), cells, Voxels.WALL, Double.POSITIVE_INFINITY);
    int middle = (27 * cells.ny() + 29) * cells.nx() + 31;
    assertEquals(Voxels.WALL, v.kind[middle]);
    assertEquals(1, v.count(Voxels.CASTING) * cells.volumeMm3() / ring().volume(), 0.02);
  }

  /** A square ring of four beams, closed. */
  private static TriMesh ring() {
    MeshBuilder m = new MeshBuilder();
    double[] half = {20, 12};
    int[][] v = new int[4][4];
    for (int k = 0; k < 4; k++) {
      double r = half[k / 2];
      double z = k % 2 == 0 ? -5 : 5;
      v[k][0] = m.vertex(-r, -r, z);
      v[k][1] = m.vertex(r, -r, z);
      v[k][2] = m.vertex(r, r, z);
      v[k][3] = m.vertex(-r, r, z);
    }
    for (int i = 0; i < 4; i++) {
      int j = (i + 1) % 4;
      quad(m, v[0][i], v[0][j], v[1][j], v[1][i]);
      quad(m, v[2][j], v[2][i], v[3][i], v[3][j]);
      quad(m, v[1][i], v[1][j], v[3][j], v[3][i]);
      quad(m, v[0][j], v[0][i], v[2][i], v[2][j]);
    }
    return m.build();
  }

  private static void quad(MeshBuilder m, int a, int b, int c, int d) {
    m.triangle(a, b, c);
    m.triangle(a, c, d);
  }

  /** Skins of 3 mm round a cavity and outside; the rest between them is infill. */
  @Test
  void skinsOfAPrint() {
    TriMesh box = Primitives.box(new Vec3(-10, -8, -6), new Vec3(10, 8, 6));
    Cells cells = Cells.over(BLOCK, 60, 56, 52);
    Voxels v = Voxels.of(box, cells, Voxels.WALL, 3);
    int row = (26 * cells.ny() + 28) * cells.nx();
    StringBuilder seen = new StringBuilder();
    for (int i = 0; i < cells.nx(); i++) {
      seen.append(v.kind[row + i]);
    }
    assertEquals(
        "0"
            + "2".repeat(3)
            + "3".repeat(14)
            + "2".repeat(3)
            + "1".repeat(20)
            + "2".repeat(3)
            + "3".repeat(14)
            + "2".repeat(3)
            + "0",
        seen.toString());
  }
}
