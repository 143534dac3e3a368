package org.castwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.castwright.pipeline.Json;
import org.castwright.pipeline.ProofFolder;
import org.castwright.pipeline.Report;
import org.castwright.proof.Proof;
import org.castwright.proof.ProofCheck;
import org.castwright.solid.SolidKernel;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code castwright prove DIR}: the proof alone, on files already written. */
@Command(
    name = "prove",
    description = "Proves a mold folder again from its files alone; writes nothing.",
    footerHeading = Examples.HEADING,
    footer = {"  castwright prove shell-mold", "  castwright prove shell-mold --json"},
    mixinStandardHelpOptions = true)
final class ProveCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "DIR", description = "A folder that castwright wrote.")
  private Path folder;

  @Mixin private RunArguments run;

  @Override
  public Integer call() throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    try (SolidKernel kernel = Kernels.warming()) {
      Proof proof =
          Proof.of(
              ProofFolder.read(folder), kernel, run.progress(out, spec.commandLine().getErr()));
      if (run.json()) {
        out.println(Json.line(Report.ProofInfo.of(proof)));
      } else if (!run.quiet()) {
        for (ProofCheck c : proof.checks()) {
          out.println((c.passed() ? "  ok    " : "FAILED  ") + c.name() + ": " + c.words());
        }
        out.println(proof.passed() ? "proved" : "NOT proved");
      }
      out.flush();
      return proof.passed() ? Exit.OK.code() : Exit.UNPROVED.code();
    }
  }
}
