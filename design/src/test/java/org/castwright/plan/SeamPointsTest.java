package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import org.castwright.geom.Vec3;
import org.junit.jupiter.api.Test;

class SeamPointsTest {

  private static final double[] SQUARE = {-10, -10, 0, 10, -10, 0, 10, 10, 0, -10, 10, 0};

  @Test
  void joinsTheMiddleOfAFlatTop() {
    SeamPoints seam = new SeamPoints(List.of(SQUARE), p -> false);
    // the peak of a flat ceiling may be any of its corners; the gate belongs in the middle
    Vec3 p = seam.joinFor(new Vec3(10, 10, 3), 0.3, 20);
    assertEquals(0, p.x(), 0.51);
    assertEquals(10, p.y(), 1e-9);
  }

  @Test
  void joinsNothingOutOfReach() {
    SeamPoints seam = new SeamPoints(List.of(SQUARE), p -> false);
    assertNull(seam.joinFor(new Vec3(0, 20, 0), 0.3, 5));
    assertNull(seam.joinFor(new Vec3(60, 10, 0), 0.3, 5));
  }
}
