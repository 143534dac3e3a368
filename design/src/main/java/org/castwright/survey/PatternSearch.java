package org.castwright.survey;

import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;

/**
 * Walks from a direction downhill in trapped volume: six neighbors at a step's distance, the first
 * of them that is better, else half the step (Hooke, Jeeves, "Direct search", J. ACM 8(2), 1961).
 */
final class PatternSearch {

  /** First step, radians: half the distance between spread directions. */
  static final double FIRST_STEP = 0.07;

  /** A walk stops when the step is smaller than this, radians; 0.1 degrees. */
  static final double LAST_STEP = 0.002;

  private static final int NEIGHBORS = 6;
  private static final int MOST_MOVES = 12;

  private final Scorer scorer;
  private final int pixels;
  private final double enough;
  private int looks;
  private int heading;

  /**
   * @param enough trapped volume below which nothing is left to gain, mm³
   */
  PatternSearch(Scorer scorer, int pixels, double enough) {
    this.scorer = scorer;
    this.pixels = pixels;
    this.enough = enough;
  }

  /**
   * Walks with steps from {@code step} down to {@code last}.
   *
   * @param start where to start, its trapped volume measured with this search's pixels
   */
  Candidate from(Candidate start, double step, double last) {
    Candidate best = start;
    double s = step;
    int moves = 0;
    while (s >= last && best.trapped() > enough) {
      Candidate better = neighbor(best, s);
      if (better.equals(best) || ++moves > MOST_MOVES) {
        s /= 2;
        moves = 0;
      }
      best = better;
    }
    return best;
  }

  /** How many directions were looked along. */
  int looks() {
    return looks;
  }

  /** The first better neighbor, beginning with the heading that was better last; else the same. */
  private Candidate neighbor(Candidate at, double step) {
    Frame f = Frame.along(at.direction());
    for (int k = 0; k < NEIGHBORS; k++) {
      int turn = (heading + k) % NEIGHBORS;
      double a = 2 * Math.PI * turn / NEIGHBORS;
      Vec3 side = f.u().times(StrictMath.cos(a)).plus(f.v().times(StrictMath.sin(a)));
      Vec3 d = f.w().plus(side.times(step)).unit();
      double trapped = scorer.trapped(d, pixels);
      looks++;
      if (trapped < at.trapped()) {
        heading = turn;
        return new Candidate(d, Candidate.Origin.SEARCH, trapped, 0);
      }
    }
    return at;
  }
}
