package org.castwright.web;

import org.castwright.progress.Progress;

/** A job since this start: where it stands, and a way to stop it. Safe for threads. */
final class Job implements Progress {

  /** Where a job stands. */
  enum State {
    WAITING,
    RUNNING,
    PROVED,
    UNPROVED,
    REFUSED,
    FAILED,
    CANCELLED,
    /** An earlier run of the program ended under it. */
    INTERRUPTED
  }

  private final String name;
  private State state = State.WAITING;
  private String stage = "waiting";
  private double share;
  private String words = "";
  private boolean cancelled;
  private long begin;
  private long end;

  Job(String name) {
    this.name = name;
  }

  /**
   * What is told of a job.
   *
   * @param share of the stage, 0 to 1
   * @param words one sentence at the end
   * @param seconds since it began
   */
  record Status(
      String name, String state, String stage, double share, String words, double seconds) {}

  synchronized Status status() {
    long until = end == 0 ? System.nanoTime() : end;
    double seconds = begin == 0 ? 0 : Math.round((until - begin) / 1e8) / 10.0;
    String now = state.name().toLowerCase(java.util.Locale.ROOT);
    return new Status(name, now, stage, share, words, seconds);
  }

  String name() {
    return name;
  }

  synchronized State state() {
    return state;
  }

  synchronized boolean over() {
    return state != State.WAITING && state != State.RUNNING;
  }

  /** Begins, unless it was cancelled while waiting. */
  synchronized boolean begin() {
    if (cancelled) {
      return false;
    }
    state = State.RUNNING;
    begin = System.nanoTime();
    return true;
  }

  synchronized void end(State last, String sentence) {
    if (!over()) {
      state = last;
      words = sentence;
      end = System.nanoTime();
    }
  }

  /** Stops it: at once if it waits, at its next step if it runs. */
  synchronized void cancel() {
    cancelled = true;
    if (state == State.WAITING) {
      end(State.CANCELLED, "Cancelled before it began.");
    }
  }

  @Override
  public synchronized void at(String name, double done) {
    if (cancelled) {
      throw new CancelledException();
    }
    stage = name;
    share = done;
  }
}
