package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.Stream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Shapes that two rigid pieces open along directions nobody would choose first. A convex body opens
 * along every direction (each line meets it in one stretch: Ahn, de Berg, Bose, Cheng, Halperin,
 * Matousek, Schwarzkopf, "Separating an object from its cast", CAD 34(8), 2002), and an hourglass
 * along every direction across its axis. Each must end in a proved mold.
 */
class AwkwardPullsTest {

  static Stream<Arguments> pulls() {
    return Stream.of(
        Arguments.of("sphere, slanting", Shapes.sphere(25, 48), new Vec3(1, 2, 3)),
        Arguments.of("cube, along a face's diagonal", Shapes.cube(40), new Vec3(1, 1, 0)),
        Arguments.of("cube, corner up", Shapes.cube(40), new Vec3(1, 1, 1)),
        Arguments.of("tetrahedron, along a face", tetrahedron(), new Vec3(0, 1, -1)));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("pulls")
  void proved(String name, TriMesh mesh, Vec3 pull) {
    Workshop.Made made = Workshop.along(mesh, pull);
    made.assertProved();
    assertTrue(made.result().report().survey().free(), name);
    assertEquals(2, made.result().report().pieces().size(), name);
  }

  @Test
  void hourglass() {
    TriMesh hourglass = Shapes.hourglass(25, 10, 70, 48);
    Workshop.along(hourglass, Vec3.X).assertProved();
  }

  /** Alternate corners of a cube. */
  private static TriMesh tetrahedron() {
    double[] xyz = {25, 25, 25, 25, -25, -25, -25, 25, -25, -25, -25, 25};
    return new TriMesh(xyz, new int[] {0, 1, 2, 0, 3, 1, 0, 2, 3, 1, 3, 2});
  }
}
