package org.castwright.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.junit.jupiter.api.Test;

/** Setting in time: fitted laws, and the heat they give off. */
class KineticsTest {

  private static final double NO_RISE = 0;

  /** Any two times come back from the law fitted to them, whatever the order. */
  @Test
  void fittedLawsPassThroughTheirTimes() {
    SplittableRandom random = new SplittableRandom(41);
    for (int i = 0; i < 40; i++) {
      int order = 1 + i % 2;
      double work = 60 * (1 + 60 * random.nextDouble());
      double demold = work * (1.5 + 15 * random.nextDouble());
      Kinetics k = Kinetics.through(order, work, 0.1, demold, 0.9, 23, 6000);
      assertEquals(0.1, k.advance(0, 23, NO_RISE, 0, work), 0.002, "work " + work);
      assertEquals(0.9, k.advance(0, 23, NO_RISE, 0, demold), 0.002, demold / work + "");
    }
  }

  /** First order: a = 1 − exp(−K t), in closed form. */
  @Test
  void lateDemoldingIsPlainFirstOrder() {
    Kinetics k = Kinetics.through(1, 60, 0.1, 60 * 60, 0.9, 23, 0);
    assertTrue(Double.isInfinite(k.kappa()));
    for (double t : new double[] {100, 1000, 5000}) {
      assertEquals(1 - Math.exp(-Math.log(10) / 3600 * t), k.advance(0, 23, 0, 0, t), 1e-4);
    }
    assertThrows(
        IllegalArgumentException.class, () -> Kinetics.through(1, 60, 0.1, 30, 0.9, 23, 0));
  }

  /**
   * The logistic curve of κ = 0.01, K = 0.001/s: a = κ (E − 1) / (1 + κ E), E = exp((1 + κ) K t).
   */
  @Test
  void autocatalysisIsLogistic() {
    double kappa = 0.01;
    Kinetics k = new Kinetics(0.001 * (1 + kappa), kappa, 1, 23, 0);
    for (double t : new double[] {500, 2000, 5000, 8000}) {
      double e = Math.exp((1 + kappa) * 0.001 * t);
      assertEquals(kappa * (e - 1) / (1 + kappa * e), k.advance(0, 23, 0, 0, t), 5e-4, "" + t);
    }
  }

  /**
   * Ten kelvins double the speed near room temperature at 53 kJ/mol: common practice, no source.
   */
  @Test
  void warmthDoublesTheSpeed() {
    Kinetics k = new Kinetics(0.001, 0.1, 1, 20, Kinetics.activationK(53));
    assertEquals(2, k.speed(0.3, 30) / k.speed(0.3, 20), 0.05);
  }

  /** A closed vessel of epoxy ends 237 K warmer: 450 kJ/kg over 1900 J/(kg K). */
  @Test
  void adiabaticRise() {
    double density = 1100;
    double rise = Exotherm.riseK(450, 1900);
    Box3 box = new Box3(Vec3.ZERO, new Vec3(30, 30, 30));
    Cells cells = Cells.over(box, 6, 6, 6);
    Voxels voxels = Voxels.of(Primitives.box(box.min(), box.max()), cells, Voxels.AIR, 0);
    Substance[] s = {null, Substance.plain(density * 1900, 0.2, 0)};
    double[] heat = new double[cells.size()];
    Arrays.fill(heat, s[1].heat(23));
    Kinetics kinetics = Kinetics.through(2, 1500, 0.1, 43200, 0.9, 23, Kinetics.activationK(53));
    try (Crew crew = new Crew(1)) {
      Conductances g = new Conductances(voxels, s, Surfaces.even(0, 0));
      Diffusion d = new Diffusion(voxels, new Curves(s, 23, rise), g, heat, crew);
      Reaction r = new Reaction(voxels, kinetics, 450e3 * density, rise);
      Simulation sim = new Simulation(d, g, r, 0.1, 10, false, crew);
      double t80 = 0;
      double before = 23;
      int middle = (4 * cells.ny() + 4) * cells.nx() + 4;
      while (sim.timeS() < 7200) {
        sim.step(7200 - sim.timeS());
        double now = sim.celsius()[middle];
        if (before <= 80 && now > 80) {
          t80 = sim.timeS() - sim.stepS() * (now - 80) / (now - before);
        }
        before = now;
      }
      double left = 1 - r.share()[middle];
      assertEquals(0, left, 0.01);
      assertEquals(23 + 237, sim.celsius()[middle] + left * rise, 0.5);
      // time to 80 °C by quadrature over the share set
      double exact = 0;
      int parts = 10_000;
      double share = (80 - 23) / rise;
      for (int i = 0; i < parts; i++) {
        double x = share * (i + 0.5) / parts;
        exact += share / parts / (kinetics.speed(x, 23 + x * rise) * (1 - x));
      }
      assertEquals(exact, t80, 0.01 * exact);
    }
  }

  /**
   * The largest slab that does not run away: Frank-Kamenetskii's δ of 0.878 for a slab with its
   * surfaces held at one temperature (Diffusion and Heat Exchange in Chemical Kinetics, 1955). The
   * bound holds for strong activation and heat, which 25 000 K and 5000 K are.
   */
  @Test
  void thermalExplosion() {
    double below = peakOfSlab(0.878 * 0.9);
    double above = peakOfSlab(0.878 * 1.15);
    assertTrue(below < 30, below + " K");
    assertTrue(above > 100, above + " K");
  }

  /** Highest rise over the surface in a slab with that Frank-Kamenetskii number. */
  private static double peakOfSlab(double delta) {
    double activation = 25_000;
    double rise = 5000;
    double kelvin = 300;
    double k = 0.2;
    double heat = 2e6;
    double half = 0.02;
    // δ = (E/R T²) (heat · rise · rate / k) half²
    double rate = delta * kelvin * kelvin / activation * k / (heat * rise * half * half);
    Kinetics kinetics =
        new Kinetics(rate, Double.POSITIVE_INFINITY, 1, kelvin - 273.15, activation);
    Box3 box = new Box3(Vec3.ZERO, new Vec3(4, 4, 40));
    Cells cells = Cells.over(box, 2, 2, 20);
    Voxels voxels = Voxels.of(Primitives.box(box.min(), box.max()), cells, Voxels.AIR, 0);
    double surface = kelvin - 273.15;
    Substance[] s = {null, Substance.plain(heat, k, surface)};
    double[] none = {0, 0, 0, 0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    double peak = 0;
    try (Crew crew = new Crew(1)) {
      Conductances g = new Conductances(voxels, s, new Surfaces(none, 0, 0));
      Diffusion d =
          new Diffusion(voxels, new Curves(s, surface, 100), g, new double[cells.size()], crew);
      Reaction r = new Reaction(voxels, kinetics, heat * rise, rise);
      Simulation sim = new Simulation(d, g, r, 0.01, 2, false, crew);
      double diffusion = half * half * heat / k;
      while (sim.timeS() < 6 * diffusion && peak < 500) {
        sim.step(diffusion / 10);
        for (int c = 0; c < voxels.kind.length; c++) {
          peak = Math.max(peak, voxels.kind[c] == Voxels.CASTING ? sim.celsius()[c] : 0);
        }
      }
    }
    return peak - surface;
  }
}
