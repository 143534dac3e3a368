package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.SplittableRandom;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.CaughtException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Random bodies of 4 × 4 × 3 cubes, judged by trying every way to deal the mold's cells to two
 * pieces: those that open become proved molds, the others are refused. Bodies whose cubes meet in
 * edges or corners only are passed over: their surface is no manifold.
 */
class CubesTest {

  private static final double SIDE = 12;

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 5, 6, 7})
  void whatOpensIsMoldedAndProved(int seed) {
    Workshop.along(body(seed, true), Vec3.Z).assertProved();
  }

  @ParameterizedTest
  @ValueSource(ints = 4)
  void ventBesideAStep(int seed) {
    Workshop.along(body(seed, true), Vec3.Z).assertProved();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6})
  void whatDoesNotIsRefused(int seed) {
    TriMesh mesh = body(seed, false);
    assertThrows(CaughtException.class, () -> Workshop.along(mesh, Vec3.Z));
  }

  private static TriMesh body(int seed, boolean opens) {
    SplittableRandom random = new SplittableRandom(seed);
    Cubes s;
    do {
      s = Cubes.grown(6 + random.nextInt(20), random);
    } while (!s.clean() || s.opens() != opens);
    return s.mesh(SIDE);
  }
}
