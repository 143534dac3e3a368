package org.castwright.sheet;

import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.castwright.material.Material;
import org.castwright.pipeline.Report;

/** Cautions; how much is mixed, and how the mold is filled. */
final class PourPart {

  private static final Color WARN = new Color(213, 94, 0);
  private static final Color WARN_PANEL = new Color(253, 243, 236);

  /** Service limit of printed PLA, °C (materials database; its glass transition is near 60). */
  private static final double PRINT_SOFTENS = 50;

  /** A mold higher than this many times its foot's depth tips; common practice, no source. */
  private static final double NARROW = 2.5;

  /** Rows of the mix table, castings. */
  private static final int[] BATCHES = {1, 2, 5, 10};

  private static final double SPARE_LOW = 1.05;
  private static final double SPARE_HIGH = 1.10;

  private final Report report;
  private final Material material;
  private final Units units;

  PourPart(Report report, Material material, Units units) {
    this.report = report;
    this.material = material;
    this.units = units;
  }

  void add(Flow flow, Figure figure) throws IOException {
    flow.add(new Head("Mix and pour"), row(figure));
    flow.add(mix());
  }

  private Row row(Figure figure) {
    return new Row(
        List.of(figure, Column.of(steps().toArray(new Element[0]))), List.of(0.48f, 0.52f));
  }

  /** What can hurt. */
  Element cautions() {
    List<Element> lines = new ArrayList<>();
    lines.add(Words.of("Before you start", Style.STRONG.colored(WARN)));
    material.cautions().forEach(c -> lines.add(Words.item(c)));
    lines.add(
        Words.item(
            "The supplier's safety data sheet, local codes and licensed practice come first."));
    return new Boxed(new Column(lines), WARN, WARN_PANEL);
  }

  private List<Element> steps() {
    List<String> words = new ArrayList<>();
    words.add(position());
    Report.Box box = report.block().box();
    double height = box.max().get(1) - box.min().get(1);
    double depth = box.max().get(2) - box.min().get(2);
    if (stands() && height > NARROW * depth) {
      words.add(
          Units.of(
              "It stands %s high on a foot %s deep: prop it up.",
              units.length(height), units.length(depth)));
    }
    words.add(Units.of("Have the material at %s.", units.temperature(material.pourC())));
    if (material.workingTimeMin() != null) {
      words.add(
          Units.of(
              "It stays workable for %s, usually; the supplier's figure wins.",
              Units.time(material.workingTimeMin())));
    }
    words.add("Pour a thin stream into G without a pause.");
    if (report.pour().gate().at().equals("bottom")) {
      words.add("It fills from below: the first V is the riser, stop only when it is full.");
    }
    int vents = report.pour().vents();
    words.add(
        vents == 0
            ? "Stop when the gate is full."
            : vents == 1
                ? "Stop when V shows material."
                : "Stop when every V shows material; plug those that come first.");
    words.add(material.notes());
    List<Element> out = new ArrayList<>();
    for (int i = 0; i < words.size(); i++) {
      out.add(Words.step(i + 1, words.get(i)));
    }
    boolean known = report.pouring() != null && report.pouring().heat() != null;
    if (!known && material.pourC().get(material.pourC().size() - 1) > PRINT_SOFTENS) {
      out.add(new Gap(3));
      out.add(
          new Boxed(
              Words.of(
                  Units.of(
                      "A mold printed in PLA softens near %s and should not see more than %s for"
                          + " long: pour at the cool end, print in a plastic that stands the heat,"
                          + " or cast a silicone mold from it.",
                      units.temperature(List.of(60.0)), units.temperature(List.of(PRINT_SOFTENS))),
                  Style.BODY),
              WARN,
              WARN_PANEL));
    }
    return out;
  }

  private boolean stands() {
    return report.pour().position().equals("seam");
  }

  private String position() {
    if (report.parting().divided()) {
      return "Stand the mold as in the picture, funnel on top.";
    }
    return stands()
        ? "Stand the mold as in the picture: arrows on the pieces up, seam upright, funnel on top."
        : "Lay the mold as in the picture, "
            + report.pieces().get(report.pieces().size() - 2).name()
            + " on top, and pour through a loose funnel.";
  }

  private Element mix() {
    List<List<String>> rows = new ArrayList<>();
    for (int n : BATCHES) {
      double kg = n * report.pour().massToPourKg();
      rows.add(
          List.of(
              Integer.toString(n),
              units.volume(n * report.pour().volumeToPourMm3()),
              units.mass(kg),
              units.mass(SPARE_LOW * kg),
              units.mass(SPARE_HIGH * kg),
              ""));
    }
    Table table =
        Table.of(
            List.of(0.1f, 0.14f, 0.14f, 0.16f, 0.16f, 0.3f),
            List.of(
                "Castings",
                "Volume",
                "Mass",
                "Mass + 5 %",
                "Mass + 10 %",
                "Your parts, by the supplier's ratio"),
            rows);
    String words =
        Units.of(
            "Gate and vents included, at %.0f kg/m³ (%s). Mix 5 to 10 %% more than the mold holds.",
            report.material().densityKgPerM3(), report.material().densitySource());
    return Column.of(new Gap(4), table, Words.of(words, Style.SMALL));
  }
}
