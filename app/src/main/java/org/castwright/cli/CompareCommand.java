package org.castwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.castwright.pipeline.Comparison;
import org.castwright.pipeline.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code castwright compare A B}. */
@Command(
    name = "compare",
    description = "Sets two finished molds side by side: what was asked, volumes, pieces, times.",
    footerHeading = Examples.HEADING,
    footer = {"  castwright compare shell-mold shell-mold-2"},
    mixinStandardHelpOptions = true)
final class CompareCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "A", description = "A folder that castwright wrote.")
  private Path a;

  @Parameters(index = "1", paramLabel = "B", description = "Another one.")
  private Path b;

  @Option(names = "--json", description = "As one line of JSON.")
  private boolean json;

  @Override
  public Integer call() throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    Comparison c = Comparison.of(a, b);
    if (json) {
      out.println(Json.line(c));
    } else {
      row(out, "", c.a(), c.b());
      c.settings().forEach(s -> row(out, s.name(), s.a(), s.b()));
      for (Comparison.Value v : c.numbers()) {
        String name = v.unit().isEmpty() ? v.name() : v.name() + ", " + v.unit();
        row(out, name, number(v.a()), number(v.b()));
      }
    }
    out.flush();
    return Exit.OK.code();
  }

  private static void row(PrintWriter out, String name, String x, String y) {
    String mark = name.isEmpty() || x.equals(y) ? " " : "*";
    out.println(String.format(Locale.ROOT, "%s %-34s %-22s %s", mark, name, x, y).stripTrailing());
  }

  private static String number(Double v) {
    if (v == null) {
      return "not known";
    }
    return v == Math.rint(v)
        ? String.format(Locale.ROOT, "%.0f", v)
        : String.format(Locale.ROOT, "%.2f", v);
  }
}
