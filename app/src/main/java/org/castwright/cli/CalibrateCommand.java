package org.castwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.castwright.material.Materials;
import org.castwright.pipeline.CalibrationFile;
import org.castwright.pipeline.Json;
import org.castwright.plan.PrintProcess;
import org.castwright.trial.Calibration;
import org.castwright.trial.LengthFit;
import org.castwright.trial.Reading;
import org.castwright.trial.Reading.Fit;
import org.castwright.trial.Reading.Kind;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code castwright calibrate FILE}: takes readings of coupons in, and tells what they say. */
@Command(
    name = "calibrate",
    description =
        "Takes in what you read from coupons, and tells what your readings say of a material on a"
            + " printer.",
    footerHeading = Examples.HEADING,
    footer = {
      "  castwright calibrate my.json --printer left --fit 0.2=tight --fit 0.25=good",
      "  castwright calibrate my.json --printer left -m beeswax --cast 50=48.9 --cast 100=97.8",
      "  castwright calibrate my.json --printer left -m beeswax"
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class CalibrateCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "FILE", description = "Calibration; made if not there.")
  private Path file;

  @Option(
      names = "--printer",
      paramLabel = "NAME",
      required = true,
      description = "Your name for the printer.")
  private String printer;

  @Option(
      names = "--process",
      paramLabel = "fdm|resin",
      defaultValue = "fdm",
      description = "How it prints (default: ${DEFAULT-VALUE}).")
  private PrintProcess process;

  @Option(
      names = {"-m", "--material"},
      paramLabel = "ID",
      completionCandidates = MaterialIds.class,
      description = "What was cast; needed for --cast, --vent and --gate.")
  private String material;

  @Option(
      names = "--fit",
      paramLabel = "GAP=no|tight|good|loose",
      description = "How the key went into the socket of that gap.")
  private List<String> fits = List.of();

  @Option(
      names = "--bar",
      paramLabel = "DRAWN=MEASURED",
      description = "A length on the printed bar, mm.")
  private List<String> bars = List.of();

  @Option(
      names = "--cast",
      paramLabel = "DRAWN=MEASURED",
      description = "A length on the bar cast in it, mm.")
  private List<String> casts = List.of();

  @Option(names = "--vent", paramLabel = "MM", description = "Smallest bore that lets air through.")
  private Double vent;

  @Option(
      names = "--gate",
      paramLabel = "MM",
      description = "Smallest bore that the material runs through.")
  private Double gate;

  @Option(names = "--date", paramLabel = "DATE", description = "When it was read (default: today).")
  private String date = LocalDate.now(java.time.ZoneId.systemDefault()).toString();

  @Option(names = "--json", description = "What is known as one line of JSON.")
  private boolean json;

  @Override
  public Integer call() throws IOException {
    if (material != null) {
      Materials.find(material);
    }
    List<Reading> now = new ArrayList<>();
    for (String f : fits) {
      String[] pair = pair(f);
      now.add(reading(Kind.KEY_FIT, number(pair[0]), null, fit(pair[1])));
    }
    for (String b : bars) {
      now.add(reading(Kind.PRINT_LENGTH, number(pair(b)[0]), number(pair(b)[1]), null));
    }
    for (String c : casts) {
      now.add(reading(Kind.CAST_LENGTH, number(pair(c)[0]), number(pair(c)[1]), null));
    }
    if (vent != null) {
      now.add(reading(Kind.VENT_BORE, vent, null, Fit.GOOD));
    }
    if (gate != null) {
      now.add(reading(Kind.GATE_BORE, gate, null, Fit.GOOD));
    }
    Calibration all = CalibrationFile.read(file).with(now);
    if (!now.isEmpty()) {
      CalibrationFile.write(file, all);
    }
    tell(all);
    return Exit.OK.code();
  }

  private Reading reading(Kind kind, double drawn, Double got, Fit fit) {
    return new Reading(
        kind,
        material,
        printer,
        process.name().toLowerCase(Locale.ROOT),
        drawn,
        got,
        fit,
        "coupon",
        date);
  }

  private void tell(Calibration all) {
    PrintWriter out = spec.commandLine().getOut();
    Calibration.Own own =
        all.of(material == null ? "" : material, printer, process.name().toLowerCase(Locale.ROOT));
    if (json) {
      out.println(Json.line(own));
    } else {
      out.println(all.readings().size() + " readings in " + file + "; of this printer:");
      out.println("  gap of keys        " + mm(own.clearanceMm()));
      out.println("  print shrinks      " + shrink(own.print()));
      if (material != null) {
        out.println("  casting ends less  " + shrink(own.cast()));
        out.println("  smallest vent      " + mm(own.ventMm()));
        out.println("  smallest gate      " + mm(own.gateMm()));
      }
    }
    out.flush();
  }

  private static String mm(Double v) {
    return v == null ? "not read yet" : String.format(Locale.ROOT, "%.2f mm", v);
  }

  static String shrink(LengthFit f) {
    if (f == null) {
      return "not read yet";
    }
    String spread =
        f.spreadPercent() == null
            ? "spread not known"
            : String.format(Locale.ROOT, "± %.2f", f.spreadPercent());
    return String.format(Locale.ROOT, "%.2f %% (%s, %d lengths)", f.percent(), spread, f.lengths());
  }

  static String[] pair(String words) {
    String[] pair = words.split("=", -1);
    if (pair.length != 2) {
      throw new IllegalArgumentException(
          "a reading is two values with = between, as 100=98.9, not '" + words + "'");
    }
    return pair;
  }

  static double number(String words) {
    try {
      return Double.parseDouble(words);
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException("'" + words + "' is no length in mm", e);
    }
  }

  private static Fit fit(String words) {
    for (Fit f : Fit.values()) {
      if (f.name().equalsIgnoreCase(words)) {
        return f;
      }
    }
    throw new IllegalArgumentException(
        "a key goes in: no, tight, good or loose, not '" + words + "'");
  }
}
