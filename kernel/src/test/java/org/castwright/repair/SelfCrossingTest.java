package org.castwright.repair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Surfaces that pass through each other are told from those that touch. */
class SelfCrossingTest {

  private static TriMesh joined(TriMesh a, TriMesh b) {
    MeshBuilder out = new MeshBuilder();
    int first = 0;
    for (TriMesh m : new TriMesh[] {a, b}) {
      for (int v = 0; v < m.vertexCount(); v++) {
        out.vertex(m.vertex(v).x(), m.vertex(v).y(), m.vertex(v).z());
      }
      for (int t = 0; t < m.tri().length; t += 3) {
        out.triangle(first + m.tri()[t], first + m.tri()[t + 1], first + m.tri()[t + 2]);
      }
      first += m.vertexCount();
    }
    return out.build();
  }

  @Test
  void crossingsOfTwoBallsAreFoundAndATouchIsNot() {
    TriMesh ball = Primitives.sphere(5, 24);
    TriMesh turned = ball.toLocal(Frame.along(new Vec3(1, 2, 3)));
    SelfCrossing.Result across =
        SelfCrossing.of(joined(ball, turned.translated(new Vec3(6, 1, 0))));
    assertTrue(across.count() > 10);
    // the balls meet in a circle, all of it between their centers
    assertTrue(across.where().x() > 1 && across.where().x() < 5, across.where().toString());
    assertEquals(across, SelfCrossing.of(joined(ball, turned.translated(new Vec3(6, 1, 0)))));
    TriMesh apart = joined(ball, turned.translated(new Vec3(10.01, 0, 0)));
    assertEquals(0, SelfCrossing.of(apart).count());
    // two cubes that share a face in its plane
    TriMesh cube = Shapes.cube(4);
    TriMesh beside = joined(cube, cube.translated(new Vec3(4, 1, 1)));
    assertEquals(0, SelfCrossing.of(beside).count());
  }
}
