package org.castwright.pipeline;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.stream.Stream;
import org.castwright.mesh.MeshException;

/**
 * A folder that appears whole or not at all: files are written into a side folder next to it, which
 * then takes its place by renaming. Closing without {@link #publish} removes the side folder.
 */
final class OutputFolder implements AutoCloseable {

  /** Ends the name of a folder that is about to be replaced. */
  private static final String ASIDE = "-old";

  private final Path target;
  private final Path side;
  private final Path found;
  private final Thread cleaner;
  private boolean published;

  /**
   * Opens a side folder.
   *
   * @throws MeshException if {@code target} exists and is neither empty nor a mold folder
   */
  static OutputFolder at(Path target) throws IOException {
    Path full = target.toAbsolutePath().normalize();
    if (Files.exists(full) && !mayReplace(full)) {
      throw new MeshException(
          "the output folder "
              + target
              + " holds other files; name a new folder or one that castwright wrote.");
    }
    Path found = full.getParent();
    while (!Files.exists(found)) {
      found = found.getParent();
    }
    Files.createDirectories(full.getParent());
    takeBack(full);
    Path side = Files.createTempDirectory(full.getParent(), "." + full.getFileName() + "-");
    return new OutputFolder(full, side, found);
  }

  private OutputFolder(Path target, Path side, Path found) {
    this.target = target;
    this.side = side;
    this.found = found;
    cleaner = new Thread(() -> removeQuietly(side), "remove side folder");
    Runtime.getRuntime().addShutdownHook(cleaner);
  }

  /** A run that died between the two renames of {@link #publish} left the target set aside. */
  private static void takeBack(Path target) throws IOException {
    if (Files.exists(target)) {
      return;
    }
    String start = "." + target.getFileName() + "-";
    DirectoryStream.Filter<Path> setAside =
        p -> p.getFileName().toString().startsWith(start) && p.toString().endsWith(ASIDE);
    try (DirectoryStream<Path> aside = Files.newDirectoryStream(target.getParent(), setAside)) {
      for (Path old : aside) {
        if (!Files.exists(target) && mayReplace(old)) {
          Files.move(old, target, StandardCopyOption.ATOMIC_MOVE);
        }
      }
    }
  }

  /** Where to write. */
  Path path() {
    return side;
  }

  /** Puts the side folder in the target's place. */
  void publish() throws IOException {
    Path old = null;
    if (Files.exists(target)) {
      old = side.resolveSibling(side.getFileName() + ASIDE);
      Files.move(target, old, StandardCopyOption.ATOMIC_MOVE);
    }
    try {
      Files.move(side, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException | DirectoryNotEmptyException e) {
      if (old != null) {
        Files.move(old, target);
      }
      throw e;
    }
    published = true;
    if (old != null) {
      remove(old);
    }
  }

  @Override
  public void close() throws IOException {
    if (!published) {
      remove(side);
      removeEmptyParents();
    }
    try {
      Runtime.getRuntime().removeShutdownHook(cleaner);
    } catch (IllegalStateException shuttingDown) {
      // the hook is running already and does the same work
      published |= !Files.exists(side);
    }
  }

  /** Parents made for a folder that never came. */
  private void removeEmptyParents() throws IOException {
    Path at = target.getParent();
    while (!at.equals(found)) {
      try {
        Files.deleteIfExists(at);
      } catch (DirectoryNotEmptyException inUse) {
        return;
      }
      at = at.getParent();
    }
  }

  private static boolean mayReplace(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return false;
    }
    try (Stream<Path> entries = Files.list(folder)) {
      if (entries.findAny().isEmpty()) {
        return true;
      }
    }
    for (String name : new String[] {"report.json", RefusalFolder.NAME, CouponFolder.NAME}) {
      Path report = folder.resolve(name);
      if (Files.isRegularFile(report) && Files.readString(report).contains("\"castwright\"")) {
        return true;
      }
    }
    return false;
  }

  /** On the way down a worker may still be writing: remove until the folder stays away. */
  private static void removeQuietly(Path folder) {
    boolean gone = false;
    for (int i = 0; i < 20 && !gone; i++) {
      gone = tryRemove(folder);
    }
  }

  private static boolean tryRemove(Path folder) {
    try {
      remove(folder);
      Thread.sleep(50);
      return !Files.exists(folder);
    } catch (IOException e) {
      // a file appeared meanwhile: the caller tries again
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return true;
    }
  }

  private static void remove(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes a) throws IOException {
            Files.delete(file);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path dir, IOException e) throws IOException {
            if (e != null) {
              throw e;
            }
            Files.delete(dir);
            return FileVisitResult.CONTINUE;
          }
        });
  }
}
