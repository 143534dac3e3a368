package org.castwright.pipeline;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.castwright.mesh.MeshException;
import org.castwright.mold.Mold;
import org.castwright.progress.Progress;
import org.castwright.trial.Answer;
import org.castwright.trial.Calibration;
import org.castwright.trial.Change;
import org.castwright.trial.Facts;
import org.castwright.trial.Note;
import org.castwright.trial.Reading;
import org.castwright.trial.Readings;
import org.castwright.trial.Reasoner;
import org.castwright.trial.TrialLog;

/** {@code trials.json} of a mold folder: what test casts told, and what was changed after them. */
public final class TrialFolder {

  /** The log's name in a mold folder. */
  public static final String NAME = "trials.json";

  private TrialFolder() {}

  /** As written. */
  record Kept(String castwright, TrialLog log) {}

  /**
   * A trial that was noted.
   *
   * @param index in the log
   * @param readings it adds to the calibration
   */
  public record Noted(int index, TrialLog.Trial trial, List<Reading> readings) {}

  /**
   * The log of a folder; empty when nothing was noted.
   *
   * @throws MeshException if it is damaged
   */
  public static TrialLog read(Path dir) throws IOException {
    Path file = dir.resolve(NAME);
    if (!Files.exists(file)) {
      return TrialLog.EMPTY;
    }
    try {
      Kept kept = Json.read(Files.readString(file), Kept.class);
      if (kept == null || kept.log() == null) {
        throw new MeshException(file + " is not a trial log; move it away.");
      }
      return kept.log();
    } catch (JsonProcessingException e) {
      throw new MeshException(file + " is not a trial log: " + e.getOriginalMessage() + ".", e);
    }
  }

  /** Replaces the log in one step. */
  public static void write(Path dir, TrialLog log) throws IOException {
    WholeFile.write(dir.resolve(NAME), Json.write(new Kept(MoldJob.VERSION, log)));
  }

  /**
   * Answers the notes of a test cast and writes both into the log.
   *
   * @param own readings before this trial
   * @throws MeshException if the folder is not a finished mold
   * @throws IllegalArgumentException if there is no note
   */
  public static Noted note(Path dir, String date, String printer, List<Note> notes, Calibration own)
      throws IOException {
    if (notes.isEmpty()) {
      throw new IllegalArgumentException("a trial needs at least one note of what happened");
    }
    Facts facts = TrialFacts.of(dir, printer, notes);
    List<Answer> answers = Reasoner.answer(notes, facts, own);
    String job = dir.toAbsolutePath().normalize().getFileName().toString();
    TrialLog log = read(dir);
    TrialLog.Trial trial = new TrialLog.Trial(job, date, printer, notes, answers, List.of(), null);
    write(dir, log.with(trial));
    List<Reading> readings = new Readings(facts, job, date).of(notes);
    return new Noted(log.trials().size(), trial, readings);
  }

  /**
   * The job of a folder with changes applied; the folder stays as it is.
   *
   * @throws MeshException if the folder has no job, or its model is gone or has changed
   * @throws IllegalArgumentException if a change does not hold
   */
  public static JobFile.Job changed(Path dir, List<Change> changes) throws IOException {
    JobFile.Job job = JobFile.read(dir.resolve(JobFile.NAME));
    JobOptions o = new Changes(ProofFolder.report(dir)).apply(job.options(), changes);
    return new JobFile.Job(job.castwright(), job.model(), job.modelSha256(), o);
  }

  /** An artist that also hands the log on to the new version, before its folder appears. */
  public static Artist handingOn(Artist artist, TrialLog log) {
    return new Artist() {
      @Override
      public void draw(Path folder, Mold mold, Progress progress) throws IOException {
        artist.draw(folder, mold, progress);
      }

      @Override
      public void finish(Path folder, Report report, Mold mold, Progress progress)
          throws IOException {
        artist.finish(folder, report, mold, progress);
        write(folder, log);
      }
    };
  }
}
