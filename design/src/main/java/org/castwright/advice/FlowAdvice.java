package org.castwright.advice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.castwright.fill.Filling;
import org.castwright.geom.Vec3;
import org.castwright.material.Figure;
import org.castwright.material.Material;
import org.castwright.material.Quantity;
import org.castwright.pour.AirVent;
import org.castwright.pour.Fluid;
import org.castwright.pour.GateFlow;
import org.castwright.pour.Liquid;
import org.castwright.pour.ThinPlaces;

/** How fast the mold fills through its gate, kept full to the mouth. */
final class FlowAdvice {

  /** Tangent of half the funnel's opening angle of 60°: the cone belongs to no throat. */
  private static final double FUNNEL = Math.tan(Math.toRadians(30));

  /** Share of the working time that filling may take; common practice, no source. */
  private static final double SHARE = 1.0 / 3;

  /** Depth of a slit that the material should still fill, mm. */
  private static final double SLIT = 20;

  private static final double S_PER_MIN = 60;

  private final PourJob job;
  private final Filling filling;
  private final List<String> reasons;
  private final List<String> notes;
  private final PourJob.Bore gate;
  private final double mouth;
  private final double exit;
  private final List<Double> times = new ArrayList<>();

  FlowAdvice(PourJob job, Filling filling, List<String> reasons, List<String> notes) {
    this.job = job;
    this.filling = filling;
    this.reasons = reasons;
    this.notes = notes;
    gate = job.bores().stream().filter(PourJob.Bore::gate).findFirst().orElse(null);
    if (gate == null) {
      mouth = filling.topMm();
      exit = filling.topMm();
    } else {
      Vec3 outer = gate.axis().get(gate.axis().size() - 1);
      mouth = outer.dot(job.up());
      exit = gate.axis().get(0).dot(job.up());
    }
  }

  /** The free surface when the mold stands full, mm along up. */
  double surfaceMm() {
    return Math.max(mouth, filling.topMm());
  }

  /** Seconds for each level of the curve, null once nothing flows; empty without a gate. */
  List<Double> times() {
    return Collections.unmodifiableList(times);
  }

  /** What flows, null when its viscosity is not known. */
  Fluid fluid() {
    Material m = job.material();
    return m.viscosityPaS() == null ? null : fluid(m, m.viscosityPaS());
  }

  /** Seconds that thin places have to fill, null for a melt. */
  Double websS() {
    Double working = working(job.material());
    return working == null ? null : (Double) (SHARE * working);
  }

  PourAdvice.Flow flow() {
    if (gate == null) {
      return null;
    }
    double length = lengthMm(gate.boreMm());
    double head = mouth - exit;
    Material m = job.material();
    if (head <= 0) {
      reasons.add("The gate's mouth lies below its end in the casting: nothing runs in.");
      return new PourAdvice.Flow(
          round(head),
          gate.boreMm(),
          round(length),
          "stands",
          null,
          null,
          null,
          null,
          null,
          null,
          null,
          null);
    }
    Double working = working(m);
    if (m.viscosityPaS() == null) {
      notes.add("The table knows no viscosity of " + m.id() + ": no time to fill is worked out.");
      return new PourAdvice.Flow(
          round(head),
          gate.boreMm(),
          round(length),
          "unknown",
          null,
          null,
          null,
          null,
          null,
          working,
          null,
          null);
    }
    Figure range = m.figure(Quantity.VISCOSITY);
    Fluid fluid = fluid(m, m.viscosityPaS());
    GateFlow start = GateFlow.of(fluid, new GateFlow.Throat(gate.boreMm(), length, head));
    double fill = fill(fluid, gate.boreMm(), times);
    double low = range == null ? fill : fill(fluid(m, range.low()), gate.boreMm(), null);
    double high = fillHighS(gate.boreMm());
    judge(start, fill, working);
    return new PourAdvice.Flow(
        round(head),
        gate.boreMm(),
        round(length),
        start.regime().name().toLowerCase(Locale.ROOT),
        Numbers.significant(start.mlPerS(), 4),
        Numbers.significant(start.reynolds(), 3),
        Numbers.significant(fill, 4),
        Numbers.significant(low, 4),
        Numbers.significant(high, 4),
        working,
        vents(start, fluid),
        working == null
            ? null
            : Numbers.significant(ThinPlaces.thinnestMm(SLIT, head, SHARE * working, fluid), 3));
  }

  /** Of the narrow part of a gate of some bore, which a cone widens to the mouth as it is. */
  private double lengthMm(double bore) {
    double funnel = Math.max(0, gate.mouthMm() - bore) / 2 / FUNNEL;
    return Math.max(bore, gate.lengthMm() - funnel);
  }

