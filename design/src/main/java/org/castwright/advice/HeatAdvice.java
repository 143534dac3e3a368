package org.castwright.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.heat.Chvorinov;
import org.castwright.heat.HeatOptions;
import org.castwright.heat.HeatResult;
import org.castwright.heat.HeatStudy;
import org.castwright.heat.MoldMaterial;
import org.castwright.heat.MoldWall;
import org.castwright.heat.Poured;
import org.castwright.heat.Setting;
import org.castwright.heat.ThermalMaterial;
import org.castwright.heat.ThermalTable;
import org.castwright.material.Material;
import org.castwright.progress.Progress;

/** How the casting cools or cures; what is not known of it is said. */
final class HeatAdvice {

  /** A feeder's modulus over the casting's; common practice, no source. */
  private static final double OUTLASTS = 1.2;

  /** A riser is about as high as it is wide; common practice, no source. */
  private static final double SLENDERNESS = 1;

  /** Cells of a fine look: alloy and ice, which are slowest, stay under a minute on two cores. */
  private static final int FINE_CELLS = 200_000;

  /** Points of the course that are reported. */
  private static final int POINTS = 61;

  private final PourJob job;
  private final List<String> reasons;
  private final List<String> notes;

  HeatAdvice(PourJob job, List<String> reasons, List<String> notes) {
    this.job = job;
    this.reasons = reasons;
    this.notes = notes;
  }

  /** Null when it was not asked for or cannot be known. */
  HeatInfo heat(Progress progress) {
    PourJob.Cooling asked = job.cooling();
    if (asked.fineness() == PourJob.Fineness.OFF) {
      return null;
    }
    HeatFigures figures = HeatFigures.of(job);
    if (!known(figures)) {
      return null;
    }
    ThermalMaterial material = figures.material();
    MoldMaterial wall = figures.wall();
    double air = figures.airC();
    HeatOptions options =
        (asked.fineness() == PourJob.Fineness.FINE
                ? HeatOptions.FINE.withCells(FINE_CELLS)
                : HeatOptions.COARSE)
            .inAirOf(air)
            .withThreads(asked.threads());
    try {
      HeatResult r =
          HeatStudy.of(
              new Poured(job.casting(), job.channels()),
              job.block().bounds(),
              material,
              made(wall),
              options,
              progress);
      addNotes(r);
      return info(r, material, wall, air);
    } catch (IllegalArgumentException e) {
      String why = e.getMessage();
      reasons.add(Character.toUpperCase(why.charAt(0)) + why.substring(1) + ".");
      return null;
    }
  }

  /** Says whose figures count, and what is not known of them. */
  private boolean known(HeatFigures f) {
    Material m = job.material();
    if (f.material() == null) {
      notes.add(
          "No thermal figures are known of "
              + m.name()
              + ": neither the time to the opening nor temperatures are worked out.");
      return false;
    }
    if (m.origin() != null) {
      notes.add(
          "Heat reckons with the thermal figures of "
              + ThermalTable.casting(m.origin().like()).name()
              + ", but for those that the table of your own states.");
    }
    List<String> missing = f.missing();
    if (!missing.isEmpty()) {
      notes.add(
          "The time to the opening and temperatures cannot be worked out: the table does not know "
              + String.join(", ", missing)
              + ".");
      notes.addAll(f.material().notes());
      return false;
    }
    if (job.cooling().airC() == null && f.material().airC() != null) {
      notes.add(
          String.format(
              Locale.ROOT,
              "Heat reckons with air of %.0f °C (%s).",
              f.airC(),
              f.material().airC().source()));
    }
    return true;
  }

  /** Filament prints have the infill and skins that their plastic is reckoned with. */
  private MoldWall made(MoldMaterial wall) {
    boolean hollow = wall.printed() && job.print() == PourJob.Print.FDM;
    return hollow ? new MoldWall(wall, BenchAdvice.FILL, BenchAdvice.SKIN) : MoldWall.full(wall);
  }

  private void addNotes(HeatResult r) {
    if (job.sideWallMm() < Double.POSITIVE_INFINITY) {
      notes.add(
          "Heat takes the block as a full box: where it follows the casting it cools sooner.");
    }
    notes.addAll(r.notes());
  }

