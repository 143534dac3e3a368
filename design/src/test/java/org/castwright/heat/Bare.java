package org.castwright.heat;

import java.util.Arrays;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;

/** Bodies of one substance that cool in a fluid, with no mold: what the series are about. */
final class Bare implements AutoCloseable {

  static final double HALF = 20;
  static final double INFINITE = Double.POSITIVE_INFINITY;
  private static final double NO_HEAT = 0;

  /** Cells left free round a body. */
  private static final int ROOM = 2;

  final Cells cells;
  final Voxels voxels;
  final Simulation simulation;
  private final Diffusion diffusion;
  private final Crew crew = new Crew(1);

  private Bare(
      TriMesh body, Cells cells, Substance s, double startC, Surfaces around, double error) {
    this.cells = cells;
    voxels = Voxels.of(body, cells, Voxels.AIR, 0);
    double[] heat = new double[cells.size()];
    Arrays.fill(heat, s.heat(startC));
    Substance[] substances = {null, s};
    Conductances g = new Conductances(voxels, substances, around);
    diffusion = new Diffusion(voxels, new Curves(substances, 0, startC), g, heat, crew);
    simulation = new Simulation(diffusion, g, null, error * startC, 1, !s.oneConductivity(), crew);
  }

  /** A slab along z, {@link #HALF} to both sides, in a fluid of 0 °C. */
  static Bare slab(int cells, Substance s, double startC, double h, double error) {
    return layer(2 * HALF, cells, s, startC, h, h, error);
  }

  /** A layer of some thickness along z with a coefficient for each side. */
  static Bare layer(
      double thick, int cells, Substance s, double startC, double low, double high, double error) {
    Box3 box = new Box3(Vec3.ZERO, new Vec3(4, 4, thick));
    double[] sides = {NO_HEAT, NO_HEAT, NO_HEAT, NO_HEAT, low, high};
    return new Bare(
        Primitives.box(box.min(), box.max()),
        Cells.over(box, 2, 2, cells),
        s,
        startC,
        new Surfaces(sides, NO_HEAT, NO_HEAT),
        error);
  }

  /** A cube with so many cells along an edge. */
  static Bare cube(double edge, int cells, Substance s, double startC, double h, double error) {
    Box3 box = new Box3(Vec3.ZERO, new Vec3(edge, edge, edge));
    return new Bare(
        Primitives.box(box.min(), box.max()),
        Cells.over(box, cells, cells, cells),
        s,
        startC,
        Surfaces.even(h, NO_HEAT),
        error);
  }

  /** A cylinder about z, insulated at its ends; {@code cells} across its radius. */
  static Bare cylinder(double cells, Substance s, double startC, double h, double error) {
    double d = HALF / cells;
    int n = 2 * (int) Math.ceil(cells) + 2 * ROOM + 1;
    Box3 box = new Box3(new Vec3(-n * d / 2, -n * d / 2, -d), new Vec3(n * d / 2, n * d / 2, d));
    double[] sides = {NO_HEAT, NO_HEAT, NO_HEAT, NO_HEAT, NO_HEAT, NO_HEAT};
    return new Bare(
        Primitives.frustum(HALF, -d, HALF, d, 512),
        Cells.over(box, n, n, 3),
        s,
        startC,
        new Surfaces(sides, NO_HEAT, h),
        error);
  }

  /** A sphere; {@code cells} across its radius. */
  static Bare sphere(double cells, Substance s, double startC, double h, double error) {
    double d = HALF / cells;
    int n = 2 * (int) Math.ceil(cells) + 2 * ROOM + 1;
    Vec3 corner = new Vec3(n * d / 2, n * d / 2, n * d / 2);
    double[] sides = {NO_HEAT, NO_HEAT, NO_HEAT, NO_HEAT, NO_HEAT, NO_HEAT};
    return new Bare(
        Primitives.sphere(HALF, 256),
        Cells.over(new Box3(corner.negate(), corner), n, n, n),
        s,
        startC,
        new Surfaces(sides, NO_HEAT, h),
        error);
  }

  /** Temperatures anew, after heat contents were set by hand. */
  void warm() {
    diffusion.warm();
  }

  /** Time until the middle comes to a temperature, s, between steps as cooling bodies cool. */
  double timeS(double middleC) {
    double before = simulation.celsius()[middle()];
    while (true) {
      simulation.step(Double.MAX_VALUE);
      double now = middleC();
      if (now <= middleC) {
        double share = Math.log(before / middleC) / Math.log(before / now);
        return simulation.timeS() - (1 - share) * simulation.stepS();
      }
      before = now;
    }
  }

  /** Time until the last of a melt has frozen, s. */
  double frozenS() {
    while (true) {
      simulation.step(Double.MAX_VALUE);
      double most = 0;
      for (int c = 0; c < voxels.kind.length; c++) {
        most = voxels.kind[c] == Voxels.CASTING ? Math.max(most, simulation.heat()[c]) : most;
      }
      if (most <= 0) {
        return simulation.timeS();
      }
    }
  }

  /** The middle cell, or the upper one of the two. */
  private int middle() {
    return (cells.nz() / 2 * cells.ny() + cells.ny() / 2) * cells.nx() + cells.nx() / 2;
  }

  /** Temperature at the middle; with an even number of cells along z it lies between two. */
  private double middleC() {
    double[] t = simulation.celsius();
    int up = middle();
    if (cells.nz() % 2 == 1) {
      return t[up];
    }
    int s = cells.stride(2);
    // a parabola that is level in the middle
    return t[up] + (t[up] - t[up + s]) / 8;
  }

  @Override
  public void close() {
    crew.close();
  }
}
