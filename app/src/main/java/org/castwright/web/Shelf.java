package org.castwright.web;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.castwright.mesh.MeshException;

/**
 * The folder that holds models and jobs. Names from outside never reach the disk as they are: a
 * name is one path element of harmless letters, and what it leads to must lie inside.
 */
final class Shelf implements AutoCloseable {

  static final String MODELS = "models";
  static final String COUPONS = "coupons";
  static final String BIN = ".bin";

  /** Names that no job may have. */
  static final Set<String> KEPT = Set.of(MODELS, COUPONS);

  private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9-]{0,63}");
  private static final Pattern FILE = Pattern.compile("[a-z0-9][a-z0-9.-]{0,79}");
  private static final int LONGEST = 48;

  /** What is written aside while a model or a copy is brought. */
  private static final String BROUGHT = "\\.(bring|show|copy)-.*";

  private final Path root;
  private final FileChannel lock;
  private final Set<String> promised = new HashSet<>();

  /**
   * Opens a folder.
   *
   * @throws MeshException if another bench has it open
   */
  Shelf(Path root) throws IOException {
    this.root = Files.createDirectories(root).toRealPath();
    Files.createDirectories(this.root.resolve(MODELS));
    lock =
        FileChannel.open(
            this.root.resolve(".lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    if (!locked(lock)) {
      lock.close();
      throw new MeshException(
          "another bench has the folder " + root + " open; stop it or name another --folder.");
    }
    sweep(BROUGHT);
  }

  private static boolean locked(FileChannel file) throws IOException {
    try {
      return file.tryLock() != null;
    } catch (OverlappingFileLockException sameProgram) {
      return false;
    }
  }

  @Override
  public void close() throws IOException {
    lock.close();
  }

  /**
   * Clears what a job left that ran when the program was killed, and brings back what it set aside.
   */
  void sweepAfter(String job) throws IOException {
    sweep("\\." + job + "-[0-9]+(-old)?");
  }

  private void sweep(String names) throws IOException {
    List<Path> found;
    try (Stream<Path> all = Files.list(root)) {
      found = all.filter(f -> f.getFileName().toString().matches(names)).sorted().toList();
    }
    for (Path f : found) {
      String name = f.getFileName().toString();
      Path back = root.resolve(name.replaceAll("^\\.|-[0-9]+-old$", ""));
      if (name.endsWith("-old") && isJob(f) && !Files.exists(back)) {
        Files.move(f, back, StandardCopyOption.ATOMIC_MOVE);
      } else {
        clear(f);
      }
    }
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
    if (!NAME.matcher(name).matches() || KEPT.contains(name)) {
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
    return inside(job(job), path);
  }

  /** As {@link #file}, of a set of coupons. */
  Path couponFile(String coupon, String path) throws IOException {
    return inside(coupon(coupon), path);
  }

  /**
   * The folder of a set of coupons.
   *
   * @throws Refused if there is none of that name
   */
  Path coupon(String name) {
    Path dir = root.resolve(COUPONS).resolve(name);
    if (!NAME.matcher(name).matches()
        || !Files.isDirectory(dir, LinkOption.NOFOLLOW_LINKS)
        || !Files.isRegularFile(dir.resolve("coupon.json"))) {
      throw new Refused(404, "There are no coupons of that name.");
    }
    return dir;
  }

  private static Path inside(Path dir, String path) throws IOException {
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
    return jobsIn(root);
  }

  private static List<String> jobsIn(Path folder) throws IOException {
    List<Path> dirs = new ArrayList<>();
    try (Stream<Path> all = Files.list(folder)) {
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

  /** Moves a job where it is no longer listed; its name there. */
  synchronized String discard(String name) throws IOException {
    Path dir = job(name);
    Path to = free(Files.createDirectories(root.resolve(BIN)), name);
    Files.move(dir, to, StandardCopyOption.ATOMIC_MOVE);
    return to.getFileName().toString();
  }

  /** Names in the bin, the latest first. */
  List<String> bin() throws IOException {
    Path bin = root.resolve(BIN);
    return Files.isDirectory(bin) ? jobsIn(bin) : List.of();
  }

  /** Puts a job back from the bin; its name from now on. */
  synchronized String restore(String name) throws IOException {
    if (!NAME.matcher(name).matches() || !isJob(root.resolve(BIN).resolve(name))) {
      throw new Refused(404, "There is no job of that name in the bin.");
    }
    Path to = free(root, name);
    Files.move(root.resolve(BIN).resolve(name), to, StandardCopyOption.ATOMIC_MOVE);
    return to.getFileName().toString();
  }

  /**
   * Gives a job another name.
   *
   * @throws Refused if the name is taken or can be none
   */
  synchronized String rename(String name, String wanted) throws IOException {
    Path dir = job(name);
    Path to = root.resolve(wanted(wanted));
    if (taken(root, to.getFileName().toString())) {
      throw new Refused(409, "There is a job of that name already; take another.");
    }
    Files.move(dir, to, StandardCopyOption.ATOMIC_MOVE);
    return to.getFileName().toString();
  }

  /** Copies a job; the name of the copy. It appears whole or not at all. */
  synchronized String copy(String name, String wanted) throws IOException {
    Path dir = job(name);
    Path side = Files.createTempDirectory(root, ".copy-");
    try {
      List<Path> all;
      try (Stream<Path> walk = Files.walk(dir)) {
        all = walk.sorted().toList();
      }
      for (Path p : all) {
        Path to = side.resolve(dir.relativize(p).toString());
        if (Files.isDirectory(p)) {
          Files.createDirectories(to);
        } else {
          Files.copy(p, to);
        }
      }
      Path target = free(root, wanted(wanted));
      Files.move(side, target, StandardCopyOption.ATOMIC_MOVE);
      return target.getFileName().toString();
    } finally {
      clear(side);
    }
  }

  private static String wanted(String name) {
    String plain = harmless(name).replace('.', '-');
    if (!NAME.matcher(plain).matches() || KEPT.contains(plain)) {
      throw new Refused(400, "A name is up to 48 letters, digits and hyphens.");
    }
    return plain;
  }

  /** A free name for a job that is yet to be made; nobody else gets it until it is released. */
  synchronized String promise(String wanted) {
    String name = free(root, wanted).getFileName().toString();
    promised.add(name);
    return name;
  }

  /** Keeps the name of a job that an earlier run left in line. */
  synchronized void keepPromise(String name) {
    promised.add(name);
  }

  /** The job is over. */
  synchronized void release(String name) {
    promised.remove(name);
  }

  private boolean taken(Path in, String name) {
    return Files.exists(in.resolve(name), LinkOption.NOFOLLOW_LINKS)
        || (in.equals(root) && promised.contains(name));
  }

  private Path free(Path in, String name) {
    String free = name;
    for (int n = 2; taken(in, free); n++) {
      free = name + "-" + n;
    }
    return in.resolve(free);
  }

  private static void clear(Path dir) throws IOException {
    if (!Files.exists(dir)) {
      return;
    }
    List<Path> all;
    try (Stream<Path> walk = Files.walk(dir)) {
      all = new ArrayList<>(walk.sorted().toList());
    }
    Collections.reverse(all);
    for (Path p : all) {
      Files.delete(p);
    }
  }
}
