package org.castwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Puts directions in order. Trapped volumes that differ by less than the pictures can tell are
 * equal, and the secondary measure decides among equals. "Equal" means both under the tie floor, or
 * within two percent of the least.
 */
final class Shortlist {

  /**
   * Trapped volumes under this share of the model's own volume count as none: about what a lip
   * 0.001 mm wide all along a wall round a compact body of 100 mm would hold.
   */
  static final double TIE_SHARE = 2e-5;

  private static final double TIE_RATIO = 1.02;
  // a search that ends this close to an exact direction has found that direction, degrees
  private static final double SAME_DEGREES = 0.25;

  private final double floor;

  /**
   * @param volume of the model, mm³
   */
  Shortlist(double volume) {
    floor = TIE_SHARE * volume;
  }

  double floor() {
    return floor;
  }

  /** Items in order, best first; of equals the cheaper, then the earlier comes first. */
  <T> List<T> ordered(List<T> items, ToDoubleFunction<T> trapped, ToDoubleFunction<T> cost) {
    List<T> left = new ArrayList<>(items);
    List<T> out = new ArrayList<>();
    while (!left.isEmpty()) {
      double least = Double.POSITIVE_INFINITY;
      for (T t : left) {
        least = Math.min(least, trapped.applyAsDouble(t));
      }
      T best = null;
      for (T t : left) {
        boolean tied = trapped.applyAsDouble(t) <= limit(least);
        if (tied && (best == null || cost.applyAsDouble(t) < cost.applyAsDouble(best))) {
          best = t;
        }
      }
      out.add(best);
      left.remove(best);
    }
    return out;
  }

  private double limit(double least) {
    return Math.max(floor, TIE_RATIO * least);
  }

  /**
   * The best directions at least {@code apart} degrees from each other. A clean direction stands
   * for its neighbors where it is no worse than they; an exact one always stands for those within a
   * quarter of a degree.
   */
  List<Candidate> distinct(List<Candidate> pool, int count, double apart) {
    List<Candidate> order = ordered(pool, Candidate::trapped, Candidate::cost);
    List<Candidate> out = new ArrayList<>();
    for (int i = 0; i < order.size() && out.size() < count; i++) {
      Candidate c = cleaner(order.get(i), pool, apart);
      boolean near = false;
      for (Candidate o : out) {
        near |= o.degreesTo(c) < apart || o.degreesTo(order.get(i)) < apart;
      }
      if (!near) {
        out.add(c);
      }
    }
    return out;
  }

  private Candidate cleaner(Candidate c, List<Candidate> pool, double apart) {
    Candidate best = c;
    for (Candidate o : pool) {
      double angle = o.degreesTo(c);
      boolean stands =
          (o.origin().clean() && angle < apart && o.trapped() <= limit(c.trapped()))
              || (o.origin().exact() && angle < SAME_DEGREES);
      if (stands && o.origin().compareTo(best.origin()) < 0) {
        best = o;
      }
    }
    return best;
  }
}
