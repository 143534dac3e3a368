package org.castwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.castwright.coupon.CouponOptions;
import org.castwright.pipeline.CouponFolder;
import org.castwright.plan.KeyShape;
import org.castwright.plan.PrintProcess;
import org.castwright.solid.SolidKernel;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code castwright coupon -o DIR}. */
@Command(
    name = "coupon",
    description =
        "Makes small test prints: a key with sockets at a ladder of gaps, a trough for a bar that"
            + " shows shrink, a plate of bores. What you read from them goes in by 'castwright"
            + " calibrate'.",
    footerHeading = Examples.HEADING,
    footer = {
      "  castwright coupon -o coupons",
      "  castwright coupon --process resin --gaps 0.1,0.15,0.2 -o resin-coupons"
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class CouponCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "DIR",
      description = "Folder to write; appears whole or not at all.")
  private Path output;

  @Option(
      names = "--process",
      paramLabel = "fdm|resin",
      defaultValue = "fdm",
      description = "Printing process (default: ${DEFAULT-VALUE}).")
  private PrintProcess process;

  @Option(
      names = "--keys",
      paramLabel = "cone|dome",
      defaultValue = "cone",
      description = "Shape of the key (default: ${DEFAULT-VALUE}).")
  private KeyShape keys;

  @Option(
      names = "--key",
      paramLabel = "MM",
      defaultValue = "10",
      description = "Diameter of the key (default: ${DEFAULT-VALUE}).")
  private double key;

  @Option(
      names = "--gaps",
      paramLabel = "MM",
      split = ",",
      description = "Ladder of gaps, rising (default: round the process's own by 0.05).")
  private List<Double> gaps;

  @Override
  public Integer call() throws IOException {
    CouponOptions o = CouponOptions.of(process).withKey(keys, key);
    if (gaps != null) {
      o = o.withGapsMm(gaps);
    }
    PrintWriter out = spec.commandLine().getOut();
    try (SolidKernel kernel = Kernels.warming()) {
      CouponFolder.Written w = CouponFolder.write(output, o, kernel);
      out.println("wrote " + String.join(", ", w.files()) + " in " + output);
      out.println("read " + output.resolve(CouponFolder.WORDS) + " first");
    }
    out.flush();
    return Exit.OK.code();
  }
}
