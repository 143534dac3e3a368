package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFolderTest {

  private static final String OLD_REPORT = "{\"castwright\" : \"0\"}";

  @TempDir private Path temp;

  private List<String> names(Path folder) throws IOException {
    try (Stream<Path> s = Files.list(folder)) {
      return s.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void parentsOfAFolderThatNeverCameGoAgain() throws IOException {
    Path target = temp.resolve("a/b/c");
    try (OutputFolder out = OutputFolder.at(target)) {
      Files.writeString(out.path().resolve("x"), "x");
    }
    assertEquals(List.of(), names(temp));

    Files.createDirectories(temp.resolve("a"));
    Files.writeString(temp.resolve("a/kept"), "kept");
    try (OutputFolder out = OutputFolder.at(target)) {
      assertTrue(Files.isDirectory(out.path()));
    }
    assertEquals(List.of("kept"), names(temp.resolve("a")));
  }

  @Test
  void whatADeadRunSetAsideComesBack() throws IOException {
    Path target = temp.resolve("mold");
    Path aside = temp.resolve(".mold-123-old");
    Files.createDirectories(aside);
    Files.writeString(aside.resolve("report.json"), OLD_REPORT);
    try (OutputFolder out = OutputFolder.at(target)) {
      assertEquals(OLD_REPORT, Files.readString(target.resolve("report.json")));
      assertFalse(out.path().equals(target));
    }
    assertEquals(List.of("mold"), names(temp));
  }

  @Test
  void aStrangersFolderOfSuchANameIsLeftAlone() throws IOException {
    Path aside = temp.resolve(".mold-123-old");
    Files.createDirectories(aside);
    Files.writeString(aside.resolve("diary.txt"), "dear diary");
    try (OutputFolder out = OutputFolder.at(temp.resolve("mold"))) {
      assertTrue(Files.exists(aside.resolve("diary.txt")));
      Files.writeString(out.path().resolve("report.json"), OLD_REPORT);
      out.publish();
    }
    assertEquals(List.of(".mold-123-old", "mold"), names(temp));
  }
}
