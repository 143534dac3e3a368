package org.castwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.BindException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.castwright.mesh.MeshException;
import org.castwright.web.Bench;
import org.castwright.web.Limits;
import org.castwright.web.Maker;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code castwright serve}: the bench in the browser. */
@Command(
    name = "serve",
    description = "Opens the bench: the whole job in a browser on this machine, with no network.",
    footerHeading = Examples.HEADING,
    footer = {"  castwright serve --open", "  castwright serve --port 8080 --folder molds"},
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class ServeCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Option(
      names = "--port",
      paramLabel = "N",
      defaultValue = "0",
      description = "Port to listen on, on this machine only (default: any free one).")
  private int port;

  @Option(
      names = "--folder",
      paramLabel = "DIR",
      defaultValue = "castwright-jobs",
      description = "Folder for models and jobs (default: ${DEFAULT-VALUE}).")
  private Path folder;

  @Option(names = "--open", description = "Open the page in the usual browser.")
  private boolean open;

  @Option(
      names = "--threads",
      paramLabel = "N",
      defaultValue = "0",
      description = "Worker threads of a job (default: all processors).")
  private int threads;

  @Override
  public Integer call() throws IOException, InterruptedException {
    if (port < 0 || port > 65535) {
      throw new IllegalArgumentException("a port is 0 to 65535, not " + port);
    }
    int workers = threads == 0 ? Runtime.getRuntime().availableProcessors() : threads;
    PrintWriter out = spec.commandLine().getOut();
    try (Bench bench = Bench.start(folder, port, maker(workers), Limits.DEFAULT, workers)) {
      CountDownLatch stop = new CountDownLatch(1);
      Thread hook =
          new Thread(
              () -> {
                end(bench);
                stop.countDown();
              },
              "stop the bench");
      Runtime.getRuntime().addShutdownHook(hook);
      out.println("The bench is open at " + bench.address());
      out.println("Models and jobs are kept in " + folder.toAbsolutePath().normalize());
      out.println("Stop it with Ctrl-C.");
      out.flush();
      if (open) {
        browse(bench.address());
      }
      stop.await();
    } catch (BindException e) {
      throw new MeshException(
          "port " + port + " is taken by another program; name another or leave --port out.", e);
    }
    return Exit.OK.code();
  }

  private static void end(Bench bench) {
    bench.close();
  }

  static Maker maker(int threads) {
    return new BenchMaker(threads);
  }

  /** Hands the address to what the system opens pages with; without one the person copies it. */
  private void browse(String address) {
    String os = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    List<String> command =
        os.contains("win")
            ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
            : List.of(os.contains("mac") ? "open" : "xdg-open", address);
    try {
      new ProcessBuilder(command)
          .redirectErrorStream(true)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .start();
    } catch (IOException e) {
      spec.commandLine().getErr().println("castwright: no browser found; open the address above.");
    }
  }
}
