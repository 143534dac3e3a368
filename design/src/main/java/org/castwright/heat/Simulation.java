package org.castwright.heat;

/**
 * Cooling and setting in time. Each step is as long as its estimated error allows; reactions run
 * ahead of the flow of heat and give it their heat as an even source (second order).
 */
final class Simulation {

  /** More stages gain little and let rounding grow. */
  private static final int MOST_STAGES = 99;

  /** The first step, in explicit ones: temperatures jump at every surface. */
  private static final double FIRST = 2;

  private static final double SAFETY = 0.8;
  private static final double LEAST_CHANGE = 0.2;
  private static final double MOST_CHANGE = 1.7;

  /**
   * Power by which a step follows its error: between the third of a smooth second-order step and
   * the whole of one in which a freezing front passes from cell to cell.
   */
  private static final double FOLLOW = 0.5;

  private final Diffusion diffusion;
  private final Conductances conductances;
  private final Reaction reaction;
  private final Crew crew;
  private final double toleranceK;
  private final double largestRiseK;
  private final boolean changing;

  private double stableS;
  private double nextS;
  private double timeS;
  private double stepS;
  private int steps;
  private long sweeps;

  /**
   * @param reaction null for none
   * @param toleranceK error of one step, K, root mean square over the cells
   * @param largestRiseK most that a reaction may warm a cell in a step, K
   * @param changing whether conductances depend on temperature
   */
  Simulation(
      Diffusion diffusion,
      Conductances conductances,
      Reaction reaction,
      double toleranceK,
      double largestRiseK,
      boolean changing,
      Crew crew) {
    this.diffusion = diffusion;
    this.conductances = conductances;
    this.reaction = reaction;
    this.toleranceK = toleranceK;
    this.largestRiseK = largestRiseK;
    this.changing = changing;
    this.crew = crew;
    renew();
    nextS = FIRST * stableS;
  }

  private void renew() {
    conductances.update(diffusion.heat(), crew);
    stableS = conductances.stableStepS();
  }

  /** One step forward, no longer than this, s. */
  void step(double longestS) {
    if (changing && steps > 0) {
      renew();
    }
    double h = Math.min(nextS, longestS);
    while (true) {
      h = Math.min(h, Diffusion.longestS(MOST_STAGES, stableS));
      int stages = Diffusion.stages(h, stableS);
      double error = attempt(h, stages);
      sweeps += stages + 1;
      double change = SAFETY * StrictMath.pow(error, -FOLLOW);
      double next = h * Math.max(LEAST_CHANGE, Math.min(MOST_CHANGE, change));
      if (error <= 1) {
        nextS = h < longestS ? next : Math.max(next, nextS);
        break;
      }
      h = next;
    }
    stepS = h;
    timeS += h;
    steps++;
  }

  /** Tries a step; its error in terms of what is allowed. Above 1 nothing has changed. */
  private double attempt(double h, int stages) {
    double error = reaction == null ? 0 : reaction.run(diffusion, h, crew) / largestRiseK;
    if (error <= 1) {
      error = Math.max(error, diffusion.attempt(h, stages) / toleranceK);
    }
    if (error <= 1) {
      diffusion.accept();
    } else if (reaction != null) {
      reaction.back();
    }
    return error;
  }

  double timeS() {
    return timeS;
  }

  /** Length of the last step, s. */
  double stepS() {
    return stepS;
  }

  double[] celsius() {
    return diffusion.celsius();
  }

  double[] heat() {
    return diffusion.heat();
  }

  int steps() {
    return steps;
  }

  /** Passes over the grid so far. */
  long sweeps() {
    return sweeps;
  }
}
