package org.castwright.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every package of every module says at its door what it is for. */
class FrontDoorsTest {

  @Test
  void everyPackageHasADoorWithWords() throws IOException {
    List<Path> silent = new ArrayList<>();
    int rooms = 0;
    for (String module : List.of("kernel", "kernel-manifold", "design", "app")) {
      try (Stream<Path> files = Files.walk(Path.of("..", module, "src/main/java"))) {
        for (Path dir : (Iterable<Path>) files.filter(Files::isDirectory)::iterator) {
          if (holdsClasses(dir)) {
            rooms++;
            Path door = dir.resolve("package-info.java");
            if (!Files.exists(door) || Files.readString(door).length() < 120) {
              silent.add(dir);
            }
          }
        }
      }
    }
    assertEquals(List.of(), silent);
    assertTrue(rooms >= 15);
  }

  private static boolean holdsClasses(Path dir) throws IOException {
    try (Stream<Path> files = Files.list(dir)) {
      return files.anyMatch(f -> f.toString().endsWith(".java"));
    }
  }
}
