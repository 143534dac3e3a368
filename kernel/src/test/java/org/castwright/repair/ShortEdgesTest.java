package org.castwright.repair;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Splinters put into a ball go; what is no splinter stays. */
class ShortEdgesTest {

  private static final double RADIUS = 10;
  private static final double SHORT = 0.002;

  @Test
  void splintersGo() {
    SplittableRandom random = new SplittableRandom(17);
    for (int n = 0; n < 20; n++) {
      TriMesh ball = Primitives.sphere(RADIUS, 24);
      TriMesh splintered = ball;
      int first = random.nextInt(17);
      for (int f = first; f < ball.triangleCount(); f += 17) {
        splintered = split(splintered, f, random);
      }
      assertTrue(shortest(splintered) < SHORT);
      TriMesh less = ShortEdges.without(splintered, SHORT);
      assertTrue(MeshCheck.of(less).closedManifold());
      assertEquals(ball.triangleCount(), less.triangleCount());
      assertTrue(shortest(less) > SHORT);
      // no corner moves farther than a splinter is long
      assertEquals(ball.volume(), less.volume(), SHORT * 4 * Math.PI * RADIUS * RADIUS);
    }
  }

  @Test
  void whatIsNoSplinterStays() {
    TriMesh ball = Primitives.sphere(RADIUS, 24);
    TriMesh same = ShortEdges.without(ball, SHORT);
    assertArrayEquals(ball.tri(), same.tri());
    assertArrayEquals(ball.xyz(), same.xyz());
  }

  /**
   * Puts a corner into a triangle f, so near one of its own that the edge between is a splinter.
   */
  private static TriMesh split(TriMesh mesh, int f, SplittableRandom random) {
    Vec3 at = mesh.vertex(mesh.tri()[3 * f + random.nextInt(3)]);
    Vec3 near = at.plus(mesh.center(f).minus(at).unit().times(random.nextDouble(0.1, 0.9) * SHORT));
    int v = mesh.vertexCount();
    double[] xyz = Arrays.copyOf(mesh.xyz(), 3 * v + 3);
    xyz[3 * v] = near.x();
    xyz[3 * v + 1] = near.y();
    xyz[3 * v + 2] = near.z();
    int[] tri = Arrays.copyOf(mesh.tri(), mesh.tri().length + 6);
    int a = tri[3 * f];
    int b = tri[3 * f + 1];
    int c = tri[3 * f + 2];
    int[] three = {a, b, v, b, c, v, c, a, v};
    System.arraycopy(three, 0, tri, 3 * f, 3);
    System.arraycopy(three, 3, tri, mesh.tri().length, 6);
    return new TriMesh(xyz, tri);
  }

  private static double shortest(TriMesh mesh) {
    double least = Double.POSITIVE_INFINITY;
    for (int h = 0; h < mesh.tri().length; h++) {
      int next = h % 3 == 2 ? h - 2 : h + 1;
      Vec3 edge = mesh.vertex(mesh.tri()[next]).minus(mesh.vertex(mesh.tri()[h]));
      least = Math.min(least, edge.length());
    }
    return least;
  }
}
