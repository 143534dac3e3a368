package org.castwright.web;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The folder that holds models and jobs. Names from outside never reach the disk as they are: a
 * name is one path element of harmless letters, and what it leads to must lie inside.
 */
final class Shelf {

  static final String MODELS = "models";
  static final String BIN = ".bin";

  private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9-]{0,63}");
  private static final Pattern FILE = Pattern.compile("[a-z0-9][a-z0-9.-]{0,79}");
  private static final int LONGEST = 48;

  private final Path root;

  Shelf(Path root) throws IOException {
    this.root = Files.createDirectories(root).toRealPath();
    Files.createDirectories(this.root.resolve(MODELS));
  }

  Path root() {
    return root;
  }

  /** A harmless name that looks like the one given. */
  static String harmless(String name) {
    String last = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    String plain = Normalizer.normalize(last, Normalizer.Form.NFD).toLowerCase(Locale.ROOT);
    String out = plain.replaceAll("\\p{M}", "").replaceAll("[^a-z0-9.]+", "-");
    out = out.replaceAll("\\.{2,}", ".").replaceAll("^[-.]+|[-.]+$", "");
    return out.isEmpty() ? "model" : out.substring(Math.max(0, out.length() - LONGEST));
  }

  /**
   * The folder of a job.
   *
   * @throws Refused if the name is not one or there is no such job
   */
  Path job(String name) {
    Path dir = named(name);
    if (!isJob(dir)) {
      throw new Refused(404, "There is no job of that name.");
    }
    return dir;
  }

  /** Where a job of that name stands or would stand. */
  Path named(String name) {
    if (!NAME.matcher(name).matches() || name.equals(MODELS)) {
      throw new Refused(404, "There is no job of that name.");
    }
    return root.resolve(name);
  }

  static boolean isJob(Path dir) {
    return Files.isDirectory(dir, LinkOption.NOFOLLOW_LINKS)
        && (Files.isRegularFile(dir.resolve("report.json"))
            || Files.isRegularFile(dir.resolve("refusal.json")));
  }

  /**
   * A file of a job.
   *
   * @param path inside the job's folder
   * @throws Refused unless it is a regular file in there, reached without links
   */
  Path file(String job, String path) throws IOException {
    Path dir = job(job);
    Path at = dir;
    for (String part : path.split("/", -1)) {
      if (!FILE.matcher(part).matches() || part.contains("..")) {
        throw noFile();
      }
      at = at.resolve(part);
    }
    if (!Files.isRegularFile(at, LinkOption.NOFOLLOW_LINKS)
        || !at.toRealPath().startsWith(dir.toRealPath())
        || !Reply.known(Reply.kind(path))) {
      throw noFile();
    }
    return at;
  }

  private static Refused noFile() {
    return new Refused(404, "There is no such file in this job.");
  }

  /**
   * A model that was brought.
   *
   * @throws Refused if there is none of that name
   */
  Path model(String name) {
    if (!FILE.matcher(name).matches() || name.contains("..")) {
      throw new Refused(404, "There is no model of that name.");
    }
    Path file = root.resolve(MODELS).resolve(name);
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new Refused(404, "There is no model of that name.");
    }
    return file;
  }

  /** Puts a file among the models under a free name. */
  Path keep(Path side, String name) throws IOException {
    for (int n = 1; ; n++) {
      Path to = root.resolve(MODELS).resolve(n == 1 ? name : n + "-" + name);
      try {
        // createFile is the lock: of two requests for one name only one gets it
        Files.createFile(to);
        return Files.move(side, to, StandardCopyOption.REPLACE_EXISTING);
      } catch (FileAlreadyExistsException taken) {
        if (n > 10_000) {
          throw taken;
        }
      }
    }
  }

  /** Names of all jobs, the latest first. */
  List<String> jobs() throws IOException {
    List<Path> dirs = new ArrayList<>();
    try (Stream<Path> all = Files.list(root)) {
      all.filter(d -> NAME.matcher(d.getFileName().toString()).matches())
          .filter(Shelf::isJob)
          .forEach(dirs::add);
    }
    dirs.sort((a, b) -> Long.compare(modified(b), modified(a)));
    return dirs.stream().map(d -> d.getFileName().toString()).toList();
  }

  static long modified(Path dir) {
    try {
      return Files.getLastModifiedTime(dir).toMillis();
    } catch (IOException e) {
      // it went away meanwhile
      return 0;
    }
  }

  /** Moves a job where it is no longer listed. */
  void discard(String name) throws IOException {
    Path dir = job(name);
    Path bin = Files.createDirectories(root.resolve(BIN));
    Path to = bin.resolve(name);
    for (int n = 2; Files.exists(to); n++) {
      to = bin.resolve(name + "-" + n);
    }
    Files.move(dir, to, StandardCopyOption.ATOMIC_MOVE);
  }
}
