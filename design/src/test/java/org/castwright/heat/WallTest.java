package org.castwright.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Slabs between walls, insulated at their rims. */
class WallTest {

  private static final double INFINITE = Double.POSITIVE_INFINITY;

  /** A slab of some thickness between two walls of another, no cells on their borders. */
  private static Voxels slab(double thick, double wall, int cells) {
    TriMesh casting = Primitives.box(new Vec3(0, 0, wall), new Vec3(4, 4, wall + thick));
    Box3 block = new Box3(Vec3.ZERO, new Vec3(4, 4, thick + 2 * wall));
    return Voxels.of(casting, Cells.over(block, 2, 2, cells), Voxels.WALL, INFINITE);
  }

  private static Surfaces aboveAndBelow(double air, double contact) {
    return new Surfaces(new double[] {0, 0, 0, 0, air, air}, contact, 0);
  }

  private static double[] heat(Voxels v, Substance[] s, double castingC, double wallC) {
    double[] heat = new double[v.kind.length];
    for (int c = 0; c < heat.length; c++) {
      if (v.kind[c] != Voxels.AIR) {
        heat[c] = s[v.kind[c]].heat(v.kind[c] == Voxels.CASTING ? castingC : wallC);
      }
    }
    return heat;
  }

  /**
   * Ice of 30 mm between walls of 6 mm of PLA with a gap, in air of −18 °C: Plank with wall, gap
   * and air in series. The wall's own heat is made negligible, since Plank knows none.
   */
  @Test
  void wallGapAndAirInSeries() {
    double gap = 50;
    double air = 1;
    double all = 1 / (1 / air + 1 / gap + 0.006 / 0.13);
    double plank = Plank.SLAB.timeS(917, 334e3, 2.22, all, 30, 0, -18);
    Substance[] s = {
      null,
      new Substance(18, 18, 917 * 334e3, 917 * 2100, 917 * 4190, 2.22, 2.22),
      Substance.plain(2e4, 0.13, 0),
      Substance.plain(1, 1, 0)
    };
    // 43 cells: the surfaces lie within cells, at no round share
    Voxels v = slab(30, 6, 43);
    try (Crew crew = new Crew(1)) {
      Conductances g = new Conductances(v, s, aboveAndBelow(air, gap));
      Diffusion d = new Diffusion(v, new Curves(s, 0, 18), g, heat(v, s, 18, 0), crew);
      Simulation sim = new Simulation(d, g, null, 1e-4, 1, false, crew);
      int middle = (22 * v.cells.ny() + 1) * v.cells.nx() + 1;
      while (sim.heat()[middle] > 0) {
        sim.step(Double.MAX_VALUE);
      }
      assertEquals(1, sim.timeS() / plank, 0.01);
    }
  }

  /**
   * Wax without latent heat at 80 °C on PLA of 20 °C: 49.4 °C between them while both are thick.
   * Where the surface passes through cells their heat belongs to one side or the other, an error
   * that falls with the cells.
   */
  @Test
  void contactTemperature() {
    double exact =
        Contact.celsius(
            80, Contact.effusivity(0.15, 780 * 2300), 20, Contact.effusivity(0.13, 1250 * 1800));
    assertEquals(49.4, exact, 0.05);
    assertEquals(exact, surfaceC(240), 0.02);
    double coarse = Math.abs(surfaceC(241) - exact);
    assertTrue(coarse < 0.01 * 60, coarse + " K");
    assertTrue(Math.abs(surfaceC(481) - exact) < 0.6 * coarse, coarse + " K");
  }

  private static double surfaceC(int cells) {
    Substance[] s = {
      null,
      Substance.plain(780 * 2300, 0.15, 20),
      Substance.plain(1250 * 1800, 0.13, 20),
      Substance.plain(1, 1, 0)
    };
    Voxels v = slab(60, 30, cells);
    try (Crew crew = new Crew(1)) {
      Conductances g = new Conductances(v, s, aboveAndBelow(0, INFINITE));
      Diffusion d = new Diffusion(v, new Curves(s, 20, 60), g, heat(v, s, 80, 20), crew);
      Simulation sim = new Simulation(d, g, null, 1e-3, 1, false, crew);
      WallWatch watch = new WallWatch(v, g, 45, 0, 10);
      while (sim.timeS() < 300) {
        sim.step(300 - sim.timeS());
        watch.look(sim.timeS(), sim.heat(), sim.celsius());
      }
      HeatResult.Wall wall = watch.result("limit");
      assertEquals(1, wall.overShare(), 1e-9);
      double z = wall.place().z();
      assertEquals(0, Math.min(Math.abs(z - 30), Math.abs(z - 90)), 1e-4);
      return watch.nowC();
    }
  }
}
