package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.StlWriter;
import picocli.CommandLine;

/** Runs the command line in this process and keeps what it says. */
record Cli(int code, String out, String err) {

  /** As progress is shown: seconds, then the stage. */
  private static final Pattern PROGRESS = Pattern.compile(" *\\d+\\.\\d s  [a-z ]+");

  static Cli run(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line = Main.commandLine();
    line.setOut(new PrintWriter(out, true)).setErr(new PrintWriter(err, true));
    int code = line.execute(args);
    return new Cli(code, out.toString(), err.toString());
  }

  /** What was said on the error stream besides progress. */
  List<String> complaints() {
    return err.lines().filter(l -> !PROGRESS.matcher(l).matches()).toList();
  }

  /** It ended as bad input does: code 2 and one sentence that is meant for a person. */
  String refused() {
    assertEquals(2, code, this::toString);
    List<String> lines = complaints();
    assertEquals(1, lines.size(), err);
    String words = lines.get(0);
    assertTrue(words.startsWith("castwright: ") && words.length() > 30, words);
    assertFalse(words.contains("Exception") || words.contains("null"), words);
    return words;
  }

  static Path egg(Path dir) throws IOException {
    return write(dir, "egg.stl", Shapes.ellipsoid(24, 17, 11, 24));
  }

  static Path write(Path dir, String name, TriMesh mesh) throws IOException {
    Path file = dir.resolve(name);
    StlWriter.write(file, mesh, "a test model");
    return file;
  }

  static Set<String> namesIn(Path dir) throws IOException {
    try (Stream<Path> entries = Files.list(dir)) {
      Set<String> out = new TreeSet<>();
      entries.forEach(p -> out.add(p.getFileName().toString()));
      return out;
    }
  }
}
