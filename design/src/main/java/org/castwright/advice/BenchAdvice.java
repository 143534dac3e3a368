package org.castwright.advice;

import java.util.ArrayList;
import java.util.List;
import org.castwright.batch.Batches;
import org.castwright.batch.Cost;
import org.castwright.batch.Mix;
import org.castwright.batch.PrintRate;
import org.castwright.fill.Filling;
import org.castwright.material.Material;

/** What to weigh, print and pay. */
final class BenchAdvice {

  /** Lost in cup and spill: 5 to 10 %, the upper end (supplier's quantity calculator). */
  private static final double LOSS = 0.10;

  /** Four lines of a 0.4 mm nozzle; common practice, no source. */
  static final double SKIN = 4 * PrintRate.COMMON.lineMm();

  /** Share of a piece's inside that is printed; common practice, no source. */
  static final double FILL = 0.2;

  /** PLA, kg/m³: the middle of 1220 to 1260 (materials database). */
  private static final double PLA = 1240;

  /** Common photopolymer, kg/m³; common practice, no source. */
  private static final double PHOTOPOLYMER = 1150;

  /** Layer and time for each of a resin printer; common practice, no source. */
  private static final double RESIN_LAYER = 0.05;

  private static final double RESIN_SECONDS = 8;

  private static final double MM3_PER_M3 = 1e9;
  private static final double S_PER_MIN = 60;

  private BenchAdvice() {}

  static PourAdvice.Bench of(
      PourJob job, Filling filling, PourAdvice.Flow flow, List<String> notes) {
    Material m = job.material();
    double volume = filling.volumeMm3();
    double mass = volume / MM3_PER_M3 * m.density().kgPerM3();
    double more = mass * (1 + LOSS);
    List<PourAdvice.PrintInfo> prints = prints(job);
    return new PourAdvice.Bench(
        Numbers.round(volume, 3),
        Numbers.round(mass, 6),
        Numbers.round(more, 6),
        mix(m, more * 1000, notes),
        m.mix() == null ? null : m.mix().words(),
        Numbers.round(job.casting().area(), 1),
        m.release() == null ? null : m.release().words(),
        prints,
        batches(job, flow, notes),
        cost(job, more, prints));
  }

  private static List<PourAdvice.MixPart> mix(Material m, double grams, List<String> notes) {
    if (m.mix() == null) {
      return List.of();
    }
    if (m.mix().parts().isEmpty()) {
      notes.add("Suppliers differ in the ratio of the mix: take your label's. " + m.mix().words());
      return List.of();
    }
    List<Mix.Component> parts =
        m.mix().parts().stream()
            .map(p -> new Mix.Component(p.name(), p.share(), p.kgPerM3()))
            .toList();
    return Mix.ofMass(grams, parts).parts().stream()
        .map(
            p ->
                new PourAdvice.MixPart(
                    p.name(), Numbers.round(p.massG(), 1), Numbers.round(p.volumeMl(), 1)))
        .toList();
  }

  private static List<PourAdvice.PrintInfo> prints(PourJob job) {
    List<PourAdvice.PrintInfo> out = new ArrayList<>();
    for (PourJob.Piece p : job.pieces()) {
      boolean filament = job.print() == PourJob.Print.FDM;
      double volume = p.mesh().volume();
      double plastic =
          filament ? PrintRate.plasticMm3(volume, p.mesh().area(), SKIN, FILL) : volume;
      // a piece lies with its pull upright
      double height = extent(p);
      double hours =
          filament
              ? PrintRate.COMMON.hours(plastic)
              : PrintRate.resinHours(height, RESIN_LAYER, RESIN_SECONDS);
      out.add(
          new PourAdvice.PrintInfo(
              p.name(),
              Numbers.round(plastic, 1),
              Numbers.round(plastic / MM3_PER_M3 * (filament ? PLA : PHOTOPOLYMER), 5),
              Numbers.round(hours, 2)));
    }
    return List.copyOf(out);
  }

  private static double extent(PourJob.Piece p) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int v : p.mesh().tri()) {
      double h = p.mesh().vertex(v).dot(p.pull());
      low = Math.min(low, h);
      high = Math.max(high, h);
    }
    return high - low;
  }

  private static PourAdvice.BatchInfo batches(
      PourJob job, PourAdvice.Flow flow, List<String> notes) {
    Material m = job.material();
    if (flow == null || flow.fillS() == null || flow.fillS() <= 0 || m.demoldTimeMin().isEmpty()) {
      return null;
    }
    double pot = flow.workingS() == null ? Double.POSITIVE_INFINITY : flow.workingS() / S_PER_MIN;
    double fill = flow.fillS() / S_PER_MIN;
    if (fill > pot) {
      return null;
    }
    double open = m.demoldTimeMin().get(m.demoldTimeMin().size() - 1);
    Batches b = Batches.of(job.order().castings(), job.order().molds(), fill, pot, open);
    if (job.order().castings() > 1) {
      notes.add("Batches reckon with the longest usual time to the opening of the mold.");
    }
    return new PourAdvice.BatchInfo(
        b.castings(),
        b.molds(),
        b.perBatch(),
        b.batches(),
        b.rounds(),
        Numbers.round(b.minutes(), 1));
  }

  private static PourAdvice.CostInfo cost(
      PourJob job, double massKg, List<PourAdvice.PrintInfo> prints) {
    PourJob.Order o = job.order();
    double plastic = prints.stream().mapToDouble(PourAdvice.PrintInfo::massKg).sum();
    double cast = massKg * o.castings();
    double print = plastic * o.molds();
    Cost c =
        Cost.of(
            List.of(
                new Cost.Need("casting material", cast, o.castPrice()),
                new Cost.Need("printed plastic", print, o.printPrice())));
    if (c.lines().isEmpty()) {
      return null;
    }
    return new PourAdvice.CostInfo(
        Numbers.significant(cast * o.castPrice(), 4),
        Numbers.significant(print * o.printPrice(), 4),
        Numbers.round(c.total(), 2),
        c.unpriced());
  }
}
