package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class RouteTest {

  /** Flat ground with a casting that covers a box from {@code x0, y0} to {@code x1, y1}. */
  private static Ground box(double x0, double y0, double x1, double y1) {
    return new Ground() {
      @Override
      public double heightAt(double x, double y) {
        return shadowDistance(x, y) > 0 ? 0 : Double.NaN;
      }

      @Override
      public double roofAt(double x, double y) {
        return Double.NaN;
      }

      @Override
      public double undersideAt(double x, double y) {
        return roofAt(x, y);
      }

      @Override
      public double shadowDistance(double x, double y) {
        double dx = Math.max(0, Math.max(x0 - x, x - x1));
        double dy = Math.max(0, Math.max(y0 - y, y - y1));
        return Math.hypot(dx, dy);
      }
    };
  }

  @Test
  void straightWhereNothingIsAbove() {
    Route r = new Route(box(-10, -10, 10, 10)::shadowDistance, 40);
    assertTrue(r.straightUp(0, 10, 2));
  }

  @Test
  void goesRoundAnOverhangWithoutEverFalling() {
    // a ledge over the point (0, -5): the way up must pass beside x = ±10
    Ground ledge = box(-10, 0, 10, 6);
    Route r = new Route(ledge::shadowDistance, 40);
    assertFalse(r.straightUp(0, -5, 2));
    List<double[]> way = r.around(0, -5, 2, -30, 30);
    assertNotNull(way);
    assertEquals(0, way.get(0)[0], 0);
    assertEquals(40, way.get(way.size() - 1)[1], 0);
    for (int i = 0; i + 1 < way.size(); i++) {
      double[] a = way.get(i);
      double[] b = way.get(i + 1);
      assertTrue(b[1] >= a[1] - 1e-9, "air would have to sink");
      for (int k = i == 0 ? 100 : 0; k <= 100; k++) {
        double x = a[0] + (b[0] - a[0]) * k / 100;
        double y = a[1] + (b[1] - a[1]) * k / 100;
        assertTrue(ledge.shadowDistance(x, y) >= 2, "too near the casting at " + x + ", " + y);
      }
    }
  }

  @Test
  void noneOutOfAPocketClosedAbove() {
    // the ledge reaches both walls of the block
    assertNull(new Route(box(-100, 0, 100, 6)::shadowDistance, 40).around(0, -5, 2, -30, 30));
  }
}
