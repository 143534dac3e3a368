package org.castwright.advice;

import java.util.List;
import java.util.Locale;
import java.util.function.DoublePredicate;
import java.util.function.DoubleUnaryOperator;
import org.castwright.geom.Vec3;
import org.castwright.heat.FreezeShut;
import org.castwright.heat.Setting;
import org.castwright.material.Material;
import org.castwright.pour.ThinPlaces;

/** Whether a melt freezes in the gate or in thin places before the casting is full. */
final class FreezeAdvice {

  /** Poured hotter than this a material of unknown figures may be a melt, °C. */
  private static final double WARM = 40;

  /** No gate is wider, and no slit needs to be, mm. */
  private static final double WIDEST = 50;

  /** Depth of a slit that the material should still fill, mm. */
  private static final double SLIT = 20;

  /** Halvings of a search, to far less than a printer shows. */
  private static final int HALVINGS = 30;

  /** Bores and warmths are told in steps of this, mm or °C. */
  private static final double STEP = 0.5;

  /**
   * Share of the time to freeze after which the head over a slit counts. Where the level rises
   * evenly that head is the mean over the creep in a gap that narrows with the square root of time:
   * {@code ∫u(1−√u)²du / ∫(1−√u)²du}.
   */
  private static final double MEAN_HEAD = 0.2;

  private final PourJob job;
  private final FlowAdvice flow;
  private final List<String> reasons;
  private final List<String> notes;
  private final HeatFigures figures;
  private final double wallMm;
  private final FreezeShut.Chill chill;

  FreezeAdvice(PourJob job, FlowAdvice flow, List<String> reasons, List<String> notes) {
    this.job = job;
    this.flow = flow;
    this.reasons = reasons;
    this.notes = notes;
    figures = HeatFigures.of(job);
    wallMm = wallMm();
    chill = figures.material() == null ? null : chill(figures.airC());
  }

  /** The thinnest wall of the block's box round the casting, mm. */
  private double wallMm() {
    Vec3 low = job.casting().bounds().min().minus(job.block().bounds().min());
    Vec3 high = job.block().bounds().max().minus(job.casting().bounds().max());
    double least = Math.min(low.x(), Math.min(low.y(), low.z()));
    least = Math.min(least, Math.min(high.x(), Math.min(high.y(), high.z())));
    return Math.max(0, Math.min(least, job.sideWallMm()));
  }

  /** Null for what does not set by cooling or has a figure missing. */
  private FreezeShut.Chill chill(double moldC) {
    return figures.missing().isEmpty()
        ? FreezeShut.Chill.of(figures.material(), figures.wall(), moldC, wallMm)
        : null;
  }

  /** Whether times to freeze can be worked out. */
  boolean known() {
    return chill != null;
  }

  /** A slit is frozen through no sooner, s; needs {@link #known}. */
  double slitShutS(double gapMm) {
    return FreezeShut.of(FreezeShut.Shape.SLIT, gapMm, chill).shutS();
  }

  /**
   * The thinnest slit that fills to a depth before it freezes, mm; 0 when that is not known. Speed
   * and friction are taken one after the other.
   *
   * @param headMm over the slit so many seconds after the liquid came to it
   */
  double neededMm(double depthMm, DoubleUnaryOperator headMm) {
    return chill == null ? 0 : least(0, WIDEST, gap -> fills(gap, depthMm, headMm));
  }

  private boolean fills(double gap, double depth, DoubleUnaryOperator headMm) {
    FreezeShut shut = FreezeShut.of(FreezeShut.Shape.SLIT, gap, chill);
    double head = headMm.applyAsDouble(MEAN_HEAD * shut.shutS());
    double creep = ThinPlaces.creepS(gap, depth, head, flow.fluid()) / shut.passesS(true);
    return creep + ThinPlaces.runS(depth, head) / shut.passesS(false) <= 1;
  }

