package org.castwright.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.heat.FreezeShut.Chill;
import org.castwright.heat.FreezeShut.Shape;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** The bound on freezing shut, from below and not far from the truth. */
class FreezeShutTest {

  private static final double ENDLESS = Double.POSITIVE_INFINITY;
  private static final double PLA_K = 0.13;
  private static final double PLA_HEAT = 1240 * 1800.0;

  /** A wall that takes up any heat, which is the wall of Stefan's problem. */
  private static Chill metal(double density, double latent, double k, double meltsC, double wallC) {
    return new Chill(density * latent, meltsC, meltsC, k, 400, 1e12, wallC, ENDLESS);
  }

  /**
   * Ice of 10 mm from a wall of −10 °C takes 704 s and paraffin of 58 °C from one of 20 °C 1214 s
   * by Stefan's solution (Carslaw and Jaeger 11.2), 690 and 1071 s without heat stored in the
   * solid. A slit freezes from both sides.
   */
  @Test
  void stefansExamplesFromBelow() {
    double ice = FreezeShut.of(Shape.SLIT, 20, metal(917, 334e3, 2.22, 0, -10)).shutS();
    double wax = FreezeShut.of(Shape.SLIT, 20, metal(900, 190e3, 0.21, 58, 20)).shutS();
    assertEquals(690, ice, 1);
    assertEquals(1071, wax, 1);
    double exactIce = Stefan.timeS(Stefan.lambda(2100 * 10 / 334e3), 2.22 / (917 * 2100), 10);
    double exactWax = Stefan.timeS(Stefan.lambda(2100 * 38 / 190e3), 0.21 / (900 * 2100.0), 10);
    assertEquals(704, exactIce, 1);
    assertEquals(1214, exactWax, 1);
    assertTrue(ice < exactIce && ice > 0.97 * exactIce, ice + " and " + exactIce);
    assertTrue(wax < exactWax && wax > 0.87 * exactWax, wax + " and " + exactWax);
  }

  /**
   * A melt that conducts well in a flat wall that does not: Chvorinov's constant of theory, {@code
   * t = π/4 (ρ L / ΔT)² / (k ρ c) (V/A)²} (Flemings, Solidification Processing, 1974; from memory).
   */
  @Test
  void chvorinovsConstant() {
    Chill c = new Chill(8600 * 50e3, 138, 138, 1e9, PLA_K, PLA_HEAT, 20, ENDLESS);
    double root = 8600 * 50e3 / 118 * 2e-3;
    double theory = Math.PI / 4 * root * root / (PLA_K * PLA_HEAT);
    assertEquals(theory, FreezeShut.of(Shape.SLIT, 4, c).shutS(), 1e-6 * theory);
    // a bore of the same modulus shuts sooner, as heat spreads round it
    assertTrue(FreezeShut.of(Shape.BORE, 8, c).shutS() < 0.95 * theory);
  }

  @Test
  void whatHasComeThroughTheWallCutsTheBoundOff() {
    Chill thick = new Chill(900 * 190e3, 58, 58, 0.21, PLA_K, PLA_HEAT, 20, ENDLESS);
    Chill thin = new Chill(900 * 190e3, 58, 58, 0.21, PLA_K, PLA_HEAT, 20, 3);
    FreezeShut all = FreezeShut.of(Shape.BORE, 12, thick);
    FreezeShut cut = FreezeShut.of(Shape.BORE, 12, thin);
    double through = 0.25 * 9e-6 * PLA_HEAT / PLA_K;
    assertEquals(through, cut.shutS(), 1e-9 * through);
    assertTrue(all.shutS() > cut.shutS());
    assertEquals(
        all.passesS(true) / all.shutS(), cut.passesS(true) / cut.shutS(), 1e-12, "the same share");
  }

