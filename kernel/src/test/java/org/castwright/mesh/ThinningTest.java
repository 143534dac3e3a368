package org.castwright.mesh;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Vec3;
import org.junit.jupiter.api.Test;

class ThinningTest {

  @Test
  void whatIsSmallStaysAsItIs() {
    TriMesh ball = Primitives.sphere(10, 24);
    assertSame(ball, Thinning.to(ball, ball.triangleCount()));
  }

  @Test
  void aRoundBodyKeepsItsSurfaceAndVolume() {
    TriMesh ball = Primitives.sphere(50, 400);
    TriMesh thin = Thinning.to(ball, 10_000);
    assertTrue(thin.triangleCount() <= 10_000, "" + thin.triangleCount());
    assertTrue(thin.triangleCount() > 4_000, "" + thin.triangleCount());
    assertEquals(ball.volume(), thin.volume(), 0.002 * ball.volume());
    for (int v = 0; v < thin.vertexCount(); v++) {
      assertEquals(50, thin.vertex(v).length(), 0.15);
    }
  }

  /** Unlike the mean of a cell's vertices, the least of its planes lies on the edge. */
  @Test
  void edgesStaySharp() {
    TriMesh cube = fine(60);
    TriMesh thin = Thinning.to(cube, 3_000);
    assertTrue(thin.triangleCount() <= 3_000);
    assertEquals(cube.volume(), thin.volume(), 0.003 * cube.volume());
    int corners = 0;
    for (int v = 0; v < thin.vertexCount(); v++) {
      Vec3 p = thin.vertex(v);
      boolean corner =
          Math.min(p.x(), 30 - p.x()) < 0.05
              && Math.min(p.y(), 30 - p.y()) < 0.05
              && Math.min(p.z(), 30 - p.z()) < 0.05;
      corners += corner ? 1 : 0;
    }
    assertEquals(8, corners);
  }

  /** A cube of 30 mm whose faces are n × n squares. */
  private static TriMesh fine(int n) {
    MeshBuilder m = new MeshBuilder();
    double s = 30.0 / n;
    for (int face = 0; face < 6; face++) {
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          int a = corner(m, face, i * s, j * s);
          int b = corner(m, face, (i + 1) * s, j * s);
          int c = corner(m, face, (i + 1) * s, (j + 1) * s);
          int d = corner(m, face, i * s, (j + 1) * s);
          m.triangle(a, b, c);
          m.triangle(a, c, d);
        }
      }
    }
    return Weld.exact(m.build());
  }

  private static int corner(MeshBuilder m, int face, double u, double v) {
    return switch (face) {
      case 0 -> m.vertex(v, u, 0);
      case 1 -> m.vertex(u, v, 30);
      case 2 -> m.vertex(0, v, u);
      case 3 -> m.vertex(30, u, v);
      case 4 -> m.vertex(u, 0, v);
      default -> m.vertex(v, 30, u);
    };
  }
}
