package org.castwright.progress;

/**
 * Told by long work how far it is; asked by it whether to go on. Implementations are safe to call
 * from several threads.
 */
public interface Progress {

  /** Says nothing and never stops. */
  Progress NONE = (stage, share) -> {};

  /**
   * Work on {@code stage} has come to {@code share}, 0 to 1.
   *
   * @throws CancelledException if the work should stop now
   */
  void at(String stage, double share);

  /** The same under one stage name, whatever finer names the work uses. */
  default Progress as(String stage) {
    return (finer, share) -> at(stage, share);
  }

  /** Thrown out of {@link #at} when the person has asked to stop. */
  final class CancelledException extends RuntimeException {
    public CancelledException() {
      super("cancelled");
    }
  }
}
