package org.castwright.fill;

import java.util.ArrayList;
import java.util.List;
import org.castwright.progress.Progress;

/**
 * Liquid poured against its level, from the lowest place up. Air that is shut in is not filled.
 *
 * @param levelMm heights along up, rising
 * @param pouredMm3 volume of liquid at each
 */
public record LevelCurve(List<Double> levelMm, List<Double> pouredMm3) {

  /** Points of the curve, ends included. */
  static final int POINTS = 61;

  /** How many facets pass between two looks at whether to go on, less one. */
  private static final int LOOK = 4095;

  /** Up to a level, past the pockets of a sweep. */
  static LevelCurve of(Sweep sweep, double toMm, Progress progress) {
    double from = sweep.bottom();
    double[] level = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      level[i] = from + (toMm - from) * i / (POINTS - 1);
    }
    double[] above = new double[POINTS];
    double[] shut = new double[POINTS];
    double whole = 0;
    Branches b = sweep.branches();
    for (int f = 0; f < sweep.facets(); f++) {
      if ((f & LOOK) == 0) {
        progress.at("fill", Sweep.FALL + (1 - Sweep.FALL) * f / sweep.facets());
      }
      FacetColumn c = sweep.column(f);
      whole += c.above(from);
      int p = sweep.pocket(f);
      double seal = p == Branches.NONE ? 0 : b.seal(p);
      for (int i = 0; i < POINTS && level[i] < c.high(); i++) {
        above[i] += c.above(level[i]);
      }
      if (p != Branches.NONE) {
        double sealed = c.above(seal);
        for (int i = 0; i < POINTS; i++) {
          if (level[i] > seal) {
            shut[i] += sealed - c.above(level[i]);
          }
        }
      }
    }
    List<Double> levels = new ArrayList<>();
    List<Double> poured = new ArrayList<>();
    for (int i = 0; i < POINTS; i++) {
      levels.add(level[i]);
      poured.add(Math.max(0, whole - above[i] - shut[i]));
    }
    return new LevelCurve(List.copyOf(levels), List.copyOf(poured));
  }

  /** The level when so much has been poured, mm; the highest when it is more than fits. */
  public double levelAt(double volumeMm3) {
    int i = 1;
    while (i < levelMm.size() - 1 && pouredMm3.get(i) < volumeMm3) {
      i++;
    }
    double before = pouredMm3.get(i - 1);
    double step = pouredMm3.get(i) - before;
    double t = step > 0 ? (volumeMm3 - before) / step : 1;
    double low = levelMm.get(i - 1);
    return low + Math.max(0, Math.min(1, t)) * (levelMm.get(i) - low);
  }

  /** All that can be poured up to the highest level, mm³. */
  public double full() {
    return pouredMm3.get(pouredMm3.size() - 1);
  }
}
