package org.castwright.pipeline;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import org.castwright.mesh.MeshException;

/**
 * Two finished molds side by side.
 *
 * @param a name of the first
 * @param b name of the second
 * @param settings that differ; model included
 * @param numbers of both, also those alike
 */
@JsonInclude(JsonInclude.Include.ALWAYS)
public record Comparison(String a, String b, List<Setting> settings, List<Value> numbers) {

  /** An option of the job that is not the same, in words. */
  public record Setting(String name, String a, String b) {}

  /** A number of both; null where a mold has none. */
  public record Value(String name, String unit, Double a, Double b) {}

  private static final double CM3 = 1000;
  private static final String BY_RULE = "by rule";

  /**
   * Reads both folders.
   *
   * @throws MeshException if one is not a finished mold
   */
  public static Comparison of(Path a, Path b) throws IOException {
    List<Value> numbers = numbers(report(a), report(b));
    return new Comparison(name(a), name(b), settings(a, b), numbers);
  }

  private static Report report(Path dir) throws IOException {
    Report r = ProofFolder.report(dir);
    if (r.pouring() == null) {
      throw new MeshException(dir + " was not finished: its report lacks the pour; make it again.");
    }
    return r;
  }

  private static String name(Path dir) {
    return dir.toAbsolutePath().normalize().getFileName().toString();
  }

  private static List<Setting> settings(Path a, Path b) throws IOException {
    SortedMap<String, String> left = flat(a);
    SortedMap<String, String> right = flat(b);
    TreeSet<String> names = new TreeSet<>(left.keySet());
    names.addAll(right.keySet());
    List<Setting> out = new ArrayList<>();
    for (String n : names) {
      String x = left.getOrDefault(n, BY_RULE);
      String y = right.getOrDefault(n, BY_RULE);
      if (!x.equals(y)) {
        out.add(new Setting(n, x, y));
      }
    }
    return out;
  }

  /** Options by name; the model by its bytes, whatever it is called. */
  private static SortedMap<String, String> flat(Path dir) throws IOException {
    JobFile.Job job = JobFile.readAnyway(dir.resolve(JobFile.NAME));
    SortedMap<String, String> out = new TreeMap<>();
    out.put("model file", job.modelSha256().substring(0, 12));
    walk("", Json.tree(job.options()), out);
    out.remove("mold threads");
    return out;
  }

  private static void walk(String name, JsonNode node, SortedMap<String, String> out) {
    if (node.isObject() && !isVector(node)) {
      node.fields()
          .forEachRemaining(
              e -> walk(name + " " + e.getKey().replace('_', ' '), e.getValue(), out));
      return;
    }
    boolean byRule = node.isNull() || (node.isEmpty() && node.isArray());
    byRule |= node.isNumber() && node.asDouble() == 0 && name.matches(".*( mm|count)");
    out.put(name.strip(), byRule ? BY_RULE : words(node));
  }

  private static String words(JsonNode node) {
    if (isVector(node)) {
      return plain(node.get("x")) + ", " + plain(node.get("y")) + ", " + plain(node.get("z"));
    }
    if (node.isArray()) {
      List<String> all = new ArrayList<>();
      node.forEach(n -> all.add(words(n)));
      return String.join("; ", all);
    }
    return node.isNumber() ? plain(node) : node.asText().toLowerCase(Locale.ROOT);
  }

  private static String plain(JsonNode number) {
    return String.format(Locale.ROOT, "%.3f", number.asDouble()).replaceAll("\\.?0+$", "");
  }

  private static boolean isVector(JsonNode n) {
    return n.size() == 3 && n.has("x") && n.has("y") && n.has("z");
  }

  private static List<Value> numbers(Report a, Report b) {
    List<Value> out = new ArrayList<>();
    Adder add = (name, unit, f) -> out.add(new Value(name, unit, get(a, f), get(b, f)));
    add.add("pieces", "", r -> r.pieces().size());
    add.add("checks failed", "", r -> r.proof().checks().stream().filter(c -> !c.passed()).count());
    add.add("casting", "cm³", r -> r.volumes().castingMm3() / CM3);
    add.add("to pour", "cm³", r -> r.pour().volumeToPourMm3() / CM3);
    add.add("to pour", "g", r -> 1000 * r.pour().massToPourKg());
    add.add("pieces, printed solid", "cm³", r -> r.volumes().piecesMm3() / CM3);
    add.add("block", "cm³", r -> r.volumes().blockMm3() / CM3);
    add.add(
        "plastic",
        "g",
        r -> r.pouring().bench().print().stream().mapToDouble(p -> 1000 * p.massKg()).sum());
    add.add(
        "printing",
        "h",
        r -> r.pouring().bench().print().stream().mapToDouble(p -> p.hours()).sum());
    add.add("full after", "s", r -> r.pouring().flow() == null ? null : r.pouring().flow().fillS());
    add.add("gates", "", r -> r.pour().gates());
    add.add("vents", "", r -> r.pour().vents());
    add.add("places where air stays", "", r -> r.pouring().fill().pockets().size());
    add.add("to hold together", "N", r -> r.pouring().pressure().closingN());
    add.add("seam", "mm", r -> r.parting().seamLengthMm());
    add.add("keys", "", r -> r.keys().size());
    add.add("caught surface", "mm²", r -> r.survey().caughtAreaMm2());
    add.add("longest side expected", "mm", Comparison::longest);
    add.add(
        "work of the program", "s", r -> r.timingsS().values().stream().reduce(0.0, Double::sum));
    return out;
  }

  private static double longest(Report r) {
    return r.pouring().size().expectedMm().stream()
        .mapToDouble(Double::doubleValue)
        .max()
        .orElse(0);
  }

  /** Takes a number of both molds. */
  @FunctionalInterface
  private interface Adder {
    void add(String name, String unit, Function<Report, Number> value);
  }

  private static Double get(Report r, Function<Report, Number> f) {
    Number v = f.apply(r);
    return v == null || !Double.isFinite(v.doubleValue())
        ? null
        : Double.valueOf(ReportMaker.round(v.doubleValue(), 3));
  }
}
