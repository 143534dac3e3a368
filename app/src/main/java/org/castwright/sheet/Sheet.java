package org.castwright.sheet;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.castwright.material.Material;
import org.castwright.material.Materials;
import org.castwright.pictures.Guide;
import org.castwright.pipeline.Report;

/** Writes {@code sheet.pdf}. */
public final class Sheet {

  /** The sheet's name in a mold folder. */
  public static final String NAME = "sheet.pdf";

  /** Instead of the clock, so that the same mold gives the same bytes. */
  private static final int STAMP_YEAR = 2000;

  private static final long STAMP_ID = 1;

  private final SheetSource source;
  private final Report report;
  private final SheetPictures pictures;
  private final SheetOptions options;
  private final PDDocument document;

  private Sheet(
      SheetSource source, SheetPictures pictures, SheetOptions options, PDDocument document) {
    this.source = source;
    this.report = source.report();
    this.pictures = pictures;
    this.options = options;
    this.document = document;
  }

  /**
   * Writes the sheet of a mold folder.
   *
   * @param dir the folder, whose mesh files are listed with their hashes
   * @param file to write
   * @throws IllegalArgumentException if the report has no proof yet
   */
  public static void write(
      Path dir, SheetSource source, SheetPictures pictures, SheetOptions options, Path file)
      throws IOException {
    if (source.report().proof() == null) {
      throw new IllegalArgumentException("a sheet needs a report with its proof");
    }
    try (PDDocument document = new PDDocument();
        OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
      new Sheet(source, pictures, options, document).pages(dir);
      document.save(out);
    }
  }

  private void pages(Path dir) throws IOException {
    document.setDocumentId(STAMP_ID);
    document.setDocumentInformation(information());
    document.getDocumentCatalog().setLanguage("en-US");
    Type type = new Type(document);
    Flow flow = new Flow(document, type, options.paper());
    Material material = material();
    flow.add(title(material));
    flow.add(new Facts(facts(material)));
    flow.add(
        Row.halves(
            figure(pictures.closed(), "Closed: numbers name the pieces."),
            figure(pictures.opened(), "Opened: pieces leave in the order of their numbers.")));
    Units units = options.units();
    new PrintPart(source, units).add(flow);
    PourPart pour = new PourPart(report, material, units);
    flow.add(new Gap(8), pour.cautions());
    pour.add(flow, figure(pictures.pour(), pourCaption()));
    if (report.pouring() != null) {
      PDImageXObject fill = LosslessFactory.createFromImage(document, pictures.smallFill());
      new CoursePart(report.pouring(), units).add(flow, new Figure(fill, List.of(), ""));
    }
    new OpenPart(report, material).add(flow, stepFigures());
    RecordPart record = new RecordPart(report, material, units);
    record.addSize(flow);
    record.add(flow, dir);
    flow.finish(
        Units.of("castwright %s  ·  %s  ·  %s", report.castwright(), name(), material.name()));
  }

  private PDDocumentInformation information() {
    PDDocumentInformation info = new PDDocumentInformation();
    info.setTitle("Job sheet: mold for " + name());
    info.setCreator("castwright " + report.castwright());
    info.setProducer("castwright " + report.castwright());
    Calendar stamp = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
    stamp.clear();
    stamp.set(STAMP_YEAR, Calendar.JANUARY, 1);
    info.setCreationDate(stamp);
    return info;
  }

  private String name() {
    return report.input().file();
  }

  private Material material() {
    return Materials.of(report.material().id());
  }

  private Title title(Material material) {
    long passed = report.proof().checks().stream().filter(Report.CheckInfo::passed).count();
    int all = report.proof().checks().size();
    String verdict =
        report.proof().passed()
            ? Units.of("%d of %d checks passed", passed, all)
            : Units.of("%d of %d checks failed: do not pour", all - passed, all);
    return new Title("Mold for " + name(), material.name(), report.proof().passed(), verdict);
  }

  private List<Facts.Fact> facts(Material material) {
    Units u = options.units();
    return List.of(
        new Facts.Fact("Pieces", Integer.toString(report.pieces().size()), 0.12f),
        new Facts.Fact("Casting", u.size(report.input().sizeMm()), 0.3f),
        new Facts.Fact("Pour", u.mass(report.pour().massToPourKg()), 0.18f),
        new Facts.Fact("Volume", u.volume(report.pour().volumeToPourMm3()), 0.2f),
        new Facts.Fact("Open after", Units.time(material.demoldTimeMin()), 0.2f));
  }

  private List<Element> stepFigures() throws IOException {
    List<Element> out = new ArrayList<>();
    List<Report.PieceFile> pieces = report.pieces();
    for (int i = 0; i < pieces.size(); i++) {
      boolean last = i + 1 == pieces.size();
      String words =
          Units.of("%d. %s off, straight along the arrow", i + 1, pieces.get(i).name())
              + (last ? "; the casting is free." : ".");
      out.add(figure(pictures.steps().get(i), words));
    }
    return out;
  }

  private String pourCaption() {
    long vents = report.pour().vents();
    return "As it stands while filled. G: pour here."
        + (vents == 0 ? "" : vents == 1 ? " V: air leaves here." : " V: air leaves there.");
  }

  private Figure figure(Guide guide, String caption) throws IOException {
    PDImageXObject image = LosslessFactory.createFromImage(document, guide.image());
    return new Figure(image, guide.pointers(), caption);
  }
}
