package org.castwright.mesh;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.castwright.geom.Vec3;
import org.junit.jupiter.api.Test;

class TriMeshTest {

  /** Each mesh keeps its corners: volumes, areas and boxes add up. */
  @Test
  void meshesTogetherKeepTheirShells() {
    TriMesh small = Primitives.box(new Vec3(0, 0, 0), new Vec3(1, 2, 3));
    TriMesh ball = Primitives.sphere(2, 24).translated(new Vec3(10, 0, 0));
    TriMesh both = TriMesh.together(List.of(small, ball));
    assertEquals(small.triangleCount() + ball.triangleCount(), both.triangleCount());
    assertEquals(small.volume() + ball.volume(), both.volume(), 1e-9);
    assertEquals(small.area() + ball.area(), both.area(), 1e-9);
    assertEquals(0, both.bounds().min().x());
    assertEquals(12, both.bounds().max().x(), 1e-9);
  }
}
