package org.castwright.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/** The mesh files of a mold folder and their hashes (SHA-256, FIPS 180-4). */
final class MeshFiles {

  private MeshFiles() {}

  /** In the order of their names. */
  static List<Path> in(Path dir) throws IOException {
    try (Stream<Path> all = Files.walk(dir)) {
      return all.filter(Files::isRegularFile).filter(MeshFiles::isMesh).sorted().toList();
    }
  }

  private static boolean isMesh(Path file) {
    String name = file.getFileName().toString();
    return name.endsWith(".stl") || name.endsWith(".3mf") || name.endsWith(".glb");
  }

  static String sha256(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file);
        DigestInputStream digest =
            new DigestInputStream(in, MessageDigest.getInstance("SHA-256"))) {
      digest.transferTo(OutputStream.nullOutputStream());
      return HexFormat.of().formatHex(digest.getMessageDigest().digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
