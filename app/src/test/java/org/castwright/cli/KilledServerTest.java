package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.castwright.mesh.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The bench as a process of its own, killed without warning in the middle of a job. */
class KilledServerTest {

  @TempDir private Path dir;

  /** A bench that runs, and how to call it. */
  private record Served(Process process, String origin, String token) {

    String call(String method, String path, String body) throws Exception {
      HttpRequest r =
          HttpRequest.newBuilder(URI.create(origin + path))
              .header("Authorization", "Bearer " + token)
              .method(method, HttpRequest.BodyPublishers.ofString(body))
              .build();
      return HttpClient.newHttpClient().send(r, HttpResponse.BodyHandlers.ofString()).body();
    }

    String until(String job, String words) throws Exception {
      String said = "";
      while (!said.contains(words)) {
        Thread.sleep(20);
        said = call("GET", "/api/jobs/" + job, "");
      }
      return said;
    }
  }

  private Served serve() throws Exception {
    Path said = Files.createTempFile(dir, "said", ".txt");
    Process p =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1g",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                "org.castwright.cli.Main",
                "serve",
                "--folder",
                dir.resolve("room").toString())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile())
            .start();
    while (p.isAlive() && !Files.readString(said).contains("token=")) {
      Thread.sleep(20);
    }
    String address = Files.readString(said).replaceAll("(?s).* at (\\S+).*", "$1");
    return new Served(p, address.replaceAll("/\\?.*", ""), address.replaceAll(".*token=", ""));
  }

  @Test
  @Timeout(240)
  void losesAtMostWhatRan() throws Exception {
    Path models = Files.createDirectories(dir.resolve("room/models"));
    Cli.write(models, "ring.stl", Shapes.torus(30, 10, 160, 64));
    Cli.egg(models);
    Served first = serve();
    try {
      String done = first.call("POST", "/api/jobs", "{\"model\":\"egg.stl\",\"name\":\"done\"}");
      assertTrue(done.contains("\"done\""), done);
      first.until("done", "\"proved\"");
      first.call("POST", "/api/jobs", "{\"model\":\"ring.stl\"}");
      first.call("POST", "/api/jobs", "{\"model\":\"egg.stl\"}");
      first.until("ring", "solids");
    } finally {
      // SIGKILL: no hook runs
      first.process().destroyForcibly();
      first.process().waitFor();
    }
    assertFalse(Files.exists(dir.resolve("room/ring")));
    Served second = serve();
    try {
      assertTrue(second.until("ring", "interrupted").contains("make it again"));
      second.until("egg", "\"proved\"");
      assertEquals(0, Cli.run("prove", dir.resolve("room/egg").toString()).code());
      assertEquals(0, Cli.run("prove", dir.resolve("room/done").toString()).code());
      Set<String> left = namesStarting(".ring-");
      assertEquals(Set.of(), left, "the side folder of what ran is left");
    } finally {
      second.process().destroy();
      second.process().waitFor();
    }
  }

  private Set<String> namesStarting(String with) throws IOException {
    Set<String> all = Cli.namesIn(dir.resolve("room"));
    all.removeIf(n -> !n.startsWith(with));
    return all;
  }
}
