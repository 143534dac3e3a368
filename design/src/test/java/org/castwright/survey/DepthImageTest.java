package org.castwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

class DepthImageTest {

  private final DepthImage image = new DepthImage();

  private double trapped(TriMesh mesh, Vec3 d, int pixels) {
    image.look(mesh, Frame.along(d), pixels, 0);
    return image.trappedVolume();
  }

  @Test
  void envelopesOfASphere() {
    TriMesh mesh = Shapes.sphere(10, 180);
    image.draw(mesh, new Raster(-11.013, -11.017, 0.25, 90, 90));
    for (int i = 0; i < 90 * 90; i++) {
      int row = i / 90;
      double x = -11.013 + (i % 90) * 0.25;
      double y = -11.017 + row * 0.25;
      double square = 100 - x * x - y * y;
      if (square > 4) {
        // closed form z = sqrt(R² - x² - y²); the facets sag by at most R (1 - cos(1°)) = 0.0015,
        // seen along z under at most 1 / cos = 10 / 2
        assertEquals(Math.sqrt(square), image.upper(i), 0.02);
        assertEquals(-Math.sqrt(square), image.lower(i), 0.02);
        assertEquals(image.upper(i) - image.lower(i), image.solid(i), 1e-12);
      } else if (square < 0) {
        assertTrue(!image.hit(i));
      }
    }
    // π R² = 314.159
    assertEquals(Math.PI * 100, image.shadowArea(), 1);
  }

  /** Every column of a convex body is one run (definition of convex), so the sum is exactly 0. */
  @Test
  void convexBodiesTrapExactlyNothing() {
    TriMesh[] bodies = {
      Shapes.cube(50), Shapes.sphere(40, 90), Shapes.cone(30, 60, 64), Shapes.cylinder(20, 70, 48)
    };
    for (TriMesh body : bodies) {
      for (long seed = 1; seed <= 40; seed++) {
        TriMesh turned = Turned.by(body, Turned.frame(seed));
        assertEquals(0.0, trapped(turned, Turned.frame(seed + 100).w(), 200));
        assertEquals(0.0, trapped(turned, Vec3.Z, 200));
      }
    }
  }

  @Test
  void torusTrapsExactlyNothingAlongItsAxisWhereverItPoints() {
    for (long seed = 1; seed <= 10; seed++) {
      Frame f = Turned.frame(seed);
      TriMesh torus = Turned.by(Shapes.torus(30, 10, 120, 60), f);
      image.look(torus, f, 300, 0);
      assertEquals(0.0, image.trappedVolume(), 1e-9);
    }
  }

  /**
   * Along its axis an hourglass of rim R, waist r and height H shuts in the cylinder R less its own
   * two frustums: π R² H - π H (R² + R r + r²) / 3 (closed form of the frustum).
   */
  @Test
  void hourglassAgainstItsClosedForm() {
    double rim = 30;
    double waist = 12;
    double height = 80;
    TriMesh mesh = Shapes.hourglass(rim, waist, height, 720);
    double exact = Math.PI * height * (rim * rim - (rim * rim + rim * waist + waist * waist) / 3);
    // 720 sides: area smaller by the factor sinc(2π/720) = 1 - 1.3e-5
    assertEquals(exact, trapped(mesh, Vec3.Z, 400), 2e-3 * exact);
    assertEquals(exact, trapped(mesh, Vec3.Z, 1600), 3e-4 * exact);
    assertEquals(0.0, trapped(mesh, Vec3.X, 400), 1e-6);
  }

  /** Two boxes, one above the other: the gap is known column by column. */
  @Test
  void gapBetweenTwoBoxes() {
    TriMesh low = Primitives.box(new Vec3(0, 0, 0), new Vec3(10, 10, 2));
    TriMesh high = Primitives.box(new Vec3(0, 0, 5), new Vec3(10, 10, 6));
    double[] xyz = new double[48];
    int[] tri = new int[72];
    System.arraycopy(low.xyz(), 0, xyz, 0, 24);
    System.arraycopy(high.xyz(), 0, xyz, 24, 24);
    for (int i = 0; i < 36; i++) {
      tri[i] = low.tri()[i];
      tri[36 + i] = high.tri()[i] + 8;
    }
    image.draw(new TriMesh(xyz, tri), new Raster(-0.25, -0.25, 0.5, 22, 22));
    // 10 x 10 x 3, sampled by exactly 20 x 20 columns of 0.5 x 0.5
    assertEquals(300, image.trappedVolume(), 1e-9);
    assertEquals(100, image.shadowArea(), 1e-9);
  }
}
