package org.castwright.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.fill.Cavity;
import org.castwright.fill.FillLimits;
import org.castwright.fill.Filling;
import org.castwright.fill.Pocket;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.progress.Progress;

/** Works out the advice for a pour; the order of its parts. */
public final class Advisor {

  /** Service limit of printed PLA, °C (materials database; its glass transition is near 60). */
  private static final double PRINT_SOFTENS = 50;

  private final PourJob job;
  private final List<String> reasons = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  private Advisor(PourJob job) {
    this.job = job;
  }

  /**
   * The advice for a job.
   *
   * @throws Progress.CancelledException if the person has asked to stop
   */
  public static PourAdvice of(PourJob job, Progress progress) {
    return new Advisor(job).advise(progress);
  }

  private PourAdvice advise(Progress progress) {
    progress.at("pour", 0);
    Cavity cavity = Cavity.of(job.casting(), job.channels(), job.block());
    Filling filling = Filling.of(cavity, job.up(), FillLimits.DEFAULT, part(progress));
    pockets(filling);
    if (!airless(filling)) {
      notes.add(Tilt.words(cavity, job.up(), part(progress)));
    }
    progress.at("pour", 0.4);
    FlowAdvice flow = new FlowAdvice(job, filling, reasons, notes);
    PourAdvice.Flow flowed = flow.flow();
    FreezeAdvice freeze = new FreezeAdvice(job, flow, reasons, notes);
    PourAdvice.Freezing freezing = freeze.gate(flowed);
    progress.at("pour", 0.5);
    PourAdvice.Detail detail =
        new DetailAdvice(job, flow, freeze, reasons, notes).detail(filling.topMm());
    progress.at("pour", 0.6);
    HoldAdvice hold = new HoldAdvice(job, cavity);
    PourAdvice.Pressure pressure = hold.pressure(flow.surfaceMm());
    progress.at("pour", 0.8);
    PourAdvice.Walls walls = WallAdvice.of(job, pressure.highestPa(), notes);
    PourAdvice.Size size = SizeAdvice.of(job, reasons, notes);
    PourAdvice.Bench bench = BenchAdvice.of(job, filling, flowed, notes);
    progress.at("pour", 1);
    HeatInfo heat = new HeatAdvice(job, reasons, notes).heat(progress);
    warmth(heat);
    return new PourAdvice(
        job.material().id(),
        job.print().name().toLowerCase(Locale.ROOT),
        Numbers.list(job.up()),
        reasons.isEmpty(),
        List.copyOf(reasons),
        fill(filling, flow),
        flowed,
        freezing,
        detail,
        pressure,
        walls,
        size,
        bench,
        heat,
        List.copyOf(notes));
  }

  private static Progress part(Progress progress) {
    return (stage, share) -> progress.at("pour", 0.4 * share);
  }

  /** Whether no air stays and nothing runs out below the top. */
  static boolean airless(Filling f) {
    return f.pockets().isEmpty() && f.mouthMm() >= f.topMm() && !Double.isInfinite(f.mouthMm());
  }

  private void pockets(Filling f) {
    for (Pocket p : f.pockets()) {
      reasons.add(
          String.format(
              Locale.ROOT,
              "Air stays under the roof at %s: %.0f mm³, %.1f mm deep; no vent reaches it.",
              Numbers.place(p.top()),
              p.volumeMm3(),
              p.depthMm()));
    }
    if (Double.isInfinite(f.mouthMm())) {
      reasons.add("No channel reaches the outside: nothing can be poured in.");
    } else if (f.mouthMm() < f.topMm()) {
      reasons.add(
          String.format(
              Locale.ROOT,
              "A mouth lies %.1f mm below the highest place of the casting: the liquid runs out there"
                  + " first.",
              f.topMm() - f.mouthMm()));
    }
  }

  private void warmth(HeatInfo heat) {
    Material m = job.material();
    if (m.pourC().isEmpty()) {
      notes.add("The table knows no temperature for the pour.");
      return;
    }
    double hot = m.pourC().get(m.pourC().size() - 1);
    double cool = m.pourC().get(0);
    if (cool > 100) {
      reasons.add(
          String.format(
              Locale.ROOT,
              "It is poured at %.0f °C or more: no printed plastic mold stands that.",
              cool));
    } else if (heat == null && hot > PRINT_SOFTENS) {
      notes.add(
          String.format(
              Locale.ROOT,
              "Poured at up to %.0f °C: a printed mold of PLA softens near 60 °C and should not see"
                  + " more than %.0f °C for long: pour at the cool end, print in a plastic that"
                  + " stands the heat, or cast a silicone mold from it.",
              hot,
              PRINT_SOFTENS));
    }
  }

  private PourAdvice.Fill fill(Filling f, FlowAdvice flow) {
    boolean shut = Double.isInfinite(f.mouthMm());
    return new PourAdvice.Fill(
        f.peaks(),
        f.pockets().stream()
            .map(
                p ->
                    new PourAdvice.PocketInfo(
                        Numbers.list(round(p.top())),
                        Numbers.round(p.depthMm(), 3),
                        Numbers.round(p.volumeMm3(), 2)))
            .toList(),
        Numbers.round(f.restMm3(), 3),
        shut ? null : Numbers.round(f.mouthMm() - f.topMm(), 3),
        Numbers.round(f.curve().levelMm(), 3),
        Numbers.round(f.curve().pouredMm3(), 1),
        flow.times());
  }

  private static Vec3 round(Vec3 p) {
    return new Vec3(Numbers.round(p.x(), 3), Numbers.round(p.y(), 3), Numbers.round(p.z(), 3));
  }
}
