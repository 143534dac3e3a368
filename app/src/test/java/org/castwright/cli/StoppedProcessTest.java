package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.castwright.mesh.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The program as a process of its own, told to stop in the middle of a job. */
class StoppedProcessTest {

  @TempDir private Path dir;

  @Test
  @Timeout(120)
  void leavesNoFolderWhenTold() throws Exception {
    Path ring = Cli.write(dir, "ring.stl", Shapes.torus(30, 10, 160, 64));
    Path room = Files.createDirectory(dir.resolve("room"));
    File said = dir.resolve("said.txt").toFile();
    Process p =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1g",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                "org.castwright.cli.Main",
                "mold",
                ring.toString(),
                "-o",
                room.resolve("mold").toString())
            .redirectErrorStream(true)
            .redirectOutput(said)
            .start();
    try {
      while (p.isAlive() && !text(said).contains("solids")) {
        Thread.sleep(20);
      }
      assertTrue(p.isAlive(), "ended before it was told: " + text(said));
      Set<String> meanwhile = Cli.namesIn(room);
      assertEquals(1, meanwhile.size(), "the side folder stands beside the target");
      assertTrue(meanwhile.iterator().next().startsWith(".mold-"), meanwhile.toString());
      p.destroy();
      assertTrue(p.waitFor(30, TimeUnit.SECONDS), "does not stop");
    } finally {
      p.destroyForcibly();
    }
    assertNotEquals(0, p.exitValue());
    assertEquals(Set.of(), Cli.namesIn(room), text(said));
    assertTrue(!text(said).contains("Exception"), text(said));
  }

  private static String text(File file) throws IOException {
    return String.join("\n", lines(file));
  }

  private static List<String> lines(File file) throws IOException {
    return file.exists() ? Files.readAllLines(file.toPath()) : List.of();
  }
}
