package org.castwright.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code castwright completion}: a script that lets the shell complete commands and options. */
@Command(
    name = "completion",
    description =
        "Prints a script for bash and zsh that completes commands, options and materials.",
    footerHeading = Examples.HEADING,
    footer = {"  source <(castwright completion)"},
    mixinStandardHelpOptions = true)
final class CompletionCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    spec.commandLine().getOut().print(AutoComplete.bash("castwright", spec.root().commandLine()));
    spec.commandLine().getOut().println();
    return Exit.OK.code();
  }
}
