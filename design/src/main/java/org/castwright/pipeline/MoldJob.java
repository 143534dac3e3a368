package org.castwright.pipeline;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.castwright.advice.PourAdvice;
import org.castwright.mold.Mold;
import org.castwright.mold.Piece;
import org.castwright.mold.Relief;
import org.castwright.plan.CaughtException;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.MoldPlan;
import org.castwright.plan.Openings;
import org.castwright.progress.Beside;
import org.castwright.progress.Progress;
import org.castwright.proof.Mend;
import org.castwright.proof.Mender;
import org.castwright.proof.Proof;
import org.castwright.proof.ProofInput;
import org.castwright.solid.SolidKernel;

/**
 * The whole job: read, heal, plan, cut, write aside, prove from the files, draw, move into place.
 * The order of steps is written here and nowhere else.
 */
public final class MoldJob {

  /** The program's version as reports state it. */
  public static final String VERSION = "0.1.0";

  private static final String NOT_PLACED =
      "With gate and vents where they were asked for no mold was proved: they stand where they would"
          + " without being asked for.";

  /** How often pieces are relieved where that can mend all that fails. */
  private static final int RELIEFS = 6;

  private final JobOptions options;
  private final SolidKernel kernel;
  private final Artist artist;
  private final Progress progress;
  private final Timings timings = new Timings();

  public MoldJob(JobOptions options, SolidKernel kernel, Artist artist, Progress progress) {
    this.options = options;
    this.kernel = kernel;
    this.artist = artist;
    this.progress = progress;
  }

  /** What came of a job. */
  public record Result(Report report, Mold mold, Proof proof) {}

  /**
   * Reads a model file and makes its mold.
   *
   * @param output folder to appear whole or not at all
   * @throws org.castwright.mesh.MeshException if the model or the folder cannot be used
   * @throws org.castwright.plan.CaughtException if two rigid pieces cannot open it
   * @throws IOException if the disk fails
   */
  public Result run(Path modelFile, Path output) throws IOException {
    try (OutputFolder folder = OutputFolder.at(output)) {
      Progress watch = timings.watching(progress);
      Model model = Model.read(modelFile, options.model(), kernel, watch);
      return run(model, modelFile, folder, output);
    }
  }

  /** As {@link #run(Path, Path)} for a model made in memory. */
  public Result run(Model model, Path output) throws IOException {
    try (OutputFolder folder = OutputFolder.at(output)) {
      return run(model, null, folder, output);
    }
  }

  /** With undercuts filled where that is asked for, or may be and nothing else is proved. */
  private Result run(Model model, Path modelFile, OutputFolder folder, Path output)
      throws IOException {
    Progress watch = timings.watching(progress);
    if (options.mold().blockOutMm3() > 0) {
      Filled filled = Filled.of(model, options.mold(), "", kernel, watch);
      if (filled != null) {
        return published(attempt(filled.model(), filled.options(), modelFile, folder), folder);
      }
    }
    boolean may = options.mold().mayFill(model.mesh());
    Result first = null;
    CaughtException refused = null;
    try {
      first = attempt(model, options.mold(), modelFile, folder);
    } catch (CaughtException e) {
      refused = e;
    }
    if (first != null && unproved(first)) {
      try (OutputFolder other = OutputFolder.at(output)) {
        Openings rest = options.mold().openings().withGateAt(null).withVentsAt(List.of());
        MoldOptions usual = options.mold().with().openings(rest).build();
        Result second = attempt(model.noted(NOT_PLACED), usual, modelFile, other);
        if (second.proof().passed()) {
          return published(second, other);
        }
      } catch (CaughtException e) {
        // the mold as asked stands, with what fails
      }
    }
    Filled filled = null;
    if (may && (first == null || !first.proof().passed())) {
      filled = Filled.of(model, options.mold(), why(first, refused), kernel, watch);
    }
    if (filled != null) {
      try (OutputFolder other = OutputFolder.at(output)) {
        Result second = attempt(filled.model(), filled.options(), modelFile, other);
        if (first == null || second.proof().passed()) {
          return published(second, other);
        }
      }
    }
    if (first == null && refused.speck()) {
      first = attempt(model, options.mold().with().blockOutMm3(0).build(), modelFile, folder);
    }
    if (first == null) {
      throw refused;
    }
    return published(first, folder);
  }

  /** Whether a mold fails whose channels were asked for where they may be to blame. */
  private static boolean unproved(Result r) {
    Openings o = r.mold().plan().options().openings();
    boolean placed = o.gateAt() != null || !o.ventsAt().isEmpty();
    return placed && r.mold().plan().seam().divided() && !r.proof().passed();
  }