  @Test
  void endsOfRangesFreezeSoonest() {
    MoldMaterial pla = ThermalTable.mold("pla");
    Chill wax = Chill.of(ThermalTable.casting("paraffin-wax"), pla, 20, 10);
    assertEquals(68, wax.meltC());
    assertEquals(170e3 * 750, wax.heatPerM3(), 1);
    assertEquals(0.25, wax.k());
    assertEquals(1800 * 1260.0, wax.wallHeatPerM3());
    // tempered chocolate is poured within its melting range: (31 − 25) / (33.8 − 25) of the heat
    Chill dark = Chill.of(ThermalTable.casting("chocolate-dark"), pla, 12, 10);
    assertEquals(31, dark.meltC());
    assertEquals(6 / 8.8 * 46e3 * 1200, dark.heatPerM3(), 1);
    Chill soap = Chill.of(ThermalTable.casting("soap-melt-and-pour"), pla, 20, 10);
    assertEquals(10 * 2500 * 1010.0, soap.heatPerM3(), 1);
    assertEquals(60, soap.meltC());
    assertEquals(50, soap.setsC());
    assertNull(Chill.of(ThermalTable.casting("resin-epoxy-deep"), pla, 20, 10));
    assertNull(Chill.of(ThermalTable.casting("silicone-tin"), pla, 20, 10));
    MoldMaterial resin = ThermalTable.mold("photopolymer");
    ThermalMaterial ice = ThermalTable.casting("ice");
    assertThrows(IllegalArgumentException.class, () -> Chill.of(ice, resin, -18, 10));
    Chill warm = Chill.of(ice, pla, 4, 10);
    assertEquals(ENDLESS, FreezeShut.of(Shape.BORE, 8, warm).shutS());
    assertEquals(ENDLESS, FreezeShut.of(Shape.SLIT, 8, warm).passesS(true));
  }

  /** Against the grid of this room: a bore of 8 mm and a slit of 4 mm in thick PLA. */
  @Test
  void theGridIsSlower() {
    Substance wax = new Substance(58, 58, 900 * 190e3, 900 * 2100.0, 900 * 2100.0, 0.21, 0.21);
    Substance alloy = new Substance(138, 138, 8600 * 50e3, 8600 * 180.0, 8600 * 180.0, 20, 20);
    for (Substance s : new Substance[] {wax, alloy}) {
      Chill c =
          new Chill(s.melt(), s.solidusC(), s.solidusC(), s.solidK(), PLA_K, PLA_HEAT, 20, ENDLESS);
      double slit = onGrid(Shape.SLIT, 4, s);
      double bore = onGrid(Shape.BORE, 8, s);
      between(FreezeShut.of(Shape.SLIT, 4, c).shutS(), slit, 1.6);
      between(FreezeShut.of(Shape.BORE, 8, c).shutS(), bore, 1.6);
    }
  }

  /** The grid's own error is some 2 %. */
  private static void between(double bound, double grid, double most) {
    assertTrue(bound <= 1.02 * grid && grid <= most * bound, bound + " s and " + grid + " s");
  }

  /** Time until the last liquid is gone, poured at its melting point into a wall of 20 °C, s. */
  private static double onGrid(Shape shape, double width, Substance melt) {
    double wall = 14;
    boolean bore = shape == Shape.BORE;
    double half = wall + width / 2;
    int across = bore ? 105 : 240;
    double d = 2 * half / across;
    Box3 block =
        bore
            ? new Box3(new Vec3(-half, -half, -d), new Vec3(half, half, d))
            : new Box3(new Vec3(0, 0, -half), new Vec3(4, 4, half));
    TriMesh casting =
        bore
            ? Primitives.frustum(width / 2, -d, width / 2, d, 256)
            : Primitives.box(new Vec3(0, 0, -width / 2), new Vec3(4, 4, width / 2));
    Cells cells = bore ? Cells.over(block, across, across, 3) : Cells.over(block, 2, 2, across);
    Voxels v = Voxels.of(casting, cells, Voxels.WALL, ENDLESS);
    Substance[] s = {null, melt, Substance.plain(PLA_HEAT, PLA_K, 20), null};
    double[] heat = new double[cells.size()];
    for (int c = 0; c < heat.length; c++) {
      heat[c] = v.kind[c] == Voxels.CASTING ? melt.melt() : 0;
    }
    Curves curves = new Curves(Arrays.copyOf(s, 3), 20, melt.solidusC() - 20);
    try (Crew crew = new Crew(1)) {
      Conductances g = new Conductances(v, s, Surfaces.even(1e-9, ENDLESS));
      Diffusion diffusion = new Diffusion(v, curves, g, heat, crew);
      Simulation sim =
          new Simulation(diffusion, g, null, 1e-3 * (melt.solidusC() - 20), 1, false, crew);
      while (true) {
        sim.step(Double.MAX_VALUE);
        double most = Double.NEGATIVE_INFINITY;
        for (int c = 0; c < heat.length; c++) {
          most = v.kind[c] == Voxels.CASTING ? Math.max(most, sim.heat()[c]) : most;
        }
        if (most <= 0) {
          return sim.timeS();
        }
      }
    }
  }