  /** Seconds until the casting is full through a gate of some bore, at the highest viscosity. */
  double fillHighS(double boreMm) {
    Figure range = job.material().figure(Quantity.VISCOSITY);
    double viscosity = range == null ? job.material().viscosityPaS() : range.high();
    return fill(fluid(job.material(), viscosity), boreMm, null);
  }

  /**
   * Head of the liquid over a height some time after it came by, mm: as high as the level has risen
   * until the casting is full, then up to the mouth.
   */
  double headMm(double heightMm, double afterS) {
    List<Double> level = filling.curve().levelMm();
    double due = Double.NaN;
    for (int i = 1; i < times.size(); i++) {
      if (times.get(i) == null) {
        return Double.isNaN(due) ? 0 : level.get(i - 1) - heightMm;
      }
      double rise = level.get(i) - level.get(i - 1);
      double took = times.get(i) - times.get(i - 1);
      if (Double.isNaN(due) && level.get(i) >= heightMm) {
        double way = Math.max(0, heightMm - level.get(i - 1));
        due = times.get(i - 1) + took * way / rise + afterS;
      }
      if (due < times.get(i)) {
        return level.get(i) - rise * (times.get(i) - due) / took - heightMm;
      }
      if (level.get(i) >= filling.topMm()) {
        break;
      }
    }
    return surfaceMm() - heightMm;
  }

  private void judge(GateFlow start, double fill, Double working) {
    if (fluidStands(start, fill)) {
      reasons.add(
          "The head in the gate does not overcome the material's stiffness all the way up: it"
              + " stands before the casting is full. Widen the gate, or vibrate.");
    } else if (working != null && fill > working) {
      reasons.add(
          String.format(
              Locale.ROOT,
              "Filling takes about %.0f s, longer than the shortest usual working time of %.0f s.",
              fill,
              working));
    } else if (working != null && fill > SHARE * working) {
      notes.add(
          String.format(
              Locale.ROOT,
              "Filling takes about %.0f s, more than a third of the shortest usual working time.",
              fill));
    }
    if (job.material().figure(Quantity.YIELD_STRESS) != null) {
      notes.add("The material has a yield stress: tap or vibrate the mold while it fills.");
    }
  }

  private static boolean fluidStands(GateFlow start, double fill) {
    return start.regime() == GateFlow.Regime.STANDS || Double.isInfinite(fill);
  }

  private static Fluid fluid(Material m, double viscosity) {
    Figure yield = m.figure(Quantity.YIELD_STRESS);
    return new Fluid(m.liquidKgPerM3(), viscosity, yield == null ? 0 : yield.usual());
  }

  private static Double working(Material m) {
    List<Double> w = m.workingTimeMin();
    return w == null || w.isEmpty() ? null : S_PER_MIN * w.get(0);
  }

  /** Until the level reaches the casting's top; the head falls once the gate's end is covered. */
  private double fill(Fluid fluid, double bore, List<Double> at) {
    double length = lengthMm(bore);
    List<Double> level = filling.curve().levelMm();
    List<Double> poured = filling.curve().pouredMm3();
    double sum = 0;
    double full = Double.NaN;
    for (int i = 0; i < level.size(); i++) {
      if (i > 0) {
        double middle = (level.get(i) + level.get(i - 1)) / 2;
        double head = mouth - Math.max(exit, middle);
        double volume = poured.get(i) - poured.get(i - 1);
        if (volume > 0) {
          sum +=
              head > 0
                  ? GateFlow.of(fluid, new GateFlow.Throat(bore, length, head)).secondsFor(volume)
                  : Double.POSITIVE_INFINITY;
        }
      }
      if (at != null) {
        at.add(Numbers.significant(sum, 4));
      }
      if (Double.isNaN(full) && level.get(i) >= filling.topMm()) {
        full = sum;
      }
    }
    return Double.isNaN(full) ? sum : full;
  }

  private Double vents(GateFlow flow, Fluid fluid) {
    List<PourJob.Bore> vents = job.bores().stream().filter(b -> !b.gate()).toList();
    if (vents.isEmpty()) {
      notes.add("There is no vent: pour a thin stream, so that the air leaves beside it.");
      return null;
    }
    // vents in parallel breathe in proportion to r⁴/length
    double open = 0;
    for (PourJob.Bore b : vents) {
      open += 1 / AirVent.backPressurePa(b.boreMm(), Math.max(b.boreMm(), b.lengthMm()), 1);
    }
    return Numbers.significant(Liquid.headMm(fluid.densityKgPerM3(), flow.mlPerS() / open), 3);
  }

  private static double round(double mm) {
    return Numbers.round(mm, 3);
  }
}
