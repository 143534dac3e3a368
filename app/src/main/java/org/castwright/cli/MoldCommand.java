package org.castwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.castwright.mesh.MeshException;
import org.castwright.pipeline.JobFile;
import org.castwright.pipeline.JobOptions;
import org.castwright.pipeline.MoldJob;
import org.castwright.plan.CaughtException;
import org.castwright.solid.SolidKernel;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code castwright mold MODEL -o DIR}. */
@Command(
    name = "mold",
    description =
        "Makes a mold of two or more pieces from a model and proves it from the files written.",
    footerHeading = Examples.HEADING,
    footer = {
      "  castwright mold shell.stl --size 90 -m soap-melt-and-pour -o shell-mold",
      "  castwright mold bust.3mf -m plaster-pottery --block contour --closing bolts -o bust-mold",
      "  castwright mold vase.obj --units cm --pieces auto --paper letter --sheet-units inch -o vase-mold",
      "  castwright mold --job shell-mold/job.json -o shell-mold-again"
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class MoldCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "MODEL",
      description = "STL, OBJ, PLY, OFF or 3MF file, plain or gzipped.")
  private Path model;

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "DIR",
      description = "Folder to write; appears whole or not at all.")
  private Path output;

  @Option(
      names = "--job",
      paramLabel = "FILE",
      description = "Run a job.json again; model and all other options come from it.")
  private Path job;

  @Mixin private ModelArguments modelArguments;
  @Mixin private MoldArguments moldArguments;
  @Mixin private PrinterArguments printer;
  @Mixin private SheetArguments sheet;
  @Mixin private RunArguments run;

  @Override
  public Integer call() throws IOException {
    if ((model == null) == (job == null)) {
      throw new MeshException("name one model file, or one job with --job.");
    }
    Path file = model;
    JobOptions options =
        new JobOptions(
            modelArguments.options(),
            printer.use(moldArguments.options(run.threads())),
            moldArguments.bed(),
            moldArguments.wedge());
    if (job != null) {
      JobFile.Job again = JobFile.read(job);
      file = Path.of(again.model());
      options = again.options();
    }
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    try (SolidKernel kernel = Kernels.warmingFor(options.mold())) {
      MoldJob job =
          new MoldJob(
              options,
              kernel,
              new MoldArtist(run.threads(), sheet.options()),
              run.progress(out, err));
      MoldJob.Result result = job.run(file, output);
      return Summary.print(result.report(), output, run, out);
    } catch (CaughtException e) {
      Refusal.write(e, output, run.threads());
      Summary.refused(e, output, run, err);
      throw e;
    }
  }
}
