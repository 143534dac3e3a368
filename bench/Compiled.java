import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import jdk.jfr.consumer.RecordedEvent;
import jdk.jfr.consumer.RecordedFrame;
import jdk.jfr.consumer.RecordedMethod;
import jdk.jfr.consumer.RecordingFile;

/**
 * Reads flight recordings of jobs and writes compiler directives (JEP 165) that keep Java from
 * optimizing methods where that takes longer than it can save: those that ran, inlined or not, for
 * less than half the time that their optimized compilations took. A method that never gets an
 * optimized compilation runs at half to a third of the speed.
 *
 * <p>usage: java Compiled.java PERIOD_MS FOLDER ... > directives, a folder of recordings for each
 * round; a method is listed if one round says so
 */
class Compiled {

  /** The level of optimized compilations, by C2. */
  private static final int OPTIMIZED = 4;

  /** A method is listed if it ran for less than this share of what compiling it took. */
  private static final double RUNS = 0.5;

  /** Compilations that take less a job are not worth a line, s. */
  private static final double LEAST = 0.02;

  private static final double NANOS = 1e-9;

  /** What a method took in all recordings, s, and in how many of them it was optimized. */
  private static final class Cost {
    double compiled;
    double ran;
    int jobs;

    boolean wasted() {
      return jobs > 0 && compiled >= LEAST * jobs && ran < RUNS * compiled;
    }
  }

  private final Map<String, Cost> costs = new TreeMap<>();
  private final double period;

  private Compiled(double period) {
    this.period = period;
  }

  public static void main(String[] args) throws IOException {
    SortedSet<String> listed = new TreeSet<>();
    for (int i = 1; i < args.length; i++) {
      Compiled round = new Compiled(Double.parseDouble(args[0]) / 1000);
      try (Stream<Path> files = Files.list(Path.of(args[i]))) {
        for (Path file : files.sorted().toList()) {
          round.read(file);
        }
      }
      listed.addAll(round.wasted());
    }
    write(listed);
  }

  private void read(Path recording) throws IOException {
    Set<Cost> here = new HashSet<>();
    try (RecordingFile file = new RecordingFile(recording)) {
      while (file.hasMoreEvents()) {
        RecordedEvent event = file.readEvent();
        String type = event.getEventType().getName();
        if (type.equals("jdk.Compilation") && event.getShort("compileLevel") == OPTIMIZED) {
          Cost cost = cost(event.getValue("method"));
          cost.compiled += event.getDuration().toNanos() * NANOS;
          here.add(cost);
        } else if (type.equals("jdk.ExecutionSample") && event.getStackTrace() != null) {
          for (RecordedFrame frame : event.getStackTrace().getFrames()) {
            cost(frame.getMethod()).ran += period;
            if (!frame.getType().equals("Inlined")) {
              break;
            }
          }
        }
      }
    }
    here.forEach(cost -> cost.jobs++);
  }

  private Cost cost(RecordedMethod method) {
    String name = method.getType().getName().replace('.', '/') + "." + method.getName();
    return costs.computeIfAbsent(name, n -> new Cost());
  }

  private Set<String> wasted() {
    // hidden classes are called otherwise every time, and the recorder is not there without recording
    costs.keySet().removeIf(name -> name.contains("$$") || name.contains("/0x") || name.startsWith("jdk/jfr"));
    double all = costs.values().stream().mapToDouble(c -> c.compiled).sum();
    costs.values().removeIf(c -> !c.wasted());
    double compiled = costs.values().stream().mapToDouble(c -> c.compiled).sum();
    double ran = costs.values().stream().mapToDouble(c -> c.ran).sum();
    System.err.printf(
        "%d methods: %.1f s of %.1f s to compile, %.1f s to run%n",
        costs.size(), compiled, all, ran);
    return costs.keySet();
  }

  private static void write(SortedSet<String> methods) {
    System.out.println("[\n  // methods that take longer to optimize than a job can save by it;");
    System.out.println("  // bench/compile measured them and wrote this");
    System.out.println("  {\n    match: [");
    System.out.println("      \"" + String.join("\",\n      \"", methods) + "\"");
    System.out.println("    ],\n    c2: { Exclude: true }\n  }\n]");
  }
}
