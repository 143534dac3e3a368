package org.castwright.sheet;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.castwright.advice.PourAdvice;
import org.castwright.geom.Vec3;
import org.castwright.pipeline.Report;

/** What is printed, how it lies, what else is needed, and how the mold is made ready. */
final class PrintPart {

  /** A bolt is so much longer than the mold is thick: washers and nut, mm; common practice. */
  private static final double NUT = 10;

  /** Bolts come in lengths that are multiples of this, mm. */
  private static final double BOLT_STEP = 5;

  private final SheetSource source;
  private final Report report;
  private final Units units;

  PrintPart(SheetSource source, Units units) {
    this.source = source;
    this.report = source.report();
    this.units = units;
  }

  void add(Flow flow) throws IOException {
    flow.add(new Head("Print"), list(), Words.item(walls()));
    if (report.pouring() != null) {
      flow.add(Words.item(time(report.pouring().bench().print())));
    }
    flow.add(
        new Head("Get ready"),
        Row.halves(
            Column.of(hardware().toArray(new Element[0])),
            Column.of(release().toArray(new Element[0]))));
  }

  private Table list() {
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < report.pieces().size(); i++) {
      Report.PieceFile p = report.pieces().get(i);
      Vec3 size = source.pieces().get(i).print().bounds().size();
      rows.add(
          List.of(
              Integer.toString(i + 1),
              p.printFile(),
              units.size(List.of(size.x(), size.y(), size.z())),
              units.volume(p.volumeMm3()),
              lying(p)));
    }
    return Table.of(
        List.of(0.05f, 0.19f, 0.23f, 0.13f, 0.4f),
        List.of("No.", "File", "Size as it stands", "Solid volume", "How it lies on the bed"),
        rows);
  }

  private static String lying(Report.PieceFile p) {
    return switch (p.standsOn()) {
      case "outer_face" -> "as in the file: outer face down, no supports";
      case "flat_face" -> "as in the file, on its largest flat face; look for overhangs";
      default -> "it has no flat face: supports on its outside only, none in the cavity";
    };
  }

  /** How long the printer works, and for what of plastic. */
  private String time(List<PourAdvice.PrintInfo> pieces) {
    double hours = 0;
    double mass = 0;
    List<String> each = new ArrayList<>();
    for (PourAdvice.PrintInfo p : pieces) {
      hours += p.hours();
      mass += p.massKg();
      each.add(Units.of("%s %s", p.piece(), Units.time(List.of(60 * p.hours()))));
    }
    return Units.of(
        "Printing takes about %s and %s in all by common rates (%s); your printer's own program knows better.",
        Units.time(List.of(60 * hours)), units.mass(mass), String.join(", ", each));
  }

  private static String walls() {
    return "At least 4 wall lines and no gaps in the faces where pieces meet, or the mold weeps.";
  }

  private List<Element> hardware() {
    List<Element> out = new ArrayList<>();
    out.add(Words.of("Have at hand", Style.STRONG));
    Report.Box box = report.block().box();
    double thick = box.max().get(2) - box.min().get(2);
    double wide = box.max().get(0) - box.min().get(0);
    List<Report.FeatureInfo> bands = features("band-groove");
    if (!bands.isEmpty()) {
      out.add(
          new Tick(
              Units.of(
                  "%s, %s wide, to go tight round %s",
                  count(bands.size(), "strong rubber band"),
                  units.length(bands.get(0).sizeMm()),
                  units.length(2 * (wide + thick)))));
    }
    List<Report.FeatureInfo> bolts = features("bolt-hole");
    if (!bolts.isEmpty()) {
      double length = BOLT_STEP * Math.ceil((thick + NUT) / BOLT_STEP);
      out.add(
          new Tick(
              Units.of(
                  "%s M%.0f × %.0f mm or longer, each with nut and two washers",
                  count(bolts.size(), "bolt"), Math.floor(bolts.get(0).sizeMm()), length)));
    }
    List<Report.FeatureInfo> seats = features("clamp-seat");
    if (!seats.isEmpty()) {
      out.add(
          new Tick(
              Units.of(
                  "%s that open to %s, with pads no wider than %s",
                  count(seats.size(), "clamp"),
                  units.length(thick),
                  units.length(seats.get(0).sizeMm()))));
    }
    if (bands.isEmpty() && bolts.isEmpty() && seats.isEmpty()) {
      out.add(new Tick("strong tape or clamps: the mold has no closing features of its own"));
    }
    List<Report.FeatureInfo> slots = features("pry-slot");
    if (!slots.isEmpty()) {
      out.add(
          new Tick(
              Units.of(
                  "a flat tool thinner than %s for the pry slots",
                  units.length(slots.get(0).sizeMm()))));
    }
    List<Report.FeatureInfo> grips = features("grip");
    if (!grips.isEmpty()) {
      out.add(new Tick(count(grips.size(), "wood screw") + " of 4 mm for the holes to pull by"));
    }
    out.add(new Tick("scale, cup and stirrer, release agent and a soft brush"));
    out.add(new Tick("what the safety data sheet asks for: gloves, glasses, ventilation"));
    return out;
  }

  private List<Report.FeatureInfo> features(String kind) {
    return report.features().stream().filter(f -> f.kind().equals(kind)).toList();
  }

  private static String count(int n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }

  private List<Element> release() {
    List<Element> out = new ArrayList<>();
    out.add(Words.of("Seal, release, close", Style.STRONG));
    out.add(Words.item("Smooth or coat the cavity: layer lines grip like an undercut."));
    out.add(Words.item("Release agent as the material's supplier advises, in a thin coat."));
    if (!report.keys().isEmpty()) {
      out.add(
          Words.item(
              Units.of(
                  report.parting().divided()
                      ? "%d keys with a gap of %s. Dry-fit it first."
                      : "%d keys with a gap of %s: the mold closes in one way only. Dry-fit it first.",
                  report.keys().size(),
                  units.gap(report.keys().get(0).clearanceMm()))));
    }
    out.add(Words.item("Close by turns from side to side, until the seam shows no light."));
    return out;
  }
}
