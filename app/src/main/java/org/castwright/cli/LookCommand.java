package org.castwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.castwright.cover.Cover;
import org.castwright.cover.CoverResult;
import org.castwright.geom.Vec3;
import org.castwright.pipeline.Json;
import org.castwright.pipeline.LookReport;
import org.castwright.pipeline.Model;
import org.castwright.plan.MoldOptions;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import org.castwright.survey.Survey;
import org.castwright.survey.SurveyOptions;
import org.castwright.survey.SurveyResult;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code castwright look MODEL}: health and opening of a model, nothing built. */
@Command(
    name = "look",
    description = "Reads a model, heals it in memory and says how it opens in rigid pieces.",
    footerHeading = Examples.HEADING,
    footer = {
      "  castwright look shell.stl --size 90",
      "  castwright look vase.stl --pieces auto --json",
      "  castwright look bust.stl --pull 0,1,0 --picture caught.png"
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class LookCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "MODEL", description = "The model file.")
  private Path file;

  @Option(
      names = "--release",
      paramLabel = "MM",
      defaultValue = "0.05",
      description = "Width of a catch that still counts as free (default: ${DEFAULT-VALUE}).")
  private double release;

  @Option(
      names = "--picture",
      paramLabel = "FILE",
      description = "Write a PNG of the caught places.")
  private Path picture;

  @Mixin private PullArguments pulls;
  @Mixin private PiecesArguments pieces;
  @Mixin private ModelArguments modelArguments;
  @Mixin private RunArguments run;

  @Override
  public Integer call() throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    MoldOptions asked = pieces.asked(pulls);
    Vec3 pull = asked.pullOfFirst();
    Progress progress = run.json() ? Progress.NONE : run.progress(out, spec.commandLine().getErr());
    try (SolidKernel kernel = Kernels.warming()) {
      Model model = Model.read(file, modelArguments.options(), kernel, progress);
      SurveyOptions o = SurveyOptions.DEFAULT.withThreads(run.threads()).withReleaseMm(release);
      SurveyResult s =
          pull == null
              ? Survey.of(model.mesh(), o, progress)
              : Survey.along(model.mesh(), pull.unit(), o, progress);
      CoverResult cover =
          pieces.asked()
              ? Cover.of(model.mesh(), pieces.options(asked, run.threads()), progress)
              : null;
      LookReport report = LookReport.of(model, s, release, cover);
      if (run.json()) {
        out.println(Json.write(report).stripTrailing());
      } else {
        print(report, out);
      }
      if (picture != null) {
        Refusal.picture(model.mesh(), s, picture, run.threads());
      }
      out.flush();
      boolean opens = cover == null ? s.best().free() : cover.opens();
      return opens ? Exit.OK.code() : Exit.CAUGHT.code();
    }
  }

  private static void print(LookReport r, PrintWriter out) {
    line(
        out,
        "%s: %d triangles, %s mm",
        r.input().file(),
        r.input().triangles(),
        list(r.input().sizeMm()));
    line(
        out,
        "  volume %.1f mm³, area %.1f mm², %d shell(s), genus %d",
        r.health().volumeMm3(),
        r.health().areaMm2(),
        r.health().shells(),
        r.health().genus());
    r.input().healing().forEach(h -> line(out, "  healed %s: %s", h.name(), h.words()));
    r.warnings().forEach(w -> line(out, "  note: %s", w));
    var s = r.survey();
    line(
        out,
        s.free()
            ? "opens in two rigid pieces along %s"
            : "does NOT open in two rigid pieces; least caught along %s",
        list(s.direction()));
    line(
        out,
        "  trapped %.3f mm³ (noise %.3f), caught %.2f mm², %.2f mm deep, %.3f mm wide (release %.3f)",
        s.trappedVolumeMm3(),
        s.noiseFloorMm3(),
        s.caughtAreaMm2(),
        s.caughtDepthMm(),
        s.caughtWidthMm(),
        s.releaseMm());
    line(
        out,
        "  draw %.2f mm (%.2f above the seam, %.2f below), seam leaves a plane by %.2f mm, %d silhouette loop(s)",
        s.drawDepthMm(),
        s.drawAboveMm(),
        s.drawBelowMm(),
        s.flatnessMm(),
        s.silhouetteLoops());
    StringBuilder draft = new StringBuilder("  share of area under");
    s.shareOfAreaUnderDraft()
        .forEach((k, v) -> draft.append(String.format(Locale.ROOT, "  %s°: %.1f %%", k, 100 * v)));
    line(out, "%s", draft);
    for (var c : s.caught()) {
      line(
          out,
          "  caught near (%s): %.1f mm², %.2f mm deep, %.2f mm wide",
          list(c.center()),
          c.areaMm2(),
          c.depthMm(),
          c.widthMm());
    }
    if (r.cover() != null) {
      CoverWords.print(r.cover(), out);
    } else if (!s.free()) {
      Summary.HELPS.forEach(h -> line(out, "  what would help: %s", h));
    }
  }

  private static String list(List<Double> v) {
    return String.format(Locale.ROOT, "%.4g, %.4g, %.4g", v.get(0), v.get(1), v.get(2));
  }

  private static void line(PrintWriter out, String format, Object... args) {
    out.println(String.format(Locale.ROOT, format, args));
  }
}