  /**
   * The gate; null without one, for what does not set by cooling, and where figures are missing.
   */
  PourAdvice.Freezing gate(PourAdvice.Flow f) {
    if (f == null || f.headMm() <= 0) {
      return null;
    }
    if (chill == null) {
      missing();
      return null;
    }
    boolean friction = !f.regime().equals("orifice");
    FreezeShut shut = FreezeShut.of(FreezeShut.Shape.BORE, f.boreMm(), chill);
    double passes = shut.passesS(friction);
    double fill = f.fillS() == null ? Double.NaN : flow.fillHighS(f.boreMm());
    String gate =
        Double.isNaN(fill)
            ? "unknown"
            : fill <= passes ? "open" : fill <= shut.shutS() ? "narrows" : "shuts";
    boolean late = gate.equals("narrows") || gate.equals("shuts");
    PourAdvice.Freezing out =
        new PourAdvice.Freezing(
            gate,
            figures.airC(),
            Numbers.significant(shut.shutS(), 3),
            Numbers.significant(passes, 3),
            Numbers.significant(fill, 3),
            late ? neededMm(f.boreMm(), friction) : null,
            late ? neededMoldC(f.boreMm(), friction, fill) : null,
            Double.isNaN(fill) ? null : Numbers.significant(neededMm(SLIT, s -> f.headMm()), 3));
    if (late) {
      (gate.equals("shuts") ? reasons : notes).add(words(out));
    }
    return out;
  }

  private Double neededMm(double bore, boolean friction) {
    double needed =
        least(
            bore,
            WIDEST,
            d ->
                flow.fillHighS(d)
                    <= FreezeShut.of(FreezeShut.Shape.BORE, d, chill).passesS(friction));
    return needed < WIDEST ? (Double) (Math.ceil(needed / STEP) * STEP) : null;
  }

  private Double neededMoldC(double bore, boolean friction, double fill) {
    double soft = figures.wall().limitC().low();
    double most = Math.min(soft, figures.material().solidusC().low());
    double needed =
        least(
            figures.airC(),
            most,
            c -> fill <= FreezeShut.of(FreezeShut.Shape.BORE, bore, chill(c)).passesS(friction));
    double told = Math.ceil(needed / STEP) * STEP;
    return told < most ? (Double) told : null;
  }

  /** The least value for which a test holds that holds for all greater ones, or the greatest. */
  private static double least(double from, double to, DoublePredicate test) {
    double low = from;
    double high = to;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (test.test(middle)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high;
  }

  private String words(PourAdvice.Freezing f) {
    Material m = job.material();
    String hot =
        m.pourC().isEmpty()
            ? ""
            : String.format(
                Locale.ROOT, " Pour at its hot end, %.0f °C.", m.pourC().get(m.pourC().size() - 1));
    String wider =
        f.neededMm() == null
            ? "a wider gate alone is not sure to help"
            : String.format(Locale.ROOT, "a gate of %.1f mm stays open", f.neededMm());
    String warmer =
        f.neededMoldC() == null
            ? "a warmer mold alone is not sure to help"
            : String.format(
                Locale.ROOT, "this one stays open in a mold of %.1f °C", f.neededMoldC());
    return String.format(
        Locale.ROOT,
        "The gate may freeze %s before the casting is full: in a mold of %.0f °C it can shut after"
            + " %.3g s and lets through what %.3g s of full flow do, but filling takes up to %s; %s,"
            + " %s.%s Pour without a pause.",
        f.gate().equals("shuts") ? "shut" : "too narrow",
        f.moldC(),
        f.closedS(),
        f.passesS(),
        f.fillS() == null ? "no end" : String.format(Locale.ROOT, "%.3g s", f.fillS()),
        wider,
        warmer,
        hot);
  }

  private void missing() {
    boolean sets =
        figures.material() != null
            && (figures.material().setting() == Setting.FREEZING
                || figures.material().setting() == Setting.COOLING);
    List<Double> pour = job.material().pourC();
    boolean warm =
        !pour.isEmpty() && pour.get(0) >= WARM && job.material().workingTimeMin() == null;
    if (sets || (figures.material() == null && warm)) {
      notes.add(
          "Whether the gate stays open while it fills is not worked out: "
              + (figures.material() == null
                  ? "no thermal figures of " + job.material().name() + " are known."
                  : "the table does not know " + String.join(", ", figures.missing()) + "."));
    }
  }
}
