package org.castwright.proof;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;

/**
 * What a grid of exact columns says about moving one body straight past another, to any distance.
 *
 * @param steps what is shared after each step of the move; catches that rounding of the files can
 *     make are left out
 * @param wideArea area, mm², of the columns caught deeper than the release depth together with
 *     everything within a lip width round them: caught spots, not lips
 * @param depth the deepest catch along the pull in any column counted, mm
 * @param where the place of that catch, world
 */
record Catch(List<Step> steps, double wideArea, double depth, Vec3 where) {

  /** After a move of {@code distance}, mm, {@code shared} mm³ are shared. */
  record Step(double distance, double shared) {}

  /** Catches shallower than this are what rounding to 32-bit floats leaves on shared faces, mm. */
  private static final double NOISE_DEPTH = 1e-3;

  /** Catches narrower than this are what rounding leaves beside shared steep walls, mm. */
  private static final double NOISE_WIDTH = 2e-3;

  private static final int[][] DIAGONAL = {{1, 1}, {-1, 1}, {-1, -1}, {1, -1}};

  static Catch of(
      Columns moving,
      Columns still,
      ColumnGrid grid,
      double sign,
      double[] steps,
      ProofLimits limits) {
    return new Measure(moving, still, grid, sign, limits).measured(steps);
  }

  /** Depth of the catch in every column first, then a closer look at the columns caught. */
  private static final class Measure {
    private final Columns moving;
    private final Columns still;
    private final ColumnGrid grid;
    private final double sign;
    private final ProofLimits limits;
    private final ColumnQuery.Probe movingProbe;
    private final ColumnQuery.Probe stillProbe;
    private final double[] depth;

    Measure(Columns moving, Columns still, ColumnGrid grid, double sign, ProofLimits limits) {
      this.moving = moving;
      this.still = still;
      this.grid = grid;
      this.sign = sign;
      this.limits = limits;
      this.movingProbe = moving.probe();
      this.stillProbe = still.probe();
      this.depth = new double[grid.cells()];
      for (int c = 0; c < depth.length; c++) {
        depth[c] = Ahead.depth(moving.spans(), c, still.spans(), c, sign);
      }
    }

    Catch measured(double[] steps) {
      double[] sums = new double[steps.length];
      int wide = 0;
      int deepest = -1;
      for (int c = 0; c < depth.length; c++) {
        if (depth[c] <= NOISE_DEPTH || !caughtRound(c, NOISE_WIDTH, NOISE_DEPTH)) {
          continue;
        }
        for (int k = 0; k < steps.length; k++) {
          sums[k] += Ahead.shared(moving.spans(), c, still.spans(), c, sign * steps[k]);
        }
        if (depth[c] > limits.releaseDepth()
            && caughtRound(c, limits.lipWidth(), limits.releaseDepth())) {
          wide++;
        }
        if (deepest < 0 || depth[c] > depth[deepest]) {
          deepest = c;
        }
      }
      List<Step> shared = new ArrayList<>();
      for (int k = 0; k < sums.length; k++) {
        shared.add(new Step(steps[k], sums[k] * grid.cellArea()));
      }
      double area = wide * grid.cellArea();
      return deepest < 0
          ? new Catch(shared, area, 0, Vec3.ZERO)
          : new Catch(shared, area, depth[deepest], place(deepest));
    }

    /** Whether what is caught in a column is caught all round it too. */
    private boolean caughtRound(int c, double radius, double least) {
      int i = c % grid.across();
      int j = c / grid.across();
      if (radius < grid.step() && amidCaught(i, j, least)) {
        return true;
      }
      double d = radius * Math.sqrt(0.5);
      for (int[] way : DIAGONAL) {
        double u = grid.u(i) + way[0] * d;
        double v = grid.v(j) + way[1] * d;
        if (Ahead.depth(movingProbe.at(u, v), 0, stillProbe.at(u, v), 0, sign) <= least) {
          return false;
        }
      }
      return true;
    }

    /** Whether the eight columns round one are caught: a wide catch without a closer look. */
    private boolean amidCaught(int i, int j, double least) {
      if (i == 0 || j == 0 || i == grid.across() - 1 || j == grid.along() - 1) {
        return false;
      }
      for (int k = -1; k <= 1; k++) {
        int row = (j + k) * grid.across() + i;
        if (depth[row - 1] <= least || depth[row] <= least || depth[row + 1] <= least) {
          return false;
        }
      }
      return true;
    }

    /** The front of the rearmost moving span: what it meets first lies just ahead of it. */
    private Vec3 place(int c) {
      Spans a = moving.spans();
      double w = sign > 0 ? a.high(a.from(c)) : a.low(a.to(c) - 1);
      Vec3 local = new Vec3(grid.u(c % grid.across()), grid.v(c / grid.across()), w);
      return moving.frame().toWorld(local);
    }
  }
}
