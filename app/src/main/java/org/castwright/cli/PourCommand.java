package org.castwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.castwright.advice.PourAdvice;
import org.castwright.advice.PourJob;
import org.castwright.geom.Vec3;
import org.castwright.material.Materials;
import org.castwright.pictures.SvgFile;
import org.castwright.pipeline.Json;
import org.castwright.pipeline.PourFolder;
import org.castwright.pipeline.PourSheet;
import org.castwright.sheet.PourCharts;
import org.castwright.sheet.Units;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code castwright pour DIR}: the pour alone, of a mold already written. */
@Command(
    name = "pour",
    description =
        "Works out the pour of a finished mold again, for another material or position; writes"
            + " nothing into the folder. Exit code 3 when the mold does not suit it.",
    footerHeading = Examples.HEADING,
    footer = {"  castwright pour shell-mold -m soap-melt-and-pour"},
    mixinStandardHelpOptions = true)
final class PourCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "DIR", description = "A folder that castwright wrote.")
  private Path folder;

  @Option(
      names = {"-m", "--material"},
      paramLabel = "ID",
      description = "Another material, or FILE.json:ID (default: the mold's own).")
  private String material;

  @Option(
      names = "--up",
      paramLabel = "X,Y,Z",
      converter = Vector.class,
      description = "Direction against gravity in the mold frame (default: the mold's own).")
  private Vec3 up;

  @Option(
      names = "--castings",
      paramLabel = "N",
      defaultValue = "1",
      description = "Castings wanted, for batches and cost.")
  private int castings;

  @Option(names = "--molds", paramLabel = "N", defaultValue = "1", description = "Molds at hand.")
  private int molds;

  @Option(
      names = "--cast-price",
      paramLabel = "PRICE",
      defaultValue = "NaN",
      description = "Your price for a kg of casting material.")
  private double castPrice;

  @Option(
      names = "--print-price",
      paramLabel = "PRICE",
      defaultValue = "NaN",
      description = "Your price for a kg of printed plastic.")
  private double printPrice;

  @Option(
      names = "--heat",
      paramLabel = "off|coarse|fine",
      defaultValue = "coarse",
      description =
          "How finely to work out cooling and curing: off, coarse (seconds) or fine (up to a"
              + " minute; default: ${DEFAULT-VALUE}).")
  private PourJob.Fineness heat;

  @Option(
      names = "--air",
      paramLabel = "C",
      description = "Air round the mold, °C (default: the material's usual, else 20).")
  private Double airC;

  @Option(
      names = "--mold-of",
      paramLabel = "ID",
      description =
          "What the mold is made of, for its heat: pla, petg, abs, photopolymer, silicone or plaster"
              + " (default: pla for filament, photopolymer for resin prints).")
  private String moldOf;

  @Option(
      names = "--chart",
      paramLabel = "FILE",
      description = "Draws level and temperatures against time into an SVG file.")
  private Path chart;

  @Mixin private RunArguments run;

  @Override
  public Integer call() throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    PourJob.Order order = new PourJob.Order(castings, molds, castPrice, printPrice);
    PourAdvice a =
        PourFolder.advise(
            folder,
            material,
            up,
            order,
            new PourJob.Cooling(heat, airC, moldOf, run.threads()),
            run.progress(out, spec.commandLine().getErr()));
    if (chart != null) {
      SvgFile.write(PourCharts.of(a, Units.METRIC), chart);
    }
    if (run.json()) {
      out.println(Json.line(a));
    } else if (!run.quiet()) {
      out.println((a.fits() ? "suits " : "does NOT suit ") + a.material());
      var m = Materials.of(material == null ? a.material() : material);
      PourSheet.lines(a, m).forEach(l -> out.println("  " + l));
      PourSheet.bench(a).forEach(l -> out.println("  " + l));
      m.cautions().forEach(c -> out.println("  caution: " + c));
      out.println("  Suppliers' safety data sheets, local codes and licensed practice come first.");
    }
    out.flush();
    return a.fits() ? Exit.OK.code() : Exit.CAUGHT.code();
  }
}