  private HeatInfo info(HeatResult r, ThermalMaterial material, MoldMaterial wall, double air) {
    HeatInfo.Feed feed = feed(r, material);
    HeatInfo.Wall limit = wall(r, wall);
    judge(limit, wall);
    return new HeatInfo(
        job.cooling().fineness().name().toLowerCase(Locale.ROOT),
        Numbers.round(r.cellMm(), 3),
        r.setting().name().toLowerCase(Locale.ROOT),
        r.wallMaterial(),
        air,
        significant(r.demoldS()),
        significant(r.demoldFromS()),
        significant(r.demoldToS()),
        Numbers.round(r.peakC(), 1),
        r.peakToC() == null ? null : Numbers.round(r.peakToC(), 1),
        place(r.peakPlace()),
        Numbers.round(r.peakS(), 0),
        limit,
        place(r.last()),
        r.hotSpots().stream().map(h -> pool(h, feed)).toList(),
        feed,
        course(r.samples()));
  }

  private static Double significant(Double s) {
    return s == null ? null : Numbers.significant(s, 3);
  }

  private static List<Double> place(HeatResult.Place p) {
    return p == null
        ? null
        : List.of(Numbers.round(p.x(), 2), Numbers.round(p.y(), 2), Numbers.round(p.z(), 2));
  }

  private static HeatInfo.Wall wall(HeatResult r, MoldMaterial material) {
    HeatResult.Wall w = r.wall();
    double from = material.limitC().low();
    double to = material.limitC().high();
    String softens = w.peakC() > to ? "yes" : w.peakC() > from ? "may" : "no";
    return new HeatInfo.Wall(
        softens,
        Numbers.round(w.peakC(), 1),
        place(w.place()),
        from,
        to,
        material.limit(),
        w.overS() == null ? null : Numbers.round(w.overS(), 0),
        Numbers.round(w.overShare(), 3));
  }

  private void judge(HeatInfo.Wall w, MoldMaterial wall) {
    if (w.softens().equals("yes")) {
      reasons.add(
          String.format(
              Locale.ROOT,
              "The mold's inner wall comes to %.0f °C, past the %s of %s (%.0f °C): pour cooler,"
                  + " in layers, or make the mold of what stands the heat.",
              w.peakC(),
              w.limit(),
              wall.name(),
              w.limitToC()));
    }
  }

  private static HeatInfo.Pool pool(HeatResult.HotSpot h, HeatInfo.Feed feed) {
    Double sink =
        feed == null ? null : (Double) Math.max(0, h.cutOffMm3() * feed.shrinkPercent() / 100);
    return new HeatInfo.Pool(
        place(h.place()),
        h.inChannels(),
        Numbers.round(h.setS(), 0),
        Numbers.round(h.cutOffS(), 0),
        Numbers.round(h.cutOffMm3(), 0),
        sink == null ? null : (Double) Numbers.round(sink, 0));
  }

  private HeatInfo.Feed feed(HeatResult r, ThermalMaterial m) {
    if (r.setting() != Setting.FREEZING || m.liquidDensity() == null) {
      return null;
    }
    double shrink = 1 - m.liquidDensity().middle() / m.solidDensity().middle();
    double modulus = Chvorinov.modulusMm(job.casting());
    PourJob.Bore gate = job.bores().stream().filter(PourJob.Bore::gate).findFirst().orElse(null);
    // a long round bar has a quarter of its diameter
    Double bore = gate == null ? null : (Double) (gate.boreMm() / 4);
    return new HeatInfo.Feed(
        Numbers.round(100 * shrink, 2),
        Numbers.round(shrink * job.casting().volume(), 0),
        Numbers.round(modulus, 3),
        bore == null ? null : (Double) Numbers.round(bore, 3),
        !r.hotSpots().isEmpty() && r.hotSpots().stream().allMatch(HeatResult.HotSpot::inChannels),
        Numbers.round(Chvorinov.riserDiameterMm(OUTLASTS * modulus, SLENDERNESS), 1));
  }

  private static HeatInfo.Course course(List<HeatResult.Sample> all) {
    List<HeatResult.Sample> some = new ArrayList<>();
    int count = Math.min(POINTS, all.size());
    for (int i = 0; i < count; i++) {
      some.add(all.get(count == 1 ? 0 : (int) ((long) i * (all.size() - 1) / (count - 1))));
    }
    return new HeatInfo.Course(
        some.stream().map(s -> Numbers.round(s.timeS(), 1)).toList(),
        some.stream().map(s -> Numbers.round(s.setShare(), 4)).toList(),
        some.stream().map(s -> Numbers.round(s.hottestC(), 2)).toList(),
        some.stream().map(s -> Numbers.round(s.wallC(), 2)).toList());
  }
}
