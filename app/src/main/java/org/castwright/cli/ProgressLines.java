package org.castwright.cli;

import java.io.PrintWriter;
import java.util.Locale;
import org.castwright.progress.Progress;

/** Shows progress as lines: one when a stage begins and one for each further tenth of it. */
final class ProgressLines implements Progress {

  private final PrintWriter out;
  private final boolean json;
  private final long begin = System.nanoTime();
  private String stage = "";
  private int tenth;

  ProgressLines(PrintWriter out, boolean json) {
    this.out = out;
    this.json = json;
  }

  @Override
  public synchronized void at(String name, double share) {
    if (Thread.currentThread().isInterrupted()) {
      throw new CancelledException();
    }
    int t = (int) (10 * share);
    if (name.equals(stage) && t <= tenth) {
      return;
    }
    boolean begins = !name.equals(stage);
    stage = name;
    tenth = t;
    double seconds = (System.nanoTime() - begin) / 1e9;
    if (json) {
      out.println(
          String.format(
              Locale.ROOT,
              "{\"stage\":\"%s\",\"share\":%.2f,\"seconds\":%.2f}",
              name,
              share,
              seconds));
      out.flush();
    } else if (begins) {
      out.println(String.format(Locale.ROOT, "%6.1f s  %s", seconds, name));
      out.flush();
    }
  }
}
