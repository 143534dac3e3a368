package org.castwright.pipeline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** A small file that is there whole or as it was before: written aside, then moved. */
final class WholeFile {

  private WholeFile() {}

  static void write(Path file, String text) throws IOException {
    Path full = file.toAbsolutePath();
    Files.createDirectories(full.getParent());
    Path side = Files.createTempFile(full.getParent(), "." + full.getFileName() + "-", ".part");
    try {
      Files.writeString(side, text);
      Files.move(side, full, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(side);
    }
  }
}
