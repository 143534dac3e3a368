package org.castwright.sheet;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.material.Material;
import org.castwright.pipeline.Report;

/** Expected size, what the proof found, notes, the files, and room to write. */
final class RecordPart {

  private static final float LOG_ROW = 24;
  private static final int LOG_ROWS_LEAST = 4;
  private static final int LOG_ROWS_MOST = 14;
  private static final float FILE_SIZE = 6.4f;

  private final Report report;
  private final Material material;
  private final Units units;

  RecordPart(Report report, Material material, Units units) {
    this.report = report;
    this.material = material;
    this.units = units;
  }

  void addSize(Flow flow) throws IOException {
    flow.add(new Head("Size to expect"), size());
  }

  void add(Flow flow, Path dir) throws IOException {
    List<Element> proof = new ArrayList<>();
    proof.add(new Head("What was proved from the files"));
    report.proof().checks().stream()
        .filter(c -> !c.passed())
        .forEach(c -> proof.add(Words.item("FAILED " + c.name() + ": " + c.words())));
    proof.add(new ProofTable(report.proof(), units).table());
    flow.add(proof.toArray(new Element[0]));
    if (!report.warnings().isEmpty()) {
      List<Element> notes = new ArrayList<>();
      notes.add(new Head("Notes"));
      report.warnings().forEach(w -> notes.add(Words.item(w)));
      flow.add(notes.toArray(new Element[0]));
    }
    flow.add(new Head("Files"), files(dir));
    log(flow);
  }

  private Element size() {
    List<Double> model = report.input().sizeMm();
    List<List<String>> rows = new ArrayList<>();
    rows.add(row("Model, and casting as planned", model, List.of(1.0, 1.0, 1.0)));
    rows.add(row("Cavity", model, report.scale()));
    boolean own = !report.material().shrinkSource().equals(material.shrink().source());
    if (!own) {
      rows.add(row("Casting, smallest likely", model, after(material.shrink().highPercent())));
      rows.add(row("Casting, largest likely", model, after(material.shrink().lowPercent())));
    }
    String source =
        own
            ? Units.of(
                "Shrink given by the maker: %s %%.", percent(report.material().shrinkPercent()))
            : Units.of(
                "Shrink planned: %s %%, likely %s to %s %% (%s). Printer's and measuring errors come"
                    + " on top: measure the first casting.",
                plain(material.shrink().percent()),
                plain(material.shrink().lowPercent()),
                plain(material.shrink().highPercent()),
                material.shrink().source());
    String unit = units.lengthUnit();
    return Column.of(
        Table.of(
            List.of(0.4f, 0.2f, 0.2f, 0.2f),
            List.of("", "Model x, " + unit, "Model y, " + unit, "Model z, " + unit),
            rows),
        Words.of(source, Style.SMALL));
  }

  /** How the cavity changes when the casting shrinks by that much. */
  private List<Double> after(double percent) {
    return report.scale().stream().map(s -> s * (1 - percent / 100)).toList();
  }

  private List<String> row(String name, List<Double> model, List<Double> factors) {
    List<String> out = new ArrayList<>();
    out.add(name);
    for (int k = 0; k < model.size(); k++) {
      out.add(units.number(model.get(k) * factors.get(k)));
    }
    return out;
  }

  private static String percent(List<Double> p) {
    List<String> different = p.stream().map(RecordPart::plain).distinct().toList();
    return String.join(" / ", different);
  }

  private static String plain(double v) {
    return Units.of("%.2f", v).replaceFirst("\\.?0+$", "");
  }

  private Element files(Path dir) throws IOException {
    List<List<String>> rows = new ArrayList<>();
    for (Path p : MeshFiles.in(dir)) {
      String name = dir.relativize(p).toString().replace('\\', '/');
      rows.add(
          List.of(name, String.format(Locale.ROOT, "%,d", Files.size(p)), MeshFiles.sha256(p)));
    }
    return new Table(
        List.of(0.26f, 0.15f, 0.59f),
        List.of("File", "Bytes", "SHA-256"),
        rows,
        new Style(FILE_SIZE, false, Style.INK),
        0);
  }

  /** As many rows as the page has room for. */
  private void log(Flow flow) throws IOException {
    Head head = new Head("Trial log");
    Words words =
        Words.of(
            "One line for each casting; mark places on the pictures. Change one thing at a time.",
            Style.SMALL);
    int rows = LOG_ROWS_LEAST;
    while (rows < LOG_ROWS_MOST && flow.fits(head, words, log(rows + 1))) {
      rows++;
    }
    flow.add(head, words, log(rows));
  }

  private static Table log(int rows) {
    List<String> blank = List.of("", "", "", "", "", "");
    return new Table(
        List.of(0.12f, 0.14f, 0.1f, 0.12f, 0.3f, 0.22f),
        List.of(
            "Date, name",
            "Batch and mix",
            "Poured at",
            "Opened after",
            "What happened (air, flash, stuck, size)",
            "Change next time"),
        java.util.Collections.nCopies(rows, blank),
        Style.BODY,
        LOG_ROW);
  }
}
