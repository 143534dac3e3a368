package org.castwright.parting;

import java.util.ArrayList;
import java.util.List;
import org.castwright.progress.Progress;

/** Tells the progress which stage begins and keeps the seconds of each. */
final class Clock {

  private static final double NANO = 1e-9;

  private final Progress progress;
  private final List<PartingStats.StageSeconds> done = new ArrayList<>();
  private String stage;
  private long since;

  Clock(Progress progress) {
    this.progress = progress;
  }

  /** Ends the running stage and begins another at this share of the whole. */
  void begin(String next, double share) {
    end();
    progress.at("parting: " + next, share);
    stage = next;
    since = System.nanoTime();
  }

  /** Ends the running stage. */
  List<PartingStats.StageSeconds> end() {
    if (stage != null) {
      done.add(new PartingStats.StageSeconds(stage, (System.nanoTime() - since) * NANO));
      stage = null;
    }
    return done;
  }
}
