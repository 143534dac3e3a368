package org.castwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.castwright.demo.Medallion;
import org.castwright.demo.RestingBird;
import org.castwright.demo.ShellSoap;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.Format;
import org.castwright.meshio.RawModel;
import org.castwright.pipeline.JobOptions;
import org.castwright.pipeline.Model;
import org.castwright.pipeline.ModelOptions;
import org.castwright.pipeline.MoldJob;
import org.castwright.plan.MoldOptions;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code castwright demo}: the main job on a model that ships with the program. */
@Command(
    name = "demo",
    description = "Runs the main job on a bundled model.",
    footerHeading = Examples.HEADING,
    footer = {"  castwright demo", "  castwright demo bird -o bird-mold"},
    mixinStandardHelpOptions = true)
final class DemoCommand implements Callable<Integer> {

  /** The bundled models and the material each is cast in. */
  enum Bundled {
    SHELL("shell soap", "soap-melt-and-pour"),
    BIRD("resting bird", "plaster-pottery"),
    MEDALLION("medallion", "chocolate-dark");

    private final String words;
    private final String material;

    Bundled(String words, String material) {
      this.words = words;
      this.material = material;
    }

    private TriMesh mesh() {
      return switch (this) {
        case SHELL -> ShellSoap.mesh();
        case BIRD -> RestingBird.mesh();
        case MEDALLION -> Medallion.mesh();
      };
    }
  }

  @Spec private CommandSpec spec;

  @Parameters(
      index = "0",
      arity = "0..1",
      defaultValue = "shell",
      paramLabel = "shell|bird|medallion",
      description = "Which model (default: ${DEFAULT-VALUE}).")
  private Bundled model;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "DIR",
      description = "Folder to write (default: castwright-demo).")
  private Path output = Path.of("castwright-demo");

  @Mixin private SheetArguments sheet;
  @Mixin private RunArguments run;

  @Override
  public Integer call() throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    Progress progress = run.progress(out, spec.commandLine().getErr());
    MoldOptions mold =
        MoldOptions.DEFAULT.with().material(model.material).threads(run.threads()).build();
    JobOptions options = new JobOptions(ModelOptions.DEFAULT, mold, JobOptions.DEFAULT.bed());
    try (SolidKernel kernel = Kernels.warming()) {
      RawModel raw =
          new RawModel(model.mesh(), Format.STL_BINARY, null, List.of(), "bundled " + model.words);
      Model taken = Model.of(raw, options.model(), kernel, progress);
      MoldJob job =
          new MoldJob(options, kernel, new MoldArtist(run.threads(), sheet.options()), progress);
      return Summary.print(job.run(taken, output).report(), output, run, out);
    }
  }
}
