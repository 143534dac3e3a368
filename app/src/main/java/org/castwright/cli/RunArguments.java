package org.castwright.cli;

import java.io.PrintWriter;
import org.castwright.progress.Progress;
import picocli.CommandLine.Option;

/** How a run behaves; shared by all commands that work long. */
final class RunArguments {

  @Option(
      names = "--threads",
      paramLabel = "N",
      defaultValue = "0",
      description = "Worker threads (default: all processors).")
  private int threads;

  @Option(names = "--quiet", description = "No progress, no summary; errors only.")
  private boolean quiet;

  @Option(
      names = "--json",
      description = "Progress and result as lines of JSON on standard output.")
  private boolean json;

  int threads() {
    return threads == 0 ? Runtime.getRuntime().availableProcessors() : threads;
  }

  boolean quiet() {
    return quiet;
  }

  boolean json() {
    return json;
  }

  Progress progress(PrintWriter out, PrintWriter err) {
    if (json) {
      return new ProgressLines(out, true);
    }
    return quiet ? Progress.NONE : new ProgressLines(err, false);
  }
}
