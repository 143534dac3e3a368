package org.castwright.repair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Surfaces that pass through each other are told from those that touch. */
class SelfCrossingTest {

  @Test
  void crossingsOfTwoBallsAreFoundAndATouchIsNot() {
    TriMesh ball = Primitives.sphere(5, 24);
    TriMesh turned = ball.toLocal(Frame.along(new Vec3(1, 2, 3)));
    SelfCrossing.Result across =
        SelfCrossing.of(Shapes.joined(ball, turned.translated(new Vec3(6, 1, 0))));
    assertTrue(across.count() > 10);
    // the balls meet in a circle, all of it between their centers
    assertTrue(across.where().x() > 1 && across.where().x() < 5, across.where().toString());
    assertEquals(
        across, SelfCrossing.of(Shapes.joined(ball, turned.translated(new Vec3(6, 1, 0)))));
    TriMesh apart = Shapes.joined(ball, turned.translated(new Vec3(10.01, 0, 0)));
    assertEquals(0, SelfCrossing.of(apart).count());
    // two cubes that share a face in its plane
    TriMesh cube = Shapes.cube(4);
    TriMesh beside = Shapes.joined(cube, cube.translated(new Vec3(4, 1, 1)));
    assertEquals(0, SelfCrossing.of(beside).count());
  }
}
