package org.castwright.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.advice.PourAdvice;
import org.castwright.material.Material;

/** The pour in sentences, for the job sheet and the command line. */
public final class PourSheet {

  private PourSheet() {}

  /** What happens between the pour and the opening; what speaks against it first. */
  public static List<String> lines(PourAdvice a, Material m) {
    List<String> out = new ArrayList<>();
    a.reasons().forEach(r -> out.add("LOOK OUT: " + r));
    fill(a.fill(), out);
    flow(a.flow(), out);
    out.addAll(freezing(a.freezing()));
    slit(a.freezing(), out);
    detail(a.detail(), out);
    pressure(a.pressure(), out);
    walls(a.walls(), out);
    size(a.size(), m, out);
    out.addAll(HeatSheet.lines(a.heat()));
    a.notes().forEach(out::add);
    return out;
  }

  private static void fill(PourAdvice.Fill f, List<String> out) {
    String rest = f.restMm3() < 0.5 ? "" : say("; small pockets hold %.0f mm³ in all", f.restMm3());
    out.add(
        f.pockets().isEmpty()
            ? say("Filled level by level, no air stays (%d high place(s))%s.", f.roofPeaks(), rest)
            : say("Filled level by level, air stays in %d place(s)%s.", f.pockets().size(), rest));
  }

  private static void flow(PourAdvice.Flow f, List<String> out) {
    if (f == null || f.fillS() == null) {
      return;
    }
    out.add(
        say(
            "Gate kept full (%.1f mm bore, %.0f mm head): %.3g ml/s at first, full after %s (%s to %s"
                + " by the range of viscosity); %s rules the flow.",
            f.boreMm(),
            f.headMm(),
            f.mlPerS(),
            HeatSheet.time(f.fillS()),
            HeatSheet.time(f.fillLowS()),
            HeatSheet.time(f.fillHighS()),
            f.regime().equals("laminar") ? "friction" : "the liquid's own speed"));
    if (f.ventHeadMm() != null) {
      out.add(say("The vents' back pressure is %.2g mm of head.", f.ventHeadMm()));
    }
    if (f.thinnestSlitMm() != null) {
      out.add(
          say(
              "Webs thinner than about %.2g mm and 20 mm deep do not fill in a third of the working"
                  + " time.",
              f.thinnestSlitMm()));
    }
  }

  /** Whether the gate stays open; what else is said of it stands among the reasons and notes. */
  private static List<String> freezing(PourAdvice.Freezing f) {
    if (f == null || f.gate().equals("narrows") || f.gate().equals("shuts")) {
      return List.of();
    }
    String mold = say("in a mold of %.0f °C", f.moldC());
    if (f.closedS() == null) {
      return List.of("The gate stays open: nothing freezes in it " + mold + ".");
    }
    String shut =
        say("liquid that stands in it %s is not frozen shut before %.3g s", mold, f.closedS());
    return List.of(
        f.gate().equals("unknown")
            ? "How long filling takes is not known; the gate: " + shut + "."
            : say(
                "The gate stays open long enough: %s, and while it narrows it lets through what"
                    + " %.3g s of full flow do; filling takes up to %.3g s.",
                shut, f.passesS(), f.fillS()));
  }

  private static void slit(PourAdvice.Freezing f, List<String> out) {
    if (f != null && f.thinnestSlitMm() != null) {
      out.add(
          say(
              "Webs thinner than about %.2g mm and 20 mm deep may freeze before they are full.",
              f.thinnestSlitMm()));
    }
  }

  private static void detail(PourAdvice.Detail d, List<String> out) {
    String liquid =
        d.liquidMm() == null
            ? "; the liquid's surface tension is not known"
            : say(
                "; a liquid that does not wet enters nothing narrower than %.2g mm at the top",
                d.liquidMm());
    out.add(say("The mold's print shows nothing finer than %.2g mm%s.", d.printMm(), liquid));
    if (d.webs() != null && d.webs().isEmpty()) {
      out.add("No web of the casting is too thin or deep to fill.");
    }
  }

