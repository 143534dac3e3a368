package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.MoldOptions;
import org.junit.jupiter.api.Test;

/** The cavity of a finished mold against Pappus's rule: V = 2 π · centroid's radius · area. */
class TurnedTriangleTest {

  private static final int SIDES = 60;

  /** Floats of up to 64 mm are off by up to 2e-6 mm, a share of 2e-7 of walls 10 mm apart. */
  private static final double ROUNDING = 5e-7;

  /**
   * The triangle (2,0), (5,0), (2,4) about the axis: area 6, centroid 3 from the axis, V = 36 π =
   * 113.097; here ten times as large. Turned in n steps it keeps sin(2π/n) / (2π/n) of that, as
   * every slice across the axis does. Chocolate's shrink of 0.85 % makes the scale 1 / 0.9915.
   */
  @Test
  void inChocolate() {
    double smooth = 2 * Math.PI * 30 * 600;
    assertEquals(113.097, smooth / 1000, 5e-4);
    double step = 2 * Math.PI / SIDES;
    double expected = smooth * Math.sin(step) / step / Math.pow(0.9915, 3);
    MoldOptions o = MoldOptions.DEFAULT.with().material("chocolate-dark").build();
    Workshop.Made made = Workshop.make(ring(new double[] {20, 0, 50, 0, 20, 40}), o);
    made.assertProved();
    double volume = made.result().report().casting().volumeMm3();
    assertEquals(expected, volume, ROUNDING * expected);
  }

  /**
   * A section {@code r, z, ...}, counter-clockwise with r to the right, turned about the z axis.
   */
  private static TriMesh ring(double[] section) {
    int n = section.length / 2;
    MeshBuilder m = new MeshBuilder();
    for (int i = 0; i < SIDES; i++) {
      double a = 2 * Math.PI * i / SIDES;
      for (int j = 0; j < n; j++) {
        double r = section[2 * j];
        m.vertex(r * StrictMath.cos(a), r * StrictMath.sin(a), section[2 * j + 1]);
      }
    }
    for (int i = 0; i < SIDES; i++) {
      for (int j = 0; j < n; j++) {
        int a = i * n + j;
        int b = (i + 1) % SIDES * n + j;
        int c = (i + 1) % SIDES * n + (j + 1) % n;
        m.triangle(a, b, c);
        m.triangle(a, c, i * n + (j + 1) % n);
      }
    }
    return m.build();
  }
}
