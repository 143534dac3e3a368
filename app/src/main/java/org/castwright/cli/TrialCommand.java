package org.castwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.pipeline.Artist;
import org.castwright.pipeline.CalibrationFile;
import org.castwright.pipeline.JobFile;
import org.castwright.pipeline.Json;
import org.castwright.pipeline.MoldJob;
import org.castwright.pipeline.TrialFolder;
import org.castwright.plan.CaughtException;
import org.castwright.solid.SolidKernel;
import org.castwright.trial.Answer;
import org.castwright.trial.Calibration;
import org.castwright.trial.Change;
import org.castwright.trial.Note;
import org.castwright.trial.Note.Kind;
import org.castwright.trial.TrialLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code castwright trial DIR}: what a test cast told, and a version that answers to it. */
@Command(
    name = "trial",
    description =
        "Notes what happened in a test cast and answers with reasoned changes; with -o makes a new"
            + " version with them. Places are in the mold frame. Without notes it prints the log.",
    footerHeading = Examples.HEADING,
    footer = {
      "  castwright trial shell-mold",
      "  castwright trial shell-mold --air 12,30.5,4 --keys-tight",
      "  castwright trial shell-mold --length 120=118.9 --length 60=59.5 -o shell-mold-2"
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class TrialCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "DIR", description = "The mold that was cast.")
  private Path folder;

  @Option(
      names = "--air",
      paramLabel = "X,Y,Z",
      converter = Vector.class,
      description = "Air was trapped there.")
  private List<Vec3> air = List.of();

  @Option(
      names = "--stuck",
      paramLabel = "X,Y,Z",
      converter = Vector.class,
      description = "The casting held fast there.")
  private List<Vec3> stuck = List.of();

  @Option(names = "--flash", description = "A fin came out at the seam.")
  private boolean flash;

  @Option(
      names = "--length",
      paramLabel = "[AXIS:]WANTED=MEASURED",
      description = "A length of the casting, mm; with x:, y: or z: along that axis of the model.")
  private List<String> lengths = List.of();

  @Option(names = "--short", description = "The casting did not fill.")
  private boolean shortFill;

  @Option(names = "--keys-tight", description = "Keys are too tight.")
  private boolean tight;

  @Option(names = "--keys-loose", description = "Keys are too loose.")
  private boolean loose;

  @Option(names = "--soft", description = "The print softened or bent.")
  private boolean soft;

  @Option(names = "--good", description = "All was as it should be.")
  private boolean good;

  @Option(names = "--date", paramLabel = "DATE", description = "When it was cast (default: today).")
  private String date = LocalDate.now(java.time.ZoneId.systemDefault()).toString();

  @Option(
      names = {"-o", "--output"},
      paramLabel = "DIR",
      description = "Apply the first change of each answer to a new version, written there.")
  private Path output;

  @Mixin private PrinterArguments printer;
  @Mixin private SheetArguments sheet;
  @Mixin private RunArguments run;

  @Override
  public Integer call() throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    List<Note> notes = notes();
    if (notes.isEmpty()) {
      if (output != null) {
        throw new MeshException("a new version needs notes of what happened; see 'trial --help'.");
      }
      history(TrialFolder.read(folder), out);
      return Exit.OK.code();
    }
    Calibration own = printer.read();
    TrialFolder.Noted noted = TrialFolder.note(folder, date, printer.name(), notes, own);
    if (printer.file() != null && !noted.readings().isEmpty()) {
      CalibrationFile.write(printer.file(), own.with(noted.readings()));
    }
    if (run.json()) {
      out.println(Json.line(noted.trial()));
    } else if (!run.quiet()) {
      tell(noted.trial(), out);
    }
    out.flush();
    return output == null ? Exit.OK.code() : apply(noted, out);
  }

  private List<Note> notes() {
    List<Note> out = new ArrayList<>();
    air.forEach(p -> out.add(Note.of(Kind.AIR, place(p))));
    stuck.forEach(p -> out.add(Note.of(Kind.STUCK, place(p))));
    if (!lengths.isEmpty()) {
      List<Note.Length> all = new ArrayList<>();
      for (String l : lengths) {
        String[] along = l.split(":", 2);
        String[] pair = CalibrateCommand.pair(along[along.length - 1]);
        all.add(
            new Note.Length(
                CalibrateCommand.number(pair[0]),
                CalibrateCommand.number(pair[1]),
                along.length > 1 ? along[0] : null));
      }
      out.add(Note.ofSize(all));
    }
    plain(flash, Kind.FLASH, out);
    plain(shortFill, Kind.SHORT, out);
    plain(tight, Kind.KEYS_TIGHT, out);
    plain(loose, Kind.KEYS_LOOSE, out);
    plain(soft, Kind.SOFT, out);
    plain(good, Kind.GOOD, out);
    return out;
  }

  private static void plain(boolean seen, Kind kind, List<Note> out) {
    if (seen) {
      out.add(Note.of(kind, null));
    }
  }

  private static List<Double> place(Vec3 p) {
    return List.of(p.x(), p.y(), p.z());
  }

  private int apply(TrialFolder.Noted noted, PrintWriter out) throws IOException {
    List<Change> changes =
        noted.trial().answers().stream()
            .filter(a -> !a.changes().isEmpty())
            .map(a -> a.changes().get(0))
            .toList();
    if (changes.isEmpty()) {
      throw new MeshException("no answer changes the mold, so there is no new version to make.");
    }
    JobFile.Job job = TrialFolder.changed(folder, changes);
    TrialLog log = TrialFolder.read(folder);
    String version = output.toAbsolutePath().normalize().getFileName().toString();
    TrialLog.Trial applied = log.trials().get(noted.index()).applied(changes, version);
    TrialLog next = log.with(noted.index(), applied);
    PrintWriter err = spec.commandLine().getErr();
    try (SolidKernel kernel = Kernels.warming()) {
      Artist artist =
          TrialFolder.handingOn(
              new MoldArtist(run.threads(), sheet.options()), next.handedOn(noted.trial().job()));
      MoldJob again = new MoldJob(job.options(), kernel, artist, run.progress(out, err));
      MoldJob.Result result = again.run(Path.of(job.model()), output);
      TrialFolder.write(folder, next);
      return Summary.print(result.report(), output, run, out);
    } catch (CaughtException e) {
      Refusal.write(e, output, run.threads());
      Summary.refused(e, output, run, err);
      throw e;
    }
  }

  private static void history(TrialLog log, PrintWriter out) {
    if (log.trials().isEmpty()) {
      out.println("no trial was noted yet");
    }
    for (TrialLog.Trial t : log.trials()) {
      out.println(t.date() + "  " + t.job());
      tell(t, out);
      if (t.next() != null) {
        out.println("  applied in " + t.next() + ":");
        t.applied().forEach(c -> out.println("    " + words(c)));
      }
    }
    out.flush();
  }

  private static void tell(TrialLog.Trial t, PrintWriter out) {
    for (Answer a : t.answers()) {
      Note n = t.notes().get(a.note());
      out.println("  " + n.kind().words() + (n.at() == null ? "" : " at " + n.at()));
      out.println("    " + a.because());
      a.changes().forEach(c -> out.println("    change: " + words(c)));
      a.advice().forEach(w -> out.println("    " + w));
      out.println("    [" + a.source() + "]");
    }
  }

  private static String words(Change c) {
    return c.option().words() + ": " + c.from() + " -> " + c.to();
  }
}
