package org.castwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import org.castwright.mesh.MeshException;
import org.castwright.pipeline.MoldJob;
import org.castwright.plan.CaughtException;
import org.castwright.progress.Progress;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Entry of the command line. */
@Command(
    name = "castwright",
    description = "Makes multi-part casting molds from 3D models and proves that they open.",
    subcommands = {
      MoldCommand.class,
      LookCommand.class,
      ProveCommand.class,
      SheetCommand.class,
      PourCommand.class,
      TrialCommand.class,
      CouponCommand.class,
      CalibrateCommand.class,
      CompareCommand.class,
      DemoCommand.class,
      ServeCommand.class,
      MaterialsCommand.class,
      CompletionCommand.class,
      CommandLine.HelpCommand.class
    },
    footerHeading = Examples.HEADING,
    footer = {
      "  castwright demo",
      "  castwright look MODEL --size 120",
      "  castwright mold MODEL --size 120 -m soap-melt-and-pour -o my-mold",
      "  source <(castwright completion)"
    },
    mixinStandardHelpOptions = true,
    version = "castwright " + MoldJob.VERSION)
public final class Main implements Runnable {

  @picocli.CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  public static void main(String[] args) {
    System.exit(commandLine().execute(args));
  }

  /** The configured command line; {@code execute} gives the exit code and never throws. */
  public static CommandLine commandLine() {
    CommandLine cl = new CommandLine(new Main());
    cl.setCaseInsensitiveEnumValuesAllowed(true);
    cl.setExecutionExceptionHandler((e, c, parsed) -> report(e, c.getErr()));
    return cl;
  }

  /** One sentence for the person and the exit code. */
  private static int report(Exception e, PrintWriter err) {
    if (e instanceof Progress.CancelledException) {
      err.println("castwright: stopped; nothing was written.");
      return Exit.CANCELLED.code();
    }
    if (e instanceof CaughtException) {
      err.println("castwright: " + e.getMessage());
      return Exit.CAUGHT.code();
    }
    if (e instanceof MeshException || e instanceof IllegalArgumentException) {
      err.println("castwright: " + e.getMessage());
      return Exit.INPUT.code();
    }
    if (e instanceof FileSystemException f) {
      err.println("castwright: the disk refuses " + f.getFile() + ": " + reason(f));
      return Exit.INPUT.code();
    }
    if (e instanceof IOException) {
      err.println("castwright: reading or writing failed: " + e.getMessage());
      return Exit.INPUT.code();
    }
    err.println("castwright: internal error: " + e);
    if (System.getenv("CASTWRIGHT_TRACE") != null) {
      e.printStackTrace(err);
    }
    return Exit.INTERNAL.code();
  }

  /** The system often gives no reason, only a kind of failure. */
  private static String reason(FileSystemException e) {
    if (e instanceof NoSuchFileException) {
      return "there is no such file or folder; check the path";
    }
    if (e instanceof FileAlreadyExistsException) {
      return "a file of that name stands in the way; name another folder";
    }
    if (e instanceof AccessDeniedException) {
      return "access is denied; name a place where you may write";
    }
    return e.getReason() == null ? e.getClass().getSimpleName() : e.getReason();
  }
}
