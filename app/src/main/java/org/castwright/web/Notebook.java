package org.castwright.web;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.castwright.pipeline.CalibrationFile;
import org.castwright.pipeline.TrialFolder;
import org.castwright.trial.Calibration;
import org.castwright.trial.Note;
import org.castwright.trial.Reading;
import org.castwright.trial.Readings;
import org.castwright.trial.TrialLog;

/**
 * Trial logs of jobs and the maker's own readings. One writer at a time, and never while jobs are
 * renamed, so that two tabs do not write over each other.
 */
final class Notebook {

  private final Shelf shelf;
  private final Path readings;

  Notebook(Shelf shelf) {
    this.shelf = shelf;
    readings = shelf.root().resolve(CalibrationFile.NAME);
  }

  /** The log of a job. */
  TrialLog log(String job) throws IOException {
    return TrialFolder.read(shelf.job(job));
  }

  /** Notes a trial of a job, and what it adds to the readings. */
  TrialFolder.Noted note(String job, String date, String printer, List<Note> notes)
      throws IOException {
    synchronized (shelf) {
      Calibration own = calibration();
      TrialFolder.Noted noted = TrialFolder.note(shelf.job(job), date, named(printer), notes, own);
      if (!noted.readings().isEmpty()) {
        CalibrationFile.write(readings, own.with(noted.readings()));
      }
      return noted;
    }
  }

  static String named(String printer) {
    return printer == null || printer.isBlank() ? Readings.NO_PRINTER : printer.strip();
  }

  /** The log that a version takes along; null for one that answers no trial. */
  TrialLog handOn(Order.Answering a, String version) throws IOException {
    if (a == null) {
      return null;
    }
    synchronized (shelf) {
      Path dir = shelf.named(a.job());
      TrialLog log = Shelf.isJob(dir) ? TrialFolder.read(dir) : TrialLog.EMPTY;
      return with(log, a, version).handedOn(a.job());
    }
  }

  /** Writes into the log of the job that was cast what came of it. */
  void applied(Order.Answering a, String version) throws IOException {
    if (a == null) {
      return;
    }
    synchronized (shelf) {
      Path dir = shelf.named(a.job());
      if (Shelf.isJob(dir)) {
        TrialFolder.write(dir, with(TrialFolder.read(dir), a, version));
      }
    }
  }

  private static TrialLog with(TrialLog log, Order.Answering a, String version) {
    return a.trial() < log.trials().size()
        ? log.with(a.trial(), log.trials().get(a.trial()).applied(a.changes(), version))
        : log;
  }

  /** The maker's own readings. */
  Calibration calibration() throws IOException {
    return CalibrationFile.read(readings);
  }

  /** Adds readings. */
  Calibration add(List<Reading> more) throws IOException {
    synchronized (shelf) {
      Calibration all = calibration().with(more);
      CalibrationFile.write(readings, all);
      return all;
    }
  }

  /**
   * Removes a reading.
   *
   * @param of how many the page saw, so that two pages do not remove different ones
   */
  Calibration strike(int index, int of) throws IOException {
    synchronized (shelf) {
      Calibration all = calibration();
      if (all.readings().size() != of || index < 0 || index >= of) {
        throw new Refused(409, "The readings have changed meanwhile; look again.");
      }
      Calibration less = all.without(index);
      CalibrationFile.write(readings, less);
      return less;
    }
  }
}
