package org.castwright.sheet;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.castwright.advice.HeatInfo;
import org.castwright.advice.PourAdvice;
import org.castwright.heat.ThermalTable;
import org.castwright.pictures.Chart;

/** How the mold fills and how the casting cools or cures, as picture, charts and words. */
final class CoursePart {

  private static final int IN_A_ROW = 3;

  /** Pools that leave less than this are no worry, mm³. */
  private static final double LEAST_SINK = 20;

  private final PourAdvice pour;
  private final Units units;

  CoursePart(PourAdvice pour, Units units) {
    this.pour = pour;
    this.units = units;
  }

  void add(Flow flow, Figure picture) throws IOException {
    List<Element> charts = new ArrayList<>();
    for (Chart c : PourCharts.of(pour, units)) {
      charts.add(new Diagram(c));
    }
    while (charts.size() < IN_A_ROW) {
      charts.add(new Gap(0));
    }
    List<Element> words = new ArrayList<>();
    pour.reasons().forEach(r -> words.add(Words.item("LOOK OUT: " + r)));
    filling(words);
    if (pour.heat() == null) {
      words.add(Words.item("Cooling and curing are not known: a thermal figure is missing."));
    } else {
      heat(pour.heat(), words);
    }
    float share = 1f / IN_A_ROW;
    flow.add(
        new Head("How it fills and sets"),
        new Row(charts, List.of(share, share, share)),
        new Row(List.of(picture, new Column(words)), List.of(0.36f, 0.64f)));
  }

  private void filling(List<Element> out) {
    PourAdvice.Fill f = pour.fill();
    out.add(
        Words.item(
            f.pockets().isEmpty()
                ? Units.of("Level by level no air stays under its %d high place(s).", f.roofPeaks())
                : Units.of("Level by level air stays in %d place(s).", f.pockets().size())));
    PourAdvice.Flow flow = pour.flow();
    if (flow != null && flow.fillS() != null) {
      out.add(
          Words.item(
              Units.of(
                  "Full after %s with the gate kept full (%s to %s by the range of viscosity).",
                  Units.seconds(flow.fillS()),
                  Units.seconds(flow.fillLowS()),
                  Units.seconds(flow.fillHighS()))));
    }
    gate(pour.freezing(), out);
  }

  /** A gate that may freeze shut is among the reasons. */
  private void gate(PourAdvice.Freezing f, List<Element> out) {
    if (f == null || f.closedS() == null || f.gate().equals("shuts")) {
      return;
    }
    String mold = "in a mold of " + units.degrees(f.moldC());
    out.add(
        Words.item(
            switch (f.gate()) {
              case "open" ->
                  Units.of(
                      "The gate stays open long enough: it does not freeze shut before %s %s.",
                      Units.seconds(f.closedS()), mold);
              case "narrows" ->
                  Units.of(
                      "The gate may freeze too narrow %s (shut after %s or more)%s%s.",
                      mold,
                      Units.seconds(f.closedS()),
                      f.neededMm() == null
                          ? ""
                          : "; it stays open with " + units.length(f.neededMm()),
                      f.neededMoldC() == null
                          ? ""
                          : "; or in a mold of " + units.degrees(f.neededMoldC()));
              default ->
                  Units.of(
                      "The gate does not freeze shut before %s %s; the time to fill is not known.",
                      Units.seconds(f.closedS()), mold);
            }));
  }

  private void heat(HeatInfo h, List<Element> out) {
    String where =
        Units.of(
            "in a mold of %s and air of %s",
            ThermalTable.mold(h.wallOf()).name(), units.degrees(h.airC()));
    String band =
        h.demoldFromS() == null || h.demoldToS() == null
            ? ""
            : Units.of(
                " (%s to %s by the ranges of its figures)",
                Units.seconds(h.demoldFromS()), Units.seconds(h.demoldToS()));
    out.add(
        Words.item(
            h.demoldS() == null
                ? "It does not set within a week " + where + "."
                : Units.of(
                    "By its heat it can leave the mold after about %s %s%s.",
                    Units.seconds(h.demoldS()), where, band)));
    HeatInfo.Wall w = h.wall();
    String wall =
        switch (w.softens()) {
          case "yes" -> "above its %s: it softens.";
          case "may" -> "within the range of its %s: it may soften.";
          default -> "below its %s.";
        };
    out.add(
        Words.item(
            Units.of(
                "Casting up to %s, the mold's inner wall up to %s, " + wall,
                units.degrees(h.peakC()),
                units.degrees(w.peakC()),
                w.limit())));
    if (h.feed() != null) {
      feed(h, out);
    }
  }

  private void feed(HeatInfo h, List<Element> out) {
    HeatInfo.Feed f = h.feed();
    if (f.shrinkPercent() < 0) {
      out.add(
          Words.item(
              Units.of(
                  "It grows by %.1f %% as it freezes: leave gate and vents open and room above.",
                  -f.shrinkPercent())));
      return;
    }
    out.add(
        Words.item(
            Units.of(
                f.feeds()
                    ? "It loses %.1f %% as it freezes; keep the gate full, it feeds the casting."
                    : "It loses %.1f %% as it freezes and the gate freezes first: expect a sink or"
                        + " hollow where it sets last, top it up, or give it a riser of %s.",
                f.shrinkPercent(),
                units.length(f.riserMm()))));
    long pools =
        h.pools().stream()
            .filter(p -> !p.inChannels())
            .skip(1)
            .filter(p -> p.sinkMm3() != null && p.sinkMm3() >= LEAST_SINK)
            .count();
    if (pools > 0) {
      out.add(
          Words.item(
              Units.of("%d more place(s) are cut off while liquid; see the report.", pools)));
    }
  }
}