  private static String why(Result first, CaughtException refused) {
    return first == null
        ? "As the model is, no mold was made of it: " + refused.getMessage() + "."
        : "As the model is, a mold of "
            + first.mold().pieces().size()
            + " pieces was made, but "
            + first.proof().failures().size()
            + " checks of its proof failed.";
  }

  private static Result published(Result result, OutputFolder folder) throws IOException {
    folder.publish();
    return result;
  }

  /** All of the job but putting the folder in its place. */
  private Result attempt(Model model, MoldOptions asked, Path modelFile, OutputFolder folder)
      throws IOException {
    Progress watch = timings.watching(progress);
    MoldPlan plan = MoldPlan.of(model.mesh(), asked, kernel, watch);
    letGo();
    Mold cut = Mold.build(plan, kernel, watch);
    Path dir = folder.path();
    Beside<Path> pictures = Beside.begin(() -> draw(dir, cut));
    Mold mold;
    Written written;
    Proof proof;
    PourAdvice pouring;
    try {
      mold = relieved(model, cut, asked.leaveMm3(), watch);
      written = write(dir, model, mold, watch);
      letGo();
      timings.start("proof");
      proof = Proof.of(written.input, kernel, progress.as("proof"));
      timings.start("pour");
      pouring = PourFolder.advise(written.input, written.bare, PourFolder.Asked.of(mold), watch);
    } finally {
      // however the proof ends, nobody draws on: the folder may be about to go
      timings.start("pictures");
      pictures.await();
    }
    List<String> warnings = written.warnings;
    try {
      pictures.get();
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    timings.start("report");
    Report report = report(model, mold, proof, warnings).with(pouring);
    writeReport(dir, report);
    Files.writeString(dir.resolve("sheet.txt"), JobSheet.of(report, mold));
    if (modelFile != null) {
      Files.writeString(dir.resolve(JobFile.NAME), JobFile.write(modelFile, options));
    }
    if (!options.mold().wishes().all().isEmpty()) {
      WishesFile.write(dir.resolve(WishesFile.NAME), options.mold().wishes());
    }
    artist.finish(dir, report, mold, watch);
    return new Result(report, mold, proof);
  }

  /** A mold without what is too thin or caught, where small changes mend it. */
  private Mold relieved(Model model, Mold cut, double leaveMm3, Progress watch) throws IOException {
    Mold mold = cut;
    Mender mender = new Mender(kernel, progress.as("thin places"));
    Mend mend = Mend.NOTHING;
    Relief relief = null;
    Set<String> changed = null;
    for (int n = 0; n < RELIEFS; n++) {
      watch.at("thin places", 0);
      Report bare = report(model, mold, null, List.of());
      ProofInput input = ProofFolder.input(bare, MoldFiles.bodies(mold)::get);
      Mend more = mender.look(input, changed);
      if (more.isEmpty()) {
        break;
      }
      mend = mend.and(more);
      relief = relief == null ? new Relief(cut, leaveMm3, kernel) : relief;
      Optional<Mold> less = relief.with(mend.edges(), mend.webs(), mend.caught().keySet(), watch);
      if (less.isEmpty()) {
        break;
      }
      changed = newPieces(less.get(), mold);
      mold = less.get();
    }
    return mold;
  }

  /** The names of the pieces of a mold that are not those of another. */
  private static Set<String> newPieces(Mold mold, Mold other) {
    return mold.pieces().stream()
        .filter(p -> !other.pieces().contains(p))
        .map(Piece::name)
        .collect(Collectors.toSet());
  }

  /** A mold's files as read back, with the report they stand under until they are judged. */
  private record Written(ProofInput input, Report bare, List<String> warnings) {}

  private Written write(Path dir, Model model, Mold mold, Progress watch) throws IOException {
    watch.at("write", 0);
    MoldFiles.write(dir, mold);
    List<String> warnings = new ArrayList<>(model.warnings());
    warnings.addAll(mold.warnings());
    Report bare = report(model, mold, null, warnings);
    writeReport(dir, bare);
    return new Written(ProofFolder.read(dir), bare, warnings);
  }

  private Report report(Model model, Mold mold, Proof proof, List<String> warnings) {
    return ReportMaker.of(VERSION, model, mold, options, proof, timings.rounded(), warnings);
  }

  /** Draws the pictures of a mold; gives their folder. */
  private Path draw(Path dir, Mold mold) {
    try {
      Path pictures = Files.createDirectories(dir.resolve("pictures"));
      artist.draw(pictures, mold, progress);
      return pictures;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Lets the memory of finished work go before the next large work asks for more: a tenth of a
   * second here, where a heap that grows instead costs seconds and half as much memory again.
   */
  private static void letGo() {
    System.gc();
  }

  private static void writeReport(Path dir, Report report) throws IOException {
    Files.writeString(dir.resolve("report.json"), Json.write(report));
  }
}