  /**
   * Any melt in any endless wall, by explicit steps along one coordinate: neither does it shut
   * sooner than the bound, nor does it let through less while it narrows.
   */
  @Test
  void noMeltFreezesSooner() {
    Random random = new Random(20);
    for (int i = 0; i < 24; i++) {
      Shape shape = i % 2 == 0 ? Shape.SLIT : Shape.BORE;
      boolean latent = i % 3 != 0;
      double meltC = 100;
      double wallC = 80 * random.nextDouble();
      double setsC = latent ? meltC : wallC + (0.3 + 0.6 * random.nextDouble()) * (100 - wallC);
      double capacity = 2e6 * (0.5 + random.nextDouble());
      double heat = latent ? 3e8 * (0.1 + random.nextDouble()) : capacity * (meltC - setsC);
      double k = 0.1 * Math.pow(30, random.nextDouble());
      double wallK = 0.1 * Math.pow(5, random.nextDouble());
      Chill c = new Chill(heat, meltC, setsC, k, wallK, 2e6, wallC, ENDLESS);
      double width = 2 + 8 * random.nextDouble();
      Column column = new Column(shape, width, c, capacity);
      column.run();
      FreezeShut bound = FreezeShut.of(shape, width, c);
      String which = i + ", " + c;
      assertTrue(bound.shutS() <= 1.01 * column.shutS, which + ": " + bound + column.shutS);
      // heat that the layer stores is left out, as is one part of what sets by cooling
      assertTrue(
          bound.shutS() >= column.shutS / (latent ? 3 : 10), which + ": " + bound + column.shutS);
      assertTrue(bound.passesS(true) <= 1.02 * column.friction, which + ": " + column.friction);
      assertTrue(bound.passesS(false) <= 1.02 * column.speed, which + ": " + column.speed);
    }
  }

  /** A melt and a wall along x from the middle, in layers or in rings. */
  private static final class Column {
    private static final int IN = 40;
    private static final int ALL = 400;

    private final Shape shape;
    private final Chill c;
    private final double capacity;
    private final double d;
    private final double[] heat = new double[ALL];
    private final double[] t = new double[ALL];
    private double shutS;
    private double friction;
    private double speed;

    Column(Shape shape, double width, Chill c, double capacity) {
      this.shape = shape;
      this.c = c;
      this.capacity = capacity;
      this.d = width / 2000 / IN;
      for (int i = 0; i < ALL; i++) {
        heat[i] = i < IN ? c.heatPerM3() : 0;
      }
    }

    private double face(int i) {
      return shape == Shape.SLIT ? 1 : i * d;
    }

    private double volume(int i) {
      return shape == Shape.SLIT ? d : (i + 0.5) * d * d;
    }

    private void warm() {
      boolean latent = c.setsC() == c.meltC();
      for (int i = 0; i < ALL; i++) {
        t[i] =
            i >= IN
                ? c.wallC() + heat[i] / c.wallHeatPerM3()
                : c.setsC() + (latent ? Math.min(0, heat[i]) : heat[i]) / capacity;
      }
    }

    void run() {
      double most = Math.max(c.k() / capacity, c.wallK() / c.wallHeatPerM3());
      double h = 0.2 * d * d / most;
      double open = 1;
      while (open > 0) {
        warm();
        for (int i = 1; i < ALL; i++) {
          double ka = i - 1 < IN ? c.k() : c.wallK();
          double kb = i < IN ? c.k() : c.wallK();
          double q = 2 * ka * kb / (ka + kb) * (t[i - 1] - t[i]) / d * face(i) * h;
          heat[i - 1] -= q / volume(i - 1);
          heat[i] += q / volume(i);
        }
        open = 0;
        double all = 0;
        for (int i = 0; i < IN; i++) {
          open += volume(i) * Math.max(0, Math.min(1, heat[i] / c.heatPerM3()));
          all += volume(i);
        }
        open = c.setsC() == c.meltC() ? open / all : set(all);
        shutS += open > 0 ? h : 0;
        friction += open * open * h;
        speed += open * h;
      }
    }

    /** Open share of what sets by cooling: where it is warmer than it sets. */
    private double set(double all) {
      double sum = 0;
      for (int i = 0; i < IN; i++) {
        sum += heat[i] > 0 ? volume(i) : 0;
      }
      return sum / all;
    }
  }
}
