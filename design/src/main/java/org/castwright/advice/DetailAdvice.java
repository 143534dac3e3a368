package org.castwright.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.castwright.batch.PrintRate;
import org.castwright.geom.Vec3;
import org.castwright.material.Figure;
import org.castwright.material.Quantity;
import org.castwright.pour.Fluid;
import org.castwright.pour.ThinPlaces;
import org.castwright.pour.Webs;

/** How fine the casting comes out, and which thin places of it the material does not enter. */
final class DetailAdvice {

  /** Finest detail of common resin printers, mm; common practice, no source. */
  private static final double RESIN_PRINT = 0.1;

  /** Webs this deep or less are looked for, mm. */
  private static final double DEEP = 60;

  /** Nothing thicker than this is a web, mm. */
  private static final double THICKEST = 5;

  /** Columns across the longest side. */
  private static final double COLUMNS = 150;

  /** Columns are no closer than a filament's line, mm. */
  private static final double CLOSEST = 0.45;

  /** Webs of which less than this does not fill are left to the filing, mm². */
  private static final double SMALLEST = 4;

  /** Less head than this is taken for as much, mm: the skin of the liquid bulges as high. */
  private static final double LEAST_HEAD = 3;

  private static final int MOST = 5;

  private final PourJob job;
  private final FlowAdvice flow;
  private final FreezeAdvice freeze;
  private final Fluid fluid;
  private final Double seconds;
  private final List<String> reasons;
  private final List<String> notes;

  DetailAdvice(
      PourJob job, FlowAdvice flow, FreezeAdvice freeze, List<String> reasons, List<String> notes) {
    this.job = job;
    this.flow = flow;
    this.freeze = freeze;
    this.fluid = flow.fluid();
    this.seconds = flow.websS();
    this.reasons = reasons;
    this.notes = notes;
  }

  /**
   * Works it out.
   *
   * @param topMm highest place of the casting along up
   */
  PourAdvice.Detail detail(double topMm) {
    Figure tension = job.material().figure(Quantity.SURFACE_TENSION);
    double head = Math.max(LEAST_HEAD, flow.surfaceMm() - topMm);
    Double liquid =
        tension == null
            ? null
            : Numbers.significant(
                ThinPlaces.finestMm(tension.high(), 1, job.material().liquidKgPerM3(), head), 2);
    return new PourAdvice.Detail(
        job.print() == PourJob.Print.FDM ? PrintRate.COMMON.lineMm() : RESIN_PRINT,
        liquid,
        webs(head));
  }

  private List<PourAdvice.WebInfo> webs(double head) {
    if (fluid == null || (seconds == null && !freeze.known())) {
      if (fluid != null) {
        notes.add("Whether thin places fill before they freeze is not worked out.");
      }
      return null;
    }
    double needs = Math.max(inTime(DEEP, head), freeze.neededMm(DEEP, s -> LEAST_HEAD));
    double than = Math.min(THICKEST, needs);
    double spacing = Math.max(CLOSEST, job.casting().bounds().longestSide() / COLUMNS);
    List<PourAdvice.WebInfo> out = new ArrayList<>();
    for (Webs.Web w : Webs.of(job.casting(), than, spacing)) {
      double height = w.place().dot(job.up());
      double inTime = inTime(w.depthMm(), head(w.place()));
      double cold = freeze.neededMm(w.depthMm(), s -> Math.max(LEAST_HEAD, flow.headMm(height, s)));
      double needed = Math.max(inTime, cold);
      if (w.areaThinner(needed) >= SMALLEST && needed > w.thicknessMm()) {
        out.add(
            new PourAdvice.WebInfo(
                Numbers.list(w.place()).stream().map(x -> Numbers.round(x, 2)).toList(),
                Numbers.round(w.thicknessMm(), 3),
                Numbers.round(w.depthMm(), 2),
                Numbers.round(w.areaMm2(), 1),
                Numbers.round(needed, 3)));
      }
    }
    out.sort(Comparator.comparingDouble(PourAdvice.WebInfo::thicknessMm));
    List<PourAdvice.WebInfo> some = out.subList(0, Math.min(MOST, out.size()));
    some.forEach(w -> reasons.add(words(w)));
    return List.copyOf(some);
  }

  /** The thinnest that fills to a depth in the time that there is; 0 for a melt. */
  private double inTime(double depthMm, double headMm) {
    return seconds == null ? 0 : ThinPlaces.thinnestMm(depthMm, headMm, seconds, fluid);
  }

  /** Over a web when the mold stands full, mm. */
  private double head(Vec3 place) {
    return Math.max(LEAST_HEAD, flow.surfaceMm() - place.dot(job.up()));
  }

  private String words(PourAdvice.WebInfo w) {
    List<Double> p = w.place();
    boolean late =
        w.thicknessMm() < inTime(w.depthMm(), head(new Vec3(p.get(0), p.get(1), p.get(2))));
    String what =
        String.format(
            Locale.ROOT,
            "A web of %.2g mm, %.0f mm deep, near (%.1f, %.1f, %.1f) ",
            w.thicknessMm(),
            w.depthMm(),
            p.get(0),
            p.get(1),
            p.get(2));
    return what
        + (late
            ? String.format(
                Locale.ROOT,
                "does not fill in a third of the working time: %.2g mm would.",
                w.neededMm())
            : String.format(
                Locale.ROOT,
                "may freeze before it is full, in as little as %.2g s: %.2g mm would fill, or a"
                    + " warmer mold, or a faster pour.",
                freeze.slitShutS(w.thicknessMm()),
                w.neededMm()));
  }
}
