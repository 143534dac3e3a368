package org.castwright.heat;

import static org.castwright.heat.Bare.INFINITE;
import static org.castwright.heat.OneTerm.Shape.CYLINDER;
import static org.castwright.heat.OneTerm.Shape.SLAB;
import static org.castwright.heat.OneTerm.Shape.SPHERE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.heat.OneTerm.Shape;
import org.junit.jupiter.api.Test;

/**
 * The solver in three dimensions against the whole series (Carslaw and Jaeger): time until the
 * middle has lost 70 % of its excess, for a surface that resists more than the body, less, and not
 * at all.
 */
class SeriesTest {

  private static final double K = 0.2;
  private static final double HEAT = 2e6;
  private static final double LEFT = 0.3;
  private static final double[] BIOT = {0.5, 5, INFINITE};

  /** Small enough that only the grid's error is seen. */
  private static final double STEP_ERROR = 2e-6;

  /** Relative error of the time with so many cells across the half thickness or radius. */
  private static double error(Shape shape, double biot, int cells) {
    Substance s = Substance.plain(HEAT, K, 0);
    double half = Bare.HALF * 1e-3;
    double h = biot * K / half;
    double exact = new Series(shape, biot).fourier(LEFT) * half * half * HEAT / K;
    try (Bare bare =
        switch (shape) {
          case SLAB -> Bare.slab(2 * cells, s, 1, h, STEP_ERROR);
          case CYLINDER -> Bare.cylinder(cells, s, 1, h, STEP_ERROR);
          case SPHERE -> Bare.sphere(cells, s, 1, h, STEP_ERROR);
        }) {
      return bare.timeS(LEFT) / exact - 1;
    }
  }

  private static double order(double coarse, double fine, double ratio) {
    return Math.log(Math.abs(coarse / fine)) / Math.log(ratio);
  }

  @Test
  void slabIsOfSecondOrder() {
    for (double biot : BIOT) {
      double coarse = error(SLAB, biot, 4);
      double middle = error(SLAB, biot, 8);
      double fine = error(SLAB, biot, 16);
      assertEquals(0, middle, 0.01, "Bi " + biot);
      assertEquals(0, fine, 0.0013, "Bi " + biot);
      assertEquals(2, order(coarse, middle, 2), 0.15, "Bi " + biot);
      assertEquals(2, order(middle, fine, 2), 0.25, "Bi " + biot);
    }
  }

  @Test
  void cylinderConverges() {
    for (double biot : BIOT) {
      double coarse = error(CYLINDER, biot, 8);
      double fine = error(CYLINDER, biot, 32);
      assertEquals(0, fine, 0.005, "Bi " + biot);
      assertEquals(0, error(CYLINDER, biot, 24), 0.01, "Bi " + biot);
      if (biot < INFINITE) {
        assertTrue(order(coarse, fine, 4) > 1.2, "Bi " + biot + ": " + coarse + ", " + fine);
      } else {
        // already lost in the noise of where the circle passes between cells
        assertEquals(0, coarse, 0.001);
      }
    }
  }

  @Test
  void sphereConverges() {
    for (double biot : BIOT) {
      double coarse = error(SPHERE, biot, 8);
      double fine = error(SPHERE, biot, 20);
      assertEquals(0, fine, 0.01, "Bi " + biot);
      assertEquals(0, error(SPHERE, biot, 16), 0.01, "Bi " + biot);
      if (biot < 1 || biot == INFINITE) {
        assertTrue(order(coarse, fine, 2.5) > 1.4, "Bi " + biot + ": " + coarse + ", " + fine);
      }
    }
  }

  /** An egg of 5 cm in water of 95 °C (Çengel, example 4-3, from memory): 863 s to 70 °C inside. */
  @Test
  void egg() {
    double k = 0.627;
    Substance s = Substance.plain(k / 0.151e-6, k, 0);
    // the radius of the bodies here is 20 mm: the same Biot and Fourier numbers at 25 mm
    double h = 1200 * 25 / Bare.HALF;
    double left = (95.0 - 70) / (95 - 5);
    try (Bare bare = Bare.sphere(20, s, 1, h, STEP_ERROR)) {
      double t = bare.timeS(left) * 25 * 25 / (Bare.HALF * Bare.HALF);
      assertEquals(863, t, 0.01 * 863);
    }
  }
}
