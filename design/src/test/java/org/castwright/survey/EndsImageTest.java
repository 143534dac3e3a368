package org.castwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Frame;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

class EndsImageTest {

  private static final double PIXEL = 0.5;

  /** Against the depth image, which keeps both ends whichever way the surface faces. */
  @Test
  void endsAreThoseOfTheDepthImage() {
    TriMesh[] bodies = {
      Shapes.cube(50), Shapes.sphere(40, 90), Shapes.cone(30, 60, 64), Primitives.sphere(20, 24)
    };
    EndsImage ends = new EndsImage();
    DepthImage depth = new DepthImage();
    int met = 0;
    for (TriMesh body : bodies) {
      for (long seed = 1; seed <= 10; seed++) {
        Frame frame = Turned.frame(seed);
        ends.look(body, frame, PIXEL);
        Raster r = ends.raster();
        depth.draw(body.toLocal(frame), r);
        for (int i = 0; i < r.columns(); i++) {
          if (depth.hit(i)) {
            met++;
            assertEquals(depth.upper(i), ends.high()[i], 1e-5);
            assertEquals(depth.lower(i), ends.low()[i], 1e-5);
          } else {
            assertEquals(Float.NEGATIVE_INFINITY, ends.high()[i]);
            assertEquals(Float.POSITIVE_INFINITY, ends.low()[i]);
          }
        }
      }
    }
    assertTrue(met > 100_000, met + " columns");
  }
}
