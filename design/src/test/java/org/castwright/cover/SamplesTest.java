package org.castwright.cover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Where a cover is judged, against closed forms. */
class SamplesTest {

  private static final double RADIUS = 20;

  private static TriMesh twoBalls(double apart) {
    MeshBuilder m = new MeshBuilder();
    for (int side = -1; side <= 1; side += 2) {
      TriMesh ball = Shapes.sphere(RADIUS, 64).translated(new Vec3(side * apart / 2, 0, 0));
      int first = m.vertexCount();
      for (int v = 0; v < ball.vertexCount(); v++) {
        m.vertex(ball.vertex(v).x(), ball.vertex(v).y(), ball.vertex(v).z());
      }
      for (int i = 0; i < ball.tri().length; i += 3) {
        m.triangle(first + ball.tri()[i], first + ball.tri()[i + 1], first + ball.tri()[i + 2]);
      }
    }
    return m.build();
  }

  @Test
  void weightsSumToTheSurfaceAndTheSpace() {
    TriMesh ball = Shapes.sphere(RADIUS, 64);
    Samples s = Samples.of(ball, 60);
    assertEquals(ball.area(), Arrays.stream(s.areas()).sum(), 1e-6 * ball.area());
    // the grid is a cell or two larger than the box of 40³, the ball is 4/3 π 20³; cells closer
    // than
    // 0.05 mm to the surface, 0.1 mm times its area, are left out
    SpaceGrid g = s.grid();
    double cell = g.cell() * g.cell() * g.cell();
    double space = g.size() * cell - 4.0 / 3 * Math.PI * 8000 - 0.05 * ball.area();
    assertEquals(space, Arrays.stream(s.volumes()).sum(), 0.01 * space);
    assertTrue(s.cells() < 0.5 * space / cell, "far cells stand for eight");
  }

  @Test
  void facetsInsideAnotherPartAreNotJudged() {
    // two balls that overlap: each shows its surface but for a cap of height h = 20 - 10
    TriMesh balls = twoBalls(RADIUS);
    Samples s = Samples.of(balls, 60);
    double shown = 2 * (4 * Math.PI * 400 - 2 * Math.PI * RADIUS * 10);
    assertEquals(shown, Arrays.stream(s.areas()).sum(), 0.01 * shown);
  }

  @Test
  void insideIsInside() {
    Inside inside = new Inside(twoBalls(RADIUS));
    SplittableRandom random = new SplittableRandom(7);
    int in = 0;
    for (int i = 0; i < 20_000; i++) {
      double x = 70 * random.nextDouble() - 35;
      double y = 50 * random.nextDouble() - 25;
      double z = 50 * random.nextDouble() - 25;
      double left = Math.sqrt((x + 10) * (x + 10) + y * y + z * z);
      double right = Math.sqrt((x - 10) * (x - 10) + y * y + z * z);
      double distance = Math.min(left, right) - RADIUS;
      // 64 chords round a ball of 20 mm stay within 0.05 mm of it
      if (Math.abs(distance) > 0.1) {
        assertEquals(distance < 0, inside.test(x, y, z), x + " " + y + " " + z);
        in += distance < 0 ? 1 : 0;
      }
    }
    assertTrue(in > 5000);
  }

  @Test
  void cellsNearTheSurfaceAreMarked() {
    TriMesh ball = Shapes.sphere(RADIUS, 64);
    SpaceGrid g = new SpaceGrid(ball, 1, 3);
    double band = 0.6;
    boolean[] near = g.near(ball, band);
    for (int c = 0; c < g.size(); c++) {
      double r = new Vec3(g.x(c), g.y(c), g.z(c)).length();
      double off = Math.abs(r - RADIUS);
      assertTrue(off > band - 0.1 || near[c], "off by " + off);
      assertFalse(off > band + 0.1 && near[c], "off by " + off);
      assertTrue(off < 0.1 || g.solid(c) == r < RADIUS);
    }
  }
}
