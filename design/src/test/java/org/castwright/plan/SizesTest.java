package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.material.Materials;
import org.junit.jupiter.api.Test;

/** Walls by rule and by pressure. */
class SizesTest {

  private static final Material PLASTER = Materials.of("plaster-pottery");

  private static Box3 cube(double side) {
    return new Box3(Vec3.ZERO, new Vec3(side, side, side));
  }

  /** 3 + 0.025 · 100 mm; the pressure would do with less. */
  @Test
  void aSmallCastingHasTheWallOfTheRule() {
    assertEquals(5.5, Sizes.of(cube(100), PLASTER, MoldOptions.DEFAULT).wall(), 1e-9);
  }

  /**
   * A square plate supported simply: w = 0.00406 q a⁴/D, D = E t³/12(1 − ν²) (Timoshenko and
   * Woinowsky-Krieger, Theory of Plates and Shells, table 8, from memory); PLA of 3500 MPa and
   * 0.35.
   */
  @Test
  void aLargeCastingHasTheWallThatGivesWayByAFifthOfAMillimeter() {
    for (double side : new double[] {250, 300, 400}) {
      double q = PLASTER.density().kgPerM3() * 9.81 * (side + PLASTER.headMm()) * 1e-9;
      double t3 = 0.00406 * q * Math.pow(side, 4) / 0.2 * 12 * (1 - 0.35 * 0.35) / 3500;
      double wall = Sizes.of(cube(side), PLASTER, MoldOptions.DEFAULT).wall();
      // the walls that the seam halves may need more
      double most = 1.6 * Math.cbrt(t3);
      assertTrue(wall >= Math.cbrt(t3) - 0.01 && wall < most, side + " mm: " + wall);
    }
  }

  @Test
  void aWallAskedForIsKept() {
    MoldOptions asked = MoldOptions.DEFAULT.with().wallMm(6).build();
    assertEquals(6, Sizes.of(cube(400), PLASTER, asked).wall(), 0);
  }
}
