package org.castwright.zip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.castwright.demo.Medallion;
import org.castwright.meshio.StlWriter;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * The zip that is handed out: unpacked in a folder with a space in its name and run from another by
 * a Java runtime alone.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@DisabledOnOs(OS.WINDOWS)
class ZipIT {

  private Path elsewhere;
  private Path script;

  @BeforeAll
  void unpack(@TempDir Path temp) throws IOException {
    Path zip = Path.of(System.getProperty("castwright.zip"));
    Path home = Files.createDirectories(temp.resolve("some where"));
    elsewhere = Files.createDirectories(temp.resolve("else where"));
    Map<String, String> posix = Map.of("enablePosixFileAttributes", "true");
    try (FileSystem inside = FileSystems.newFileSystem(zip, posix);
        var all = Files.walk(inside.getPath("/"))) {
      for (Path p : all.toList()) {
        Path to = home.resolve(inside.getPath("/").relativize(p).toString());
        if (Files.isDirectory(p)) {
          Files.createDirectories(to);
        } else {
          Files.copy(p, to);
          Set<PosixFilePermission> mode = Files.getPosixFilePermissions(p);
          Files.setPosixFilePermissions(to, mode);
        }
      }
    }
    try (var found = Files.list(home)) {
      script = found.findFirst().orElseThrow().resolve("bin/castwright");
    }
  }

  private record Run(int code, String said) {}

  /** Runs the script with nothing in its environment but a Java runtime and the system's tools. */
  private Run run(Path program, String... args) throws IOException, InterruptedException {
    List<String> line = new ArrayList<>(List.of(program.toString()));
    line.addAll(List.of(args));
    ProcessBuilder b = new ProcessBuilder(line).directory(elsewhere.toFile());
    b.environment().clear();
    b.environment().put("PATH", "/usr/bin:/bin");
    b.environment().put("JAVA_HOME", System.getProperty("java.home"));
    Process p = b.redirectErrorStream(true).start();
    try (InputStream in = p.getInputStream()) {
      String said = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return new Run(p.waitFor(), said);
    }
  }

  @Test
  void tellsItsVersionAlsoThroughALink() throws IOException, InterruptedException {
    assertTrue(Files.isExecutable(script), "the script's mode got lost");
    Path link = Files.createSymbolicLink(elsewhere.resolve("cw"), script);
    for (Path program : List.of(script, link)) {
      Run r = run(program, "--version");
      assertEquals(0, r.code(), r.said());
      assertTrue(r.said().startsWith("castwright 0."), r.said());
    }
  }

  @Test
  void makesTheDemo() throws IOException, InterruptedException {
    Run r = run(script, "demo", "medallion", "-o", "demo mold");
    assertEquals(0, r.code(), r.said());
    assertTrue(r.said().contains("proved: 2 pieces"), r.said());
    Path mold = elsewhere.resolve("demo mold");
    for (String file :
        List.of("sheet.pdf", "mold.glb", "print/piece-1.stl", "pictures/closed.png")) {
      assertTrue(Files.size(mold.resolve(file)) > 1000, file);
    }
  }

  @Test
  void moldsAModelAndProvesItAgain() throws IOException, InterruptedException {
    StlWriter.write(elsewhere.resolve("a model.stl"), Medallion.mesh(), "a medallion");
    Run made = run(script, "mold", "a model.stl", "-m", "beeswax", "-o", "m");
    assertEquals(0, made.code(), made.said());
    Run proved = run(script, "prove", "m");
    assertEquals(0, proved.code(), proved.said());
    assertTrue(proved.said().endsWith("proved\n"), proved.said());
  }

  /** Such a job hands Java a file of the zip, which it would not start without. */
  @Test
  void moldsOfManyPieces() throws IOException, InterruptedException {
    StlWriter.write(elsewhere.resolve("b.stl"), Medallion.mesh(), "a medallion");
    Run made = run(script, "mold", "b.stl", "--pieces", "auto", "-o", "many");
    assertEquals(0, made.code(), made.said());
    assertTrue(made.said().contains("proved: 2 pieces"), made.said());
    assertFalse(made.said().contains("directives"), made.said());
  }

  @Test
  void opensTheBench() throws IOException, InterruptedException {
    ProcessBuilder b = new ProcessBuilder(script.toString(), "serve", "--folder", "jobs here");
    b.directory(elsewhere.toFile()).redirectErrorStream(true);
    b.environment().put("JAVA_HOME", System.getProperty("java.home"));
    Process p = b.start();
    try (BufferedReader lines = p.inputReader(StandardCharsets.UTF_8)) {
      String first = lines.readLine();
      String address = first.replaceAll(".* (http://127\\.0\\.0\\.1:\\d+/\\?token=\\S+)$", "$1");
      HttpClient client =
          HttpClient.newBuilder()
              .followRedirects(HttpClient.Redirect.ALWAYS)
              .cookieHandler(new CookieManager())
              .build();
      HttpRequest ask = HttpRequest.newBuilder(URI.create(address)).build();
      HttpResponse<String> page = client.send(ask, HttpResponse.BodyHandlers.ofString());
      assertEquals(200, page.statusCode(), first);
      assertTrue(page.body().contains("Castwright bench"), page.body());
    } finally {
      p.destroy();
    }
    // ended by a signal, as by Ctrl-C: 128 + 15
    assertEquals(143, p.waitFor());
    assertTrue(Files.isDirectory(elsewhere.resolve("jobs here/models")));
  }

  @Test
  void badInputEndsWithCodeTwo() throws IOException, InterruptedException {
    Run r = run(script, "mold", "nothing.stl", "-o", "n");
    assertEquals(2, r.code(), r.said());
    assertTrue(r.said().contains("castwright: "), r.said());
  }

  @Test
  void withoutJavaItSaysSo() throws IOException, InterruptedException {
    ProcessBuilder b = new ProcessBuilder("/bin/sh", script.toString(), "--version");
    b.environment().clear();
    Path tools = Files.createDirectories(elsewhere.resolve("tools"));
    for (String tool : List.of("dirname", "sed", "ls")) {
      Path link = tools.resolve(tool);
      if (!Files.exists(link)) {
        Path at = Path.of("/usr/bin", tool);
        Files.createSymbolicLink(link, Files.exists(at) ? at : Path.of("/bin", tool));
      }
    }
    b.environment().put("PATH", tools.toString());
    Process p = b.redirectErrorStream(true).start();
    String said = new String(p.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(2, p.waitFor(), said);
    assertTrue(said.contains("install a Java runtime of version 17"), said);
  }

  /** Windows cannot be run here: the batch file is at least in the zip, with its line ends. */
  @Test
  void bringsABatchFileForWindows() throws IOException {
    String bat = Files.readString(script.resolveSibling("castwright.bat"));
    assertTrue(bat.startsWith("@echo off\r\n"), bat);
    assertTrue(bat.contains("org.castwright.cli.Main %*"), bat);
    assertTrue(bat.contains("%HOME_DIR%\\bin\\compiler.json"), bat);
    assertTrue(Files.exists(script.resolveSibling("compiler.json")));
  }
}
