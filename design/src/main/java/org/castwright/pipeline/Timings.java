package org.castwright.pipeline;

import java.util.LinkedHashMap;
import java.util.Map;
import org.castwright.progress.Progress;

/** Seconds by stage, in the order the stages first ran. */
final class Timings {

  private static final double NANO = 1e-9;

  private final Map<String, Double> seconds = new LinkedHashMap<>();
  private final long begin = System.nanoTime();
  private long last = begin;
  private String running;

  /** A progress that passes everything on and charges time to the stage last named. */
  Progress watching(Progress inner) {
    return (stage, share) -> {
      start(stage);
      inner.at(stage, share);
    };
  }

  /** Ends the running stage and starts another. */
  synchronized void start(String stage) {
    if (stage.equals(running)) {
      return;
    }
    long now = System.nanoTime();
    if (running != null) {
      seconds.merge(running, (now - last) * NANO, Double::sum);
    }
    last = now;
    running = stage;
  }

  /** All stages so far and the total, to the millisecond. */
  synchronized Map<String, Double> rounded() {
    Map<String, Double> out = new LinkedHashMap<>();
    seconds.forEach((k, v) -> out.put(k, Math.round(v * 1000) / 1000.0));
    out.put("total", Math.round((System.nanoTime() - begin) * NANO * 1000) / 1000.0);
    return out;
  }
}
