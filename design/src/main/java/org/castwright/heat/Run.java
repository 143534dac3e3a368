package org.castwright.heat;

import java.util.BitSet;
import org.castwright.progress.Progress;

/** One run: a grid, the figures of one corner, and the time until the casting can leave. */
final class Run {

  /**
   * Error of one step as a share of what a cell gives off on its whole way, root mean square. A
   * tenth of it changes the time to demold a bunny of 100 mm by 0.15 % in ice, alloy or wax.
   */
  private static final double STEP_ERROR = 5e-3;

  /**
   * The same for mixes, whose last share sets slowly near room temperature. A fifth of it changes
   * the time to demold the same bunny of deep-pour epoxy by 0.9 %.
   */
  private static final double REACTION_STEP_ERROR = 5e-4;

  /**
   * Most that the reaction may warm a cell in a step, K. A fifth of it changes the peak in the same
   * bunny by 0.2 K of 240 in epoxy that runs away, and the time to demold, which hangs on what
   * stays unset in its coldest tips, by 7 %; in polyurethane both by less than 0.5 %.
   */
  private static final double REACTION_RISE_K = 10;

  private static final double M_PER_MM = 1e-3;

  private final double longestS;
  private final double softC;
  private final Simulation simulation;
  private final Diffusion diffusion;
  private final Reaction reaction;
  private final Voxels voxels;
  private final BitSet channels;
  private final Watch watch;
  private final WallWatch wall;
  private Double demoldS;

  Run(
      Voxels voxels,
      BitSet channels,
      ThermalMaterial casting,
      MoldMaterial mold,
      Ingredients ingredients,
      HeatOptions options,
      Crew crew) {
    this.voxels = voxels;
    this.channels = channels;
    this.longestS = options.longestS();
    this.softC = casting.softensC() == null ? Double.POSITIVE_INFINITY : casting.softensC().low();
    Substance[] s = ingredients.substances();
    double[] heat = new double[voxels.kind.length];
    for (int c = 0; c < heat.length; c++) {
      int kind = voxels.kind[c];
      heat[c] =
          kind == Voxels.AIR
              ? 0
              : s[kind].heat(kind == Voxels.CASTING ? ingredients.pourC() : ingredients.moldC());
    }
    double rise = ingredients.reactionPerM3() / s[Voxels.CASTING].solidHeat();
    double coldest = Math.min(options.airC(), ingredients.moldC());
    double range = Math.max(1, ingredients.pourC() + rise - coldest);
    Conductances conductances = new Conductances(voxels, s, ingredients.surfaces());
    Curves curves = new Curves(s, options.airC(), range);
    diffusion = new Diffusion(voxels, curves, conductances, heat, crew);
    reaction =
        ingredients.kinetics() == null
            ? null
            : new Reaction(voxels, ingredients.kinetics(), ingredients.reactionPerM3(), rise);
    simulation =
        new Simulation(
            diffusion,
            conductances,
            reaction,
            (reaction == null ? STEP_ERROR : REACTION_STEP_ERROR) * range,
            REACTION_RISE_K,
            !s[Voxels.CASTING].oneConductivity(),
            crew);
    wall =
        new WallWatch(
            voxels, conductances, mold.limitC().low(), ingredients.contactC(), settled(s));
    watch = new Watch(voxels, wall, crew);
  }

  /** From then on heat has come further into the wall than a cell, s. */
  private double settled(Substance[] s) {
    Cells cells = voxels.cells;
    double edge = Math.max(cells.dx(), Math.max(cells.dy(), cells.dz())) * M_PER_MM;
    return edge * edge * s[Voxels.WALL].solidHeat() / s[Voxels.WALL].solidK();
  }

  /** Runs until the casting can leave the mold or time is over. */
  void finish(Progress progress) {
    look(0);
    while (demoldS == null && simulation.timeS() < longestS) {
      progress.at("heat", watch.setShare());
      simulation.step(longestS - simulation.timeS());
      look(simulation.stepS());
    }
    progress.at("heat", 1);
  }

  private void look(double stepS) {
    double now = simulation.timeS();
    Watch.Measure measure =
        reaction == null
            ? new Watch.Measure(diffusion.before(), diffusion.heat(), 0, -1)
            : new Watch.Measure(reaction.before(), reaction.share(), Ingredients.DEMOLD_SHARE, 1);
    watch.look(now, stepS, diffusion.heat(), diffusion.celsius(), measure);
    if (watch.allSet() && watch.hottestC() <= softC) {
      double set = latest();
      double cool =
          softC == Double.POSITIVE_INFINITY ? 0 : now - stepS + watch.cooledWhen(softC) * stepS;
      demoldS = Math.max(set, cool);
    }
  }

  private double latest() {
    double t = 0;
    for (float s : watch.setS()) {
      t = s > t ? s : t;
    }
    return t;
  }

  /** Time to demold, s, or null when it is beyond the longest time. */
  Double demoldS() {
    return demoldS;
  }

  /** Cells of what was poured that belong to channels. */
  BitSet channels() {
    return channels;
  }

  Watch watch() {
    return watch;
  }

  HeatResult.Wall wall(String limit) {
    return wall.result(limit);
  }

  /** The cell that set last. */
  HeatResult.Place last() {
    float[] t = watch.setS();
    int last = -1;
    for (int c = 0; c < t.length; c++) {
      if (!Float.isNaN(t[c]) && (last < 0 || t[c] > t[last])) {
        last = c;
      }
    }
    return HeatResult.Place.of(voxels.cells.middle(last));
  }

  int steps() {
    return simulation.steps();
  }

  long sweeps() {
    return simulation.sweeps();
  }
}