  private static void pressure(PourAdvice.Pressure p, List<String> out) {
    StringBuilder loads = new StringBuilder();
    for (PourAdvice.PieceLoad l : p.pieces()) {
      loads.append(say("%s%s %.1f N", loads.isEmpty() ? "" : ", ", l.piece(), l.openingN()));
      if (l.liftN() >= 0.05) {
        loads.append(say(" (lift %.1f N)", l.liftN()));
      }
    }
    out.add(
        say(
            "Highest pressure %.0f Pa. Force along the pulls when full: %s.",
            p.highestPa(), loads));
    String each =
        p.eachN() == null
            ? "."
            : say(", %.1f N for each of %d %ss.", p.eachN(), p.holdCount(), p.holds());
    out.add(
        say(
            "Hold the pieces together with at least %.1f N in all (safety %.0f)%s %.0f %% of it"
                + " belongs to the lower half.",
            p.closingN(), p.safety(), each, 100 * p.baseShare()));
    out.add(
        say(
            "A model of this shape held down in it would push up with %.2g N, less its own weight.",
            p.heldN()));
  }

  private static void walls(PourAdvice.Walls w, List<String> out) {
    double worst = 0;
    double thin = Double.POSITIVE_INFINITY;
    for (PourAdvice.Panel p : w.panels()) {
      worst = Math.max(worst, p.deflectionMm());
      thin = Math.min(thin, p.thicknessMm());
    }
    out.add(
        say(
            "Walls give by %.3f mm at most; %.1f mm would do for %.1f mm (%s), thinnest %.1f mm.",
            worst, w.neededMm(), w.allowedMm(), w.source(), thin));
  }

  private static void size(PourAdvice.Size s, Material m, List<String> out) {
    int k = 0;
    for (int i = 1; i < 3; i++) {
      k = s.wantedMm().get(i) > s.wantedMm().get(k) ? i : k;
    }
    String grade = s.isoGrade() == null ? "" : say(", like DCTG %d of ISO 8062-3", s.isoGrade());
    String din = s.dinMm() == null ? "" : say("; DIN 16742 TG6 would allow ±%.2f mm", s.dinMm());
    out.add(
        say(
            "The longest side ends at %.2f mm, %.2f to %.2f by the range of shrink (%.2f wanted)"
                + "%s%s.",
            s.expectedMm().get(k),
            s.lowMm().get(k),
            s.highMm().get(k),
            s.wantedMm().get(k),
            grade,
            din));
    if (s.lowMm().get(k).equals(s.highMm().get(k))) {
      out.add("No band for the shrink of " + m.name() + ": it was given as one value.");
    }
  }

  /** What to weigh, print and pay. */
  public static List<String> bench(PourAdvice a) {
    List<String> out = new ArrayList<>();
    PourAdvice.Bench b = a.bench();
    out.add(
        say(
            "Casting with gate and vents: %.1f cm³, %.3f kg; with 10 %% more %.3f kg.",
            b.pourMm3() / 1000, b.massKg(), b.withLossKg()));
    if (!b.mix().isEmpty()) {
      StringBuilder parts = new StringBuilder();
      for (PourAdvice.MixPart p : b.mix()) {
        parts.append(
            say(
                "%s%s %.0f g (%.0f ml)",
                parts.isEmpty() ? "" : ", ", p.name(), p.massG(), p.volumeMl()));
      }
      out.add("Mix for one, with 10 % more: " + parts + ".");
    }
    out.add(say("Surface to coat with release agent: %.0f cm².", b.wettedMm2() / 100));
    for (PourAdvice.PrintInfo p : b.print()) {
      out.add(
          say(
              "Print %s: about %.0f cm³ of plastic, %.2f kg, %.1f h (simple rates).",
              p.piece(), p.plasticMm3() / 1000, p.massKg(), p.hours()));
    }
    if (b.batches() != null && b.batches().castings() > 1) {
      out.add(
          say(
              "%d castings with %d mold(s): %d batch(es) of up to %d, %d round(s), about %s.",
              b.batches().castings(),
              b.batches().molds(),
              b.batches().batches(),
              b.batches().perBatch(),
              b.batches().rounds(),
              HeatSheet.time(60 * b.batches().minutes())));
    }
    if (b.cost() != null) {
      out.add(
          say("Cost by your prices: %.2f", b.cost().total())
              + (b.cost().unpriced().isEmpty()
                  ? "."
                  : "; without a price: " + String.join(", ", b.cost().unpriced()) + "."));
    }
    return out;
  }

  private static String say(String format, Object... args) {
    return String.format(Locale.ROOT, format, args);
  }
}
