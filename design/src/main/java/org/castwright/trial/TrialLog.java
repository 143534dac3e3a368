package org.castwright.trial;

import java.util.ArrayList;
import java.util.List;

/**
 * The trials of a mold and of those it was made from.
 *
 * @param madeFrom name of the version before, or null for the first
 * @param trials oldest first, those of earlier versions included
 */
public record TrialLog(String madeFrom, List<Trial> trials) {

  /** No trial yet. */
  public static final TrialLog EMPTY = new TrialLog(null, List.of());

  /** More trials than this are a slip. */
  private static final int MOST = 1000;

  public TrialLog {
    trials = trials == null ? List.of() : List.copyOf(trials);
    if (trials.size() > MOST) {
      throw new IllegalArgumentException("a trial log holds at most 1000 trials");
    }
  }

  /**
   * One test cast.
   *
   * @param job name of the mold that was cast
   * @param date ISO 8601, as the maker gives it
   * @param printer name of the maker's own, may be empty
   * @param notes what happened
   * @param answers one to each note
   * @param applied the changes taken over, empty while none were
   * @param next name of the version they were applied to, or null
   */
  public record Trial(
      String job,
      String date,
      String printer,
      List<Note> notes,
      List<Answer> answers,
      List<Change> applied,
      String next) {

    public Trial {
      notes = List.copyOf(notes);
      answers = List.copyOf(answers);
      applied = applied == null ? List.of() : List.copyOf(applied);
    }

    /** With what was taken over. */
    public Trial applied(List<Change> changes, String version) {
      return new Trial(job, date, printer, notes, answers, changes, version);
    }
  }

  /** With a further trial. */
  public TrialLog with(Trial t) {
    List<Trial> all = new ArrayList<>(trials);
    all.add(t);
    return new TrialLog(madeFrom, all);
  }

  /** With the trial at an index replaced. */
  public TrialLog with(int index, Trial t) {
    List<Trial> all = new ArrayList<>(trials);
    all.set(index, t);
    return new TrialLog(madeFrom, all);
  }

  /** The log of a version made from this one. */
  public TrialLog handedOn(String from) {
    return new TrialLog(from, trials);
  }
}
