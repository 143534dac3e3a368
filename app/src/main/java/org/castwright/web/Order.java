package org.castwright.web;

import java.nio.file.Path;
import java.util.List;
import org.castwright.pipeline.JobOptions;
import org.castwright.sheet.SheetOptions;
import org.castwright.trial.Change;
import org.castwright.trial.TrialLog;

/**
 * A mold somebody asked for.
 *
 * @param model file
 * @param options of the job
 * @param sheet how it is printed
 * @param answering the trial it answers, or null
 * @param log to hand on to it, or null; filled in when it runs
 */
public record Order(
    Path model, JobOptions options, SheetOptions sheet, Answering answering, TrialLog log) {

  /** A mold that answers no trial. */
  public Order(Path model, JobOptions options, SheetOptions sheet) {
    this(model, options, sheet, null, null);
  }

  /**
   * Which trial a version answers.
   *
   * @param job that was cast
   * @param trial index in its log
   * @param changes taken over
   */
  public record Answering(String job, int trial, List<Change> changes) {}

  Order with(TrialLog handedOn) {
    return new Order(model, options, sheet, answering, handedOn);
  }
}
