package org.castwright.sheet;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.castwright.advice.PourAdvice;
import org.castwright.material.Material;
import org.castwright.pipeline.Report;

/** When and in which order the mold is opened. */
final class OpenPart {

  private static final int IN_A_ROW = 3;

  private final Report report;
  private final Material material;

  OpenPart(Report report, Material material) {
    this.report = report;
    this.material = material;
  }

  private String byHeat() {
    PourAdvice pour = report.pouring();
    return pour == null || pour.heat() == null || pour.heat().demoldS() == null
        ? ""
        : ", about " + Units.seconds(pour.heat().demoldS()) + " by its heat";
  }

  void add(Flow flow, List<Element> steps) throws IOException {
    Element words =
        Column.of(
            Words.item(
                Units.of(
                    "After %s, usually%s; the supplier's figure wins.",
                    Units.time(material.demoldTimeMin()), byHeat())),
            Words.item(
                "Loosen at the pry slots a little on each side by turns, then pull straight,"
                    + " without twisting."),
            Words.item("Cut gate and vents off the casting when it is free."));
    if (report.pieces().size() == 2) {
      List<Element> parts = new ArrayList<>(steps);
      parts.add(words);
      flow.add(new Head("Open"), new Row(parts, List.of(0.34f, 0.34f, 0.32f)));
      return;
    }
    boolean first = true;
    for (int i = 0; i < steps.size(); i += IN_A_ROW) {
      List<Element> row = new ArrayList<>(steps.subList(i, Math.min(i + IN_A_ROW, steps.size())));
      while (row.size() < IN_A_ROW) {
        row.add(new Gap(0));
      }
      float share = 1f / IN_A_ROW;
      Row figures = new Row(row, List.of(share, share, share));
      if (first) {
        flow.add(new Head("Open"), words, new Gap(3), figures);
      } else {
        flow.add(figures);
      }
      first = false;
    }
  }
}
