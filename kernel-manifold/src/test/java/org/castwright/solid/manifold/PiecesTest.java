package org.castwright.solid.manifold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class PiecesTest {

  private static final ManifoldKernel KERNEL = new ManifoldKernel();

  @AfterAll
  static void close() {
    KERNEL.close();
  }

  @Test
  void largestFirstAndTiesByPlace() {
    Solid a = KERNEL.solid("a", Shapes.cube(1).translated(new Vec3(9, 0, 0)));
    Solid b = KERNEL.solid("b", Shapes.cube(1).translated(new Vec3(6, 0, 0)));
    Solid c = KERNEL.solid("c", Shapes.cube(2));
    List<Solid> parts = KERNEL.decompose(KERNEL.union("abc", List.of(a, b, c)));
    assertEquals(List.of(8.0, 1.0, 1.0), parts.stream().map(Solid::volume).toList());
    assertEquals(5.5, parts.get(1).bounds().min().x(), 0);
    assertEquals(8.5, parts.get(2).bounds().min().x(), 0);
    assertEquals("abc part 1", parts.get(0).name());
    for (Solid part : parts) {
      assertEquals(8, part.mesh().vertexCount());
      assertTrue(MeshCheck.of(part.mesh()).closedManifold());
    }
  }

  @Test
  void oneBodyStaysItself() {
    Solid a = KERNEL.solid("a", Shapes.cube(1));
    assertEquals(List.of(a), KERNEL.decompose(a));
  }

  @Test
  void voidsBelongToTheBodyRoundThem() {
    // cubes of side 10, 8, 6, 4 in one another: a box with a void, an island with a void in it
    Solid shell = hollow(10, 8, Vec3.ZERO);
    Solid island = hollow(6, 4, Vec3.ZERO);
    Solid beside = hollow(3, 1, new Vec3(20, 0, 0));
    Solid all = KERNEL.union("all", List.of(shell, island, beside));
    assertEquals(6, MeshCheck.of(all.mesh()).components());
    List<Solid> parts = KERNEL.decompose(all);
    assertEquals(3, parts.size());
    double[] expected = {1000 - 512, 216 - 64, 27 - 1};
    for (int i = 0; i < 3; i++) {
      assertEquals(expected[i], parts.get(i).volume(), 1e-12 * expected[i]);
      assertEquals(2, MeshCheck.of(parts.get(i).mesh()).components());
    }
  }

  @Test
  void windingNumberOfAClosedBall() {
    TriMesh ball = Shapes.sphere(1, 30);
    assertEquals(1, Pieces.winding(ball, new Vec3(0.2, 0.3, -0.1)), 1e-12);
    assertEquals(0, Pieces.winding(ball, new Vec3(1.2, 0.3, -0.1)), 1e-12);
    assertEquals(-1, Pieces.winding(ball.reversed(), Vec3.ZERO), 1e-12);
  }

  private static Solid hollow(double outside, double inside, Vec3 at) {
    return KERNEL.difference(
        "hollow",
        KERNEL.solid("outside", Shapes.cube(outside).translated(at)),
        List.of(KERNEL.solid("inside", Shapes.cube(inside).translated(at))));
  }
}
