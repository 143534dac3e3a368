package org.castwright.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.castwright.survey.Lanes;

/**
 * Which of several sets of equally many pulls is the best to work with. The first that differs
 * decides: what stays caught; a pair of opposite pulls in it; the surface that leans under a little
 * in every pull that frees it, as walls do along which a pull almost runs; the shaky surface, that
 * is what would be caught if the pulls were turned a little: walls and facets leaning under, freed
 * by no two opposite pulls; the share of surface with less than the nominal draft, in steps of five
 * percent; then, for the few sets that lead so far, the number of bodies and the size of the
 * smallest. Caught and shaky surface differ when one is twice the other, beginning with a quarter
 * of the tolerance.
 */
final class Preference {

  private static final double QUARTERS = 4;
  private static final double DRAFT_STEPS = 20;
  // sine of 2 degrees, the nominal draft (common practice, no source)
  private static final double DRAFT_SINE = 0.0348994967;
  // sine of a quarter of a degree, which the turn test turns by
  private static final double SHAKY_SINE = 0.0043633093;
  // sine of three hundredths of a degree, as exact as models draw their walls
  private static final double UNDER_SINE = 0.0005;
  private static final double NOT_FREE = -2;
  // so many sets have their bodies counted
  private static final int LEADERS = 10;

  private final Trial trial;
  private final CoverTolerance tolerance;
  private final Bodies bodies;

  Preference(Trial trial, CoverTolerance tolerance, Bodies bodies) {
    this.trial = trial;
    this.tolerance = tolerance;
    this.bodies = bodies;
  }

  /** A set with the order its pulls are best taken in. */
  static final class Chosen {
    private final int[] set;
    private final PullOrder order;

    private Chosen(int[] set, PullOrder order) {
      this.set = set;
      this.order = order;
    }

    int[] set() {
      return set.clone();
    }

    PullOrder order() {
      return order;
    }
  }

  private record Rated(List<Integer> set, int pairs, int caught, int under, int shaky, int draft) {

    int[] columns() {
      return set.stream().mapToInt(Integer::intValue).toArray();
    }
  }

  /** The best of some sets; of equals the first. */
  Chosen best(List<int[]> sets) {
    Rated[] each = new Rated[sets.size()];
    Lanes.run(
        each.length, trial.threads(), () -> this, (own, i) -> each[i] = own.rate(sets.get(i)));
    List<Rated> rated = new ArrayList<>(List.of(each));
    Comparator<Rated> order =
        Comparator.comparingInt(Rated::caught)
            .thenComparingInt(Rated::pairs)
            .thenComparingInt(Rated::under)
            .thenComparingInt(Rated::shaky)
            .thenComparingInt(Rated::draft);
    rated.sort(order);
    Chosen best = null;
    for (int i = 0; i < rated.size() && i < LEADERS; i++) {
      if (order.compare(rated.get(0), rated.get(i)) == 0) {
        int[] set = rated.get(i).columns();
        PullOrder o = bodies.best(trial.directions(set));
        if (best == null || o.betterThan(best.order)) {
          best = new Chosen(set, o);
        }
      }
    }
    return best;
  }

  private Rated rate(int[] set) {
    Caught left = trial.sum(trial.left(set));
    double undrafted = 0;
    double under = 0;
    double shaky = 0;
    Samples samples = trial.samples();
    for (int s = samples.cells(); s < samples.count(); s++) {
      double sine = draft(set, s);
      if (sine < DRAFT_SINE && sine > NOT_FREE) {
        undrafted += samples.weight(s);
        under += sine < -UNDER_SINE ? samples.weight(s) : 0;
        shaky += sine < SHAKY_SINE && !freeBothWays(set, s) ? samples.weight(s) : 0;
      }
    }
    double caught =
        Math.max(
            share(left.areaMm2(), tolerance.areaMm2()),
            share(left.volumeMm3(), tolerance.volumeMm3()));
    return new Rated(
        Arrays.stream(set).boxed().toList(),
        hasPair(set) ? 0 : 1,
        doublings(caught),
        doublings(share(under, tolerance.areaMm2())),
        doublings(share(shaky, tolerance.areaMm2())),
        (int) (DRAFT_STEPS * undrafted / trial.surface()));
  }

  /** How often a quarter doubles to reach a share, 0 up to a quarter. */
  private static int doublings(double share) {
    return Math.max(0, Math.getExponent(QUARTERS * share) + 1);
  }

  /** Whether a pull and its opposite free a sample: turned, one of them still does. */
  private boolean freeBothWays(int[] set, int s) {
    for (int j : set) {
      for (int i : set) {
        if (i == (j ^ 1) && trial.free(i, s) && trial.free(j, s)) {
          return true;
        }
      }
    }
    return false;
  }

  private static double share(double value, double limit) {
    return value == 0 ? 0 : value / limit;
  }

  private static boolean hasPair(int[] set) {
    int[] sorted = set.clone();
    Arrays.sort(sorted);
    for (int i = 1; i < sorted.length; i++) {
      if (sorted[i] % 2 == 1 && sorted[i - 1] == sorted[i] - 1) {
        return true;
      }
    }
    return false;
  }

  /** The sine of the best draft at a facet's sample among the pulls that free it, or NOT_FREE. */
  private double draft(int[] set, int s) {
    double best = NOT_FREE;
    for (int j : set) {
      if (trial.free(j, s)) {
        double sine = trial.lean().sine(trial.samples().id(s), trial.direction(j));
        best = Math.max(best, sine);
      }
    }
    return best;
  }

  /** The set with one more column, the one that gives most surface its nominal draft. */
  int[] grown(int[] set) {
    Samples samples = trial.samples();
    double[] gain = new double[trial.columns()];
    for (int s = samples.cells(); s < samples.count(); s++) {
      if (draft(set, s) < DRAFT_SINE) {
        for (int j = 0; j < gain.length; j++) {
          if (draft(new int[] {j}, s) >= DRAFT_SINE) {
            gain[j] += samples.weight(s);
          }
        }
      }
    }
    int best = -1;
    for (int j = 0; j < gain.length; j++) {
      boolean used = false;
      for (int i : set) {
        used |= i == j;
      }
      if (!used && (best < 0 || gain[j] > gain[best])) {
        best = j;
      }
    }
    int[] out = Arrays.copyOf(set, set.length + 1);
    out[set.length] = best;
    return out;
  }
}
