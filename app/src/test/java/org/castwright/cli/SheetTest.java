package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.castwright.pictures.OkabeIto;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** The sheet for printing, read back by the PDF library. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SheetTest {

  private Path dir;
  private Path mold;

  @BeforeAll
  void makeOne(@TempDir Path temp) throws IOException {
    dir = temp;
    mold = dir.resolve("mold");
    String egg = Cli.egg(dir).toString();
    Cli made = Cli.run("mold", egg, "-o", mold.toString(), "-m", "beeswax", "--closing", "bolts");
    assertEquals(0, made.code(), made.toString());
  }

  private Path again(String name, String... options) {
    Path file = dir.resolve(name);
    String[] args = new String[options.length + 4];
    System.arraycopy(new String[] {"sheet", mold.toString(), "-o", file.toString()}, 0, args, 0, 4);
    System.arraycopy(options, 0, args, 4, options.length);
    Cli run = Cli.run(args);
    assertEquals(0, run.code(), run.toString());
    return file;
  }

  private static String text(Path pdf) throws IOException {
    try (PDDocument d = Loader.loadPDF(pdf.toFile())) {
      return new PDFTextStripper().getText(d).replaceAll("\\s+", " ");
    }
  }

  @Test
  void tellsWhatTheBenchNeedsInTheOrderOfUse() throws IOException {
    String text = text(mold.resolve("sheet.pdf"));
    int at = 0;
    for (String words :
        new String[] {
          "JOB SHEET",
          "Mold for egg.stl",
          "Beeswax",
          "PROVED",
          "checks passed",
          "Print",
          "print/piece-1.stl",
          "outer face down",
          "print/piece-2.stl",
          "Get ready",
          "bolts M4",
          "Release agent",
          "Before you start",
          "Hot wax burns",
          "safety data sheet",
          "Mix and pour",
          "Stand the mold",
          "Have the material at 68 to 71 °C",
          "Castings",
          "How it fills and sets",
          "Level against volume",
          "casting full",
          "Level against time",
          "Temperature after the pour",
          "hottest place of the casting",
          "no air stays",
          "Full after",
          "By its heat it can leave the mold after about",
          "as it freezes",
          "Open",
          "1. piece-1 off",
          "2. piece-2 off",
          "by its heat",
          "Size to expect",
          "proved from the files",
          "Pieces leave in their order",
          "Files",
          "Trial log",
          "castwright 0.1.0"
        }) {
      int found = text.indexOf(words, at);
      assertTrue(found >= 0, () -> "'" + words + "' is missing or out of order in: " + text);
      at = found;
    }
    assertFalse(text.toLowerCase(Locale.ROOT).contains("food safe"));
    assertFalse(text.contains("?"), "a letter could not be shown: " + text);
  }

  @Test
  void listsTheHashOfEveryMeshFile() throws IOException, NoSuchAlgorithmException {
    String text = text(mold.resolve("sheet.pdf"));
    for (String file :
        new String[] {"print/piece-1.stl", "pieces/piece-2.stl", "casting.stl", "mold.3mf"}) {
      byte[] bytes = Files.readAllBytes(mold.resolve(file));
      byte[] hash = MessageDigest.getInstance("SHA-256").digest(bytes);
      assertTrue(text.contains(HexFormat.of().formatHex(hash)), file);
    }
  }

  @Test
  void hasTwoToFourPagesOfThePaperAskedAndBringsItsType() throws IOException {
    for (String paper : new String[] {"a4", "letter"}) {
      Path file = again(paper + ".pdf", "--paper", paper);
      try (PDDocument d = Loader.loadPDF(file.toFile())) {
        assertTrue(d.getNumberOfPages() >= 2 && d.getNumberOfPages() <= 4, paper);
        PDRectangle size = d.getPage(0).getMediaBox();
        assertEquals(paper.equals("a4") ? 595.28 : 612, size.getWidth(), 0.01);
        for (var page : d.getPages()) {
          for (var name : page.getResources().getFontNames()) {
            PDFont font = page.getResources().getFont(name);
            assertTrue(font.isEmbedded(), font.getName());
          }
        }
      }
    }
  }

  @Test
  void speaksInchesIfAsked() throws IOException {
    String text = text(again("inch.pdf", "--sheet-units", "inch"));
    // the egg is 48 × 34 × 22 mm and beeswax is poured at 68 to 71 °C
    assertTrue(text.contains("1.89 × 1.34 × 0.87 in"), text);
    assertTrue(text.contains("154 to 160 °F"), text);
    assertTrue(text.contains(" fl oz") && text.contains(" oz"), text);
    assertFalse(text.contains("cm³"), text);
    assertFalse(text.contains("°C") || text.contains("level, mm"), text);
  }

  @Test
  void theSameMoldGivesTheSameBytes() throws IOException {
    Path one = again("one.pdf", "--threads", "1");
    Path two = again("two.pdf", "--threads", "3");
    assertArrayEquals(Files.readAllBytes(one), Files.readAllBytes(two));
  }

  /** The pictures on the first page show both pieces in their colors. */
  @Test
  void showsThePieces() throws IOException {
    try (PDDocument d = Loader.loadPDF(mold.resolve("sheet.pdf").toFile())) {
      BufferedImage page = new PDFRenderer(d).renderImageWithDPI(0, 72);
      assertTrue(count(page, OkabeIto.SKY_BLUE.rgb()) > 500);
      assertTrue(count(page, OkabeIto.ORANGE.rgb()) > 500);
    }
  }

  private static int count(BufferedImage image, int rgb) {
    int n = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        int c = image.getRGB(x, y);
        int off = 0;
        for (int shift = 0; shift <= 16; shift += 8) {
          off = Math.max(off, Math.abs((c >> shift & 0xff) - (rgb >> shift & 0xff)));
        }
        n += off < 30 ? 1 : 0;
      }
    }
    return n;
  }

  @Test
  void aFailedProofIsSaidFirst() throws IOException {
    Path copy = dir.resolve("failed");
    try (var all = Files.walk(mold)) {
      for (Path p : all.toList()) {
        Path to = copy.resolve(mold.relativize(p).toString());
        if (Files.isDirectory(p)) {
          Files.createDirectories(to);
        } else {
          Files.copy(p, to);
        }
      }
    }
    Path report = copy.resolve("report.json");
    String words = Files.readString(report);
    words = words.replaceFirst("(\"proof\" : \\{\\s*\"passed\" : )true", "$1false");
    words = words.replaceFirst("(\"name\" : \"wall\",\\s*\"passed\" : )true", "$1false");
    Files.writeString(report, words);
    assertEquals(0, Cli.run("sheet", copy.toString()).code());
    String text = text(copy.resolve("sheet.pdf"));
    assertTrue(text.contains("NOT PROVED") && text.contains("do not pour"), text);
    assertTrue(text.contains("FAILED wall"), text);
  }

  @Test
  void aFolderWithoutAMoldIsRefused() throws IOException {
    Path empty = Files.createDirectories(dir.resolve("empty"));
    Cli.run("sheet", empty.toString()).refused();
    assertEquals(java.util.Set.of(), Cli.namesIn(empty));
  }
}
