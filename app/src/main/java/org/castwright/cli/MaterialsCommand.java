package org.castwright.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.castwright.material.Material;
import org.castwright.material.Materials;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code castwright materials}. */
@Command(
    name = "materials",
    description =
        "Lists the casting materials with shrink, density and where the shrink comes from.",
    footerHeading = Examples.HEADING,
    footer = {"  castwright materials"},
    mixinStandardHelpOptions = true)
final class MaterialsCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    for (Material m : Materials.all()) {
      out.println(
          String.format(
              Locale.ROOT,
              "%-20s %-34s shrink %5.2f %%  %5.0f kg/m³  %s",
              m.id(),
              m.name(),
              m.shrink().percent(),
              m.density().kgPerM3(),
              m.shrink().source()));
    }
    out.flush();
    return Exit.OK.code();
  }
}
