package org.castwright.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Columns against volumes, against single queries, and against closed forms. */
class ColumnsTest {

  private static final Frame SLANTED = Frame.along(new Vec3(1, 2, 5)).turned(17);

  private static double volume(Columns c, ColumnGrid grid) {
    double sum = 0;
    for (int i = 0; i < grid.cells(); i++) {
      for (int k = c.spans().from(i); k < c.spans().to(i); k++) {
        sum += c.spans().high(k) - c.spans().low(k);
      }
    }
    return sum * grid.cellArea();
  }

  @Test
  void columnsAddUpToTheVolume() {
    TriMesh[] shapes = {
      Shapes.torus(10, 3, 60, 30), Shapes.trefoil(5, 1.5, 200, 16), Shapes.cube(9)
    };
    for (TriMesh m : shapes) {
      ColumnGrid grid = ColumnGrid.over(m.toLocal(SLANTED).bounds(), 300);
      Columns c = new Columns(new Body("shape", m), SLANTED, grid);
      assertEquals(m.volume(), volume(c, grid), 2e-3 * m.volume());
    }
  }

  /** Rows and columns through vertices, edges and walls: a box whose corners lie on the grid. */
  @Test
  void alignedBoxIsEnteredAndLeftInEveryColumn() {
    TriMesh box = Primitives.box(new Vec3(0.5, 0.5, 1), new Vec3(3.5, 2.5, 4));
    ColumnGrid grid = new ColumnGrid(0, 0, 1, 5, 5);
    Columns c = new Columns(new Body("box", box), Frame.WORLD, grid);
    // half-open: columns at 0.5, 1.5, 2.5 by 0.5, 1.5 are in, those at 3.5 and 2.5 out
    assertEquals(3 * 2 * 3, volume(c, grid), 0);
  }

  @Test
  void singleColumnsAgreeWithTheGrid() {
    TriMesh m = Shapes.trefoil(5, 1.5, 120, 12);
    ColumnGrid grid = ColumnGrid.over(m.toLocal(SLANTED).bounds(), 90);
    Columns c = new Columns(new Body("knot", m), SLANTED, grid);
    ColumnQuery.Probe probe = c.probe();
    int filled = 0;
    for (int i = 0; i < grid.cells(); i++) {
      Spans one = probe.at(grid.u(i % grid.across()), grid.v(i / grid.across()));
      assertEquals(c.spans().to(i) - c.spans().from(i), one.to(0));
      for (int k = 0; k < one.to(0); k++) {
        assertEquals(c.spans().low(c.spans().from(i) + k), one.low(k), 0);
        assertEquals(c.spans().high(c.spans().from(i) + k), one.high(k), 0);
        filled++;
      }
    }
    assertTrue(filled > 1000);
  }

  @Test
  void pointsInsideABall() {
    Columns c =
        new Columns(
            new Body("ball", Primitives.sphere(10, 200)), SLANTED, new ColumnGrid(0, 0, 1, 1, 1));
    SplittableRandom random = new SplittableRandom(7);
    for (int i = 0; i < 2000; i++) {
      Vec3 p =
          new Vec3(
              random.nextDouble(-12, 12), random.nextDouble(-12, 12), random.nextDouble(-12, 12));
      double r = p.length();
      if (Math.abs(r - 10) > 0.01) {
        assertEquals(r < 10, c.holds(p), "at " + p);
      }
    }
  }

  /** Against the definition, by trying many shifts. */
  @Test
  void depthIsTheLargestShareOfAnyShift() {
    SplittableRandom random = new SplittableRandom(11);
    for (int n = 0; n < 300; n++) {
      Spans a = spans(random);
      Spans b = spans(random);
      for (double sign : new double[] {1, -1}) {
        double most = 0;
        for (double t = 0; t < 40; t += 0.05) {
          double pairwise = 0;
          for (int i = 0; i < a.to(0); i++) {
            for (int j = 0; j < b.to(0); j++) {
              double low = Math.max(a.low(i) + sign * t, b.low(j));
              double high = Math.min(a.high(i) + sign * t, b.high(j));
              pairwise = Math.max(pairwise, high - low);
            }
          }
          most = Math.max(most, pairwise);
        }
        assertEquals(most, Ahead.depth(a, 0, b, 0, sign), 0.051);
      }
    }
  }

  private static Spans spans(SplittableRandom random) {
    Spans s = new Spans(1, 4);
    double w = random.nextDouble(0, 10);
    for (int i = random.nextInt(3); i >= 0; i--) {
      double high = w + random.nextDouble(0.1, 4);
      s.add(w, high);
      w = high + random.nextDouble(0.1, 4);
    }
    s.close(0);
    return s;
  }

  @Test
  void outlineOfABallIsItsEquator() {
    TriMesh ball = Primitives.sphere(10, 88);
    Outline o = new Outline(ball, 1);
    // closed form: 88 sides of 2 r sin(π/88)
    double length = 88 * 2 * 10 * StrictMath.sin(Math.PI / 88);
    assertEquals(length, o.size() * o.spacing(), 2 * o.spacing());
    for (int i = 0; i < o.size(); i++) {
      assertEquals(0, o.w(i), 1e-12);
      double inward = o.u(i) * o.inwardU(i) + o.v(i) * o.inwardV(i);
      assertEquals(-10, inward, 0.01);
    }
  }
}
