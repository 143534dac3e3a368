package org.castwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.castwright.pipeline.Json;
import org.castwright.pipeline.Report;
import org.castwright.plan.CaughtException;
import org.castwright.survey.CaughtPlace;

/** What the person sees at the end. */
final class Summary {

  /** Ways on when two rigid pieces do not open. */
  static final List<String> HELPS =
      List.of(
          "a casting material that stretches (silicone, gummy), which may slip past shallow catches",
          "more than two pieces, pulled in other directions",
          "a flexible skin in a rigid jacket");

  /** Ways on when no number of rigid pieces opens it. */
  private static final List<String> HELPS_ALWAYS =
      List.of(
          "a flexible skin in a rigid jacket",
          "filling the space named, or a way into it that one pull can take");

  private Summary() {}

  /** Prints the result; returns the exit code. */
  static int print(Report r, Path folder, RunArguments run, PrintWriter out) {
    boolean passed = r.proof().passed();
    if (run.json()) {
      out.println(
          Json.line(new Done(folder.toString(), passed, r.timingsS().get("total"), r.warnings())));
    } else if (!run.quiet()) {
      words(r, folder, out);
    }
    out.flush();
    return passed ? Exit.OK.code() : Exit.UNPROVED.code();
  }

  private static void words(Report r, Path folder, PrintWriter out) {
    line(
        out,
        "%s: %d pieces, %.1f cm³ to print, %.1f cm³ (%.3f kg) to pour, seam %s",
        r.proof().passed() ? "proved" : "NOT proved",
        r.pieces().size(),
        r.volumes().piecesMm3() / 1000,
        r.pour().volumeToPourMm3() / 1000,
        r.pour().massToPourKg(),
        r.parting().flat() ? "flat" : "following the model");
    r.proof().checks().stream()
        .filter(c -> !c.passed())
        .forEach(c -> line(out, "FAILED %s: %s", c.name(), c.words()));
    r.input().healing().forEach(h -> line(out, "healed %s: %s", h.name(), h.words()));
    r.warnings().forEach(w -> line(out, "note: %s", w));
    line(
        out,
        "%d checks, %.1f s; read %s first",
        r.proof().checks().size(),
        r.timingsS().get("total"),
        folder.resolve("sheet.txt"));
  }

  static void refused(CaughtException e, Path folder, RunArguments run, PrintWriter err) {
    if (run.quiet()) {
      return;
    }
    for (CaughtPlace p : e.survey().caught().places()) {
      line(
          err,
          "caught near (%.1f, %.1f, %.1f): %.1f mm², %.2f mm deep, %.2f mm wide",
          p.center().x(),
          p.center().y(),
          p.center().z(),
          p.area(),
          p.depth(),
          p.width());
    }
    (e.never() ? HELPS_ALWAYS : HELPS).forEach(h -> line(err, "what would help: %s", h));
    line(err, "picture: %s", folder.resolve(Refusal.PICTURE));
    if (!e.unfreed().isEmpty()) {
      line(err, "picture of the space that stays: %s", folder.resolve(Refusal.SPACES));
    }
  }

  private static void line(PrintWriter out, String format, Object... args) {
    out.println(String.format(Locale.ROOT, format, args));
  }

  /** The last line of {@code --json}. */
  record Done(String folder, boolean proved, double seconds, List<String> warnings) {}
}
