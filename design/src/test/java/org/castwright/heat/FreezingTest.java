package org.castwright.heat;

import static org.castwright.heat.Bare.INFINITE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * Freezing fronts on the grid against Stefan's and Neumann's solutions (Carslaw and Jaeger 11.2).
 */
class FreezingTest {

  /** Deep enough that the far side feels nothing. */
  private static final double THICK = 80;

  private static final double FRONT = 10;
  private static final double STEP_ERROR = 2e-5;

  /** Paraffin; temperatures above those of the wall, which has 20 °C. */
  private static Substance wax(double liquidK, double liquidHeat) {
    return new Substance(38, 38, 900 * 190e3, 900 * 2100, liquidHeat, 0.21, liquidK);
  }

  /** Time until the layer frozen from a wall of 0 °C is 10 mm thick, s. */
  private static double timeS(Substance s, double startC, int cells) {
    try (Bare bare = Bare.layer(THICK, cells, s, startC, INFINITE, 0, STEP_ERROR)) {
      double before = 0;
      while (true) {
        bare.simulation.step(Double.MAX_VALUE);
        double now = frozenMm(bare, s);
        if (now >= FRONT) {
          double late = (now - FRONT) / (now - before);
          return bare.simulation.timeS() - late * bare.simulation.stepS();
        }
        before = now;
      }
    }
  }

  private static double frozenMm(Bare bare, Substance s) {
    Cells c = bare.cells;
    double sum = 0;
    for (int k = 1; k < c.nz() - 1; k++) {
      sum += c.dz() * (1 - s.liquid(bare.simulation.heat()[k * c.stride(2) + c.nx() + 1]));
    }
    return sum;
  }

  private static void converges(double exact, Substance s, double startC) {
    double coarse = timeS(s, startC, 40) / exact - 1;
    double middle = timeS(s, startC, 80) / exact - 1;
    double fine = timeS(s, startC, 160) / exact - 1;
    String errors = coarse + ", " + middle + ", " + fine;
    assertEquals(0, middle, 0.01, errors);
    assertEquals(0, fine, 0.003, errors);
    double order = Math.log(Math.abs(coarse / fine)) / Math.log(4);
    assertTrue(order > 1.15, order + " of " + errors);
  }

  /** Ice on a wall of −10 °C, water at 0 °C: 10 mm in 704 s. */
  @Test
  void ice() {
    Substance s = new Substance(10, 10, 917 * 334e3, 917 * 2100, 917 * 4190, 2.22, 2.22);
    converges(704, s, 10);
  }

  /** Paraffin of 58 °C on a wall of 20 °C: 10 mm in 1214 s. */
  @Test
  void waxAtItsMeltingPoint() {
    converges(1214, wax(0.21, 900 * 2100), 38);
  }

  /** Poured at 70 and 80 °C, the liquid with figures of its own: 1479 and 1723 s. */
  @Test
  void waxPouredHotter() {
    converges(1479, wax(0.15, 780 * 2300), 50);
    converges(1723, wax(0.15, 780 * 2300), 60);
  }

  /**
   * Plank: ice of 30 mm in air of −18 °C, a slab three times as slow as a cube. The factors are
   * exact where the surface resists far more than the ice; then the first order of what Plank
   * leaves out is small too, and both times are his.
   */
  @Test
  void slabAndCubeInAir() {
    double slab = overPlank(Plank.SLAB, 1);
    double cube = overPlank(Plank.CUBE, 1);
    assertEquals(1, slab, 0.01);
    assertEquals(1, cube, 0.01);
    // still air, 7.33 h by Plank
    assertEquals(1, overPlank(Plank.SLAB, 10), 0.01);
  }

  /** Time until the last liquid is gone over Plank's. */
  private static double overPlank(Plank shape, double h) {
    Substance s = new Substance(18, 18, 917 * 334e3, 917 * 2100, 917 * 4190, 2.22, 2.22);
    double plank = shape.timeS(917, 334e3, 2.22, h, 30, 0, -18);
    try (Bare bare =
        shape == Plank.SLAB
            ? Bare.layer(30, 31, s, 18, h, h, STEP_ERROR)
            : Bare.cube(30, 15, s, 18, h, STEP_ERROR)) {
      return bare.frozenS() / plank;
    }
  }

  /** All heat that leaves goes through the wall: nothing is lost in melting and freezing. */
  @Test
  void heatIsKept() {
    Substance s = wax(0.15, 780 * 2300);
    try (Bare closed = Bare.layer(THICK, 30, s, 60, 0, 0, STEP_ERROR)) {
      double[] heat = closed.simulation.heat();
      // half of it cold: it melts at the cost of the rest
      for (int c = 0; c < heat.length / 2; c++) {
        heat[c] = s.heat(10);
      }
      closed.warm();
      double before = sum(closed);
      for (int i = 0; i < 50; i++) {
        closed.simulation.step(Double.MAX_VALUE);
      }
      double moved = Math.abs(s.heat(60) - s.heat(10));
      assertTrue(closed.simulation.timeS() > 100);
      assertEquals(before, sum(closed), 1e-7 * moved);
    }
  }

  private static double sum(Bare bare) {
    double sum = 0;
    for (int c = 0; c < bare.voxels.kind.length; c++) {
      sum += bare.voxels.kind[c] == Voxels.CASTING ? bare.simulation.heat()[c] : 0;
    }
    return sum / bare.voxels.count(Voxels.CASTING);
  }
}
