package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.castwright.pipeline.MoldJob;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SmallCommandsTest {

  @TempDir private Path dir;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "--help",
        "-h",
        "",
        "help",
        "help mold",
        "mold --help",
        "look --help",
        "prove --help",
        "demo --help",
        "sheet --help",
        "serve --help",
        "completion --help",
        "materials --help",
        "pour --help",
        "trial --help",
        "coupon --help",
        "calibrate --help",
        "compare --help"
      })
  void helpIsPrinted(String args) {
    Cli r = args.isEmpty() ? Cli.run() : Cli.run(args.split(" ", -1));
    assertEquals(0, r.code());
    assertEquals("", r.err());
    assertTrue(r.out().startsWith("Usage: castwright"), r.out());
  }

  @Test
  void helpNamesEveryCommandAndEveryOptionHasWords() {
    String help = Cli.run("--help").out();
    for (String command :
        List.of(
            "mold",
            "look",
            "prove",
            "sheet",
            "serve",
            "demo",
            "materials",
            "pour",
            "trial",
            "coupon",
            "calibrate",
            "compare")) {
      assertTrue(help.contains("  " + command), command);
    }
    Main.commandLine()
        .getSubcommands()
        .values()
        .forEach(
            c ->
                c.getCommandSpec()
                    .options()
                    .forEach(o -> assertTrue(o.description().length > 0, o.longestName())));
  }

  @Test
  void theVersionIsTheReports() {
    assertEquals("castwright " + MoldJob.VERSION, Cli.run("--version").out().strip());
  }

  @Test
  void materialsAreListedWithShrinkDensityAndSource() {
    Cli r = Cli.run("materials");
    assertEquals(0, r.code());
    List<String> lines = r.out().lines().toList();
    assertTrue(lines.size() >= 15, r.out());
    for (String line : lines) {
      String shrink = "shrink +(-?\\d+\\.\\d\\d %|unknown) +";
      assertTrue(
          line.matches("[a-z0-9-]+ .*" + shrink + "(\\d+ kg/m³|density unknown)  .{5,}"), line);
    }
    assertEquals(lines.size(), lines.stream().map(l -> l.split(" ", 2)[0]).distinct().count());
  }

  @Test
  void oneMaterialIsShownWithAllItsMarks() {
    Cli r = Cli.run("materials", "agar-jelly");
    assertEquals(0, r.code());
    assertTrue(r.out().contains("shrink, linear                 not known"), r.out());
    assertTrue(r.out().contains("viscosity at the pour          not known"), r.out());
    assertTrue(r.out().contains("35 to 40, middle 37.5 °C  [confectionery textbook"), r.out());
    assertTrue(r.out().contains("needs its shrink and density"), r.out());
    Cli wax = Cli.run("materials", "paraffin-wax");
    // every figure ends in its source
    wax.out()
        .lines()
        .skip(1)
        .filter(l -> !l.startsWith("  note:") && !l.startsWith("  caution:"))
        .forEach(l -> assertTrue(l.endsWith("]") || l.endsWith("a melt has none"), l));
    assertTrue(Cli.run("materials", "marble").refused().contains("known are"));
    assertTrue(Cli.run("materials", "gone.json:x").refused().contains("gone.json"));
  }

  @Test
  void theMedallionIsMolded() throws IOException {
    Path out = dir.resolve("medallion");
    Cli r = Cli.run("demo", "medallion", "-o", out.toString());
    assertEquals(0, r.code(), r.toString());
    assertTrue(r.out().startsWith("proved: 2 pieces"), r.out());
    assertTrue(r.out().contains("read " + out.resolve("sheet.txt") + " first"), r.out());
    assertTrue(r.complaints().isEmpty(), r.err());
    assertTrue(r.err().contains(" s  proof"), r.err());
    String sheet = Files.readString(out.resolve("sheet.txt"));
    assertTrue(sheet.contains("bundled medallion") && sheet.contains("Chocolate"), sheet);
    assertTrue(!sheet.toLowerCase(java.util.Locale.ROOT).contains("food safe"), sheet);
  }
}
