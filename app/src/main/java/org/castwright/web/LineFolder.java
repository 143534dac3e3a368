package org.castwright.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.castwright.pipeline.JobOptions;
import org.castwright.pipeline.Json;
import org.castwright.sheet.SheetOptions;

/**
 * The line on disk, so that a program that is killed loses at most the step that ran: one file for
 * each job that is not over.
 */
final class LineFolder {

  private static final String END = ".json";

  private final Path dir;

  LineFolder(Path root) throws IOException {
    dir = Files.createDirectories(root.resolve(".line"));
  }

  /**
   * A job that is not over.
   *
   * @param number of its place in line
   * @param name of the job
   * @param model file, absolute
   * @param began whether it ran
   */
  record Entry(
      long number,
      String name,
      String model,
      JobOptions options,
      SheetOptions sheet,
      Order.Answering answering,
      boolean began) {

    static Entry of(long number, String name, Order o) {
      String model = o.model().toAbsolutePath().toString();
      return new Entry(number, name, model, o.options(), o.sheet(), o.answering(), false);
    }

    Entry running() {
      return new Entry(number, name, model, options, sheet, answering, true);
    }

    Order order() {
      return new Order(Path.of(model), options, sheet, answering, null);
    }
  }

  void put(Entry e) throws IOException {
    Path side = Files.createTempFile(dir, ".put-", ".part");
    Files.writeString(side, Json.write(e));
    Files.move(
        side,
        dir.resolve(e.name() + END),
        StandardCopyOption.ATOMIC_MOVE,
        StandardCopyOption.REPLACE_EXISTING);
  }

  void take(String name) throws IOException {
    Files.deleteIfExists(dir.resolve(name + END));
  }

  /** Jobs that an earlier run left, in their order; what cannot be read is dropped. */
  List<Entry> left() throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.list(dir)) {
      files = all.sorted().toList();
    }
    List<Entry> out = new ArrayList<>();
    for (Path f : files) {
      try {
        Entry e = f.toString().endsWith(END) ? Json.read(Files.readString(f), Entry.class) : null;
        if (e == null || !f.getFileName().toString().equals(e.name() + END)) {
          Files.delete(f);
        } else {
          out.add(e);
        }
      } catch (JsonProcessingException damaged) {
        Files.delete(f);
      }
    }
    out.sort((a, b) -> Long.compare(a.number(), b.number()));
    return out;
  }
}
