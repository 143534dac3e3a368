package org.castwright.material;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A table of materials as read, before it is laid under another. */
final class MaterialTable {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** In a user's entry: the material to start from. */
  private static final String LIKE = "like";

  private static final String FIGURES = "figures";

  /** What an entry keeps of its origin; nothing that a user states. */
  private static final String ORIGIN = "origin";

  private final Map<String, ObjectNode> entries;
  private final Map<String, String> cautions;
  private final List<Material> materials;

  private MaterialTable(
      Map<String, ObjectNode> entries, Map<String, String> cautions, List<Material> materials) {
    this.entries = entries;
    this.cautions = cautions;
    this.materials = materials;
  }

  static MaterialTable shipped() {
    try (InputStream in = MaterialTable.class.getResourceAsStream("materials.json")) {
      JsonNode root = MAPPER.readTree(in);
      Map<String, String> cautions = new LinkedHashMap<>();
      root.get("cautions").fields().forEachRemaining(e -> cautions.put(e.getKey(), text(e)));
      Map<String, ObjectNode> entries = new LinkedHashMap<>();
      for (JsonNode m : root.get("materials")) {
        entries.put(m.get("id").asText(), (ObjectNode) m);
      }
      return of(entries, cautions);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String text(Map.Entry<String, JsonNode> e) {
    return e.getValue().asText();
  }

  private static MaterialTable of(Map<String, ObjectNode> entries, Map<String, String> cautions)
      throws JsonProcessingException {
    List<Material> out = new ArrayList<>();
    for (ObjectNode m : entries.values()) {
      out.add(withTexts(MAPPER.treeToValue(m, Material.class), cautions));
    }
    return new MaterialTable(entries, cautions, List.copyOf(out));
  }

  List<Material> materials() {
    return materials;
  }

  /**
   * This table with a user's file over it: {@code {"materials": [{"id": ..., "like": ..., ...}]}}.
   * Entries that the file does not state come from the material it is like, or of its own name.
   *
   * @throws IllegalArgumentException if the file cannot be read or an entry is wrong
   */
  MaterialTable with(Path file) {
    try {
      JsonNode root = MAPPER.readTree(Files.readString(file));
      if (root == null || !root.path("materials").isArray()) {
        throw new IllegalArgumentException(
            file + " is no table of materials; it needs a list \"materials\".");
      }
      Map<String, ObjectNode> laid = new LinkedHashMap<>(entries);
      for (JsonNode m : root.get("materials")) {
        if (!m.isObject() || m.path("id").asText().isBlank()) {
          throw new IllegalArgumentException(file + ": every material needs an \"id\".");
        }
        laid.put(m.get("id").asText(), over(file, laid, (ObjectNode) m));
      }
      return of(laid, cautions);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(file + " is wrong: " + e.getOriginalMessage(), e);
    } catch (IOException e) {
      throw new IllegalArgumentException("the materials file " + file + " cannot be read.", e);
    }
  }

  private ObjectNode over(Path file, Map<String, ObjectNode> known, ObjectNode given) {
    String id = given.get("id").asText();
    ObjectNode base = known.get(id);
    String like = id;
    if (given.has(LIKE)) {
      like = given.get(LIKE).asText();
      base = known.get(like);
      if (base == null) {
        throw new IllegalArgumentException(
            file + ": " + id + " is like '" + given.get(LIKE).asText() + "', which is unknown.");
      }
    }
    ObjectNode out = base == null ? MAPPER.createObjectNode() : base.deepCopy();
    ObjectNode rest = given.deepCopy();
    rest.remove(LIKE);
    if (given.path(FIGURES).isObject()) {
      rest.remove(FIGURES);
    }
    out.setAll(rest);
    layFigures(out, given);
    out.set(ORIGIN, origin(base, like, given));
    requireWhole(file, id, out);
    return out;
  }

  /** As the base's, if that is a user's too, with what is stated here. */
  private static ObjectNode origin(ObjectNode base, String like, ObjectNode given) {
    ObjectNode out = MAPPER.createObjectNode().put(LIKE, base == null ? null : like);
    if (base != null && base.hasNonNull(ORIGIN)) {
      out = base.get(ORIGIN).deepCopy();
    }
    layFigures(out, given);
    given.fieldNames().forEachRemaining(out.withArray("stated")::add);
    return out;
  }

  private static void layFigures(ObjectNode to, ObjectNode given) {
    if (given.path(FIGURES).isObject()) {
      to.withObject("/" + FIGURES).setAll((ObjectNode) given.get(FIGURES));
    }
  }

  /** What every plan reads. */
  private static void requireWhole(Path file, String id, ObjectNode m) {
    for (String key : List.of("name", "gateMm", "ventMm", "headMm", "cautions", "notes")) {
      if (!m.hasNonNull(key)) {
        throw new IllegalArgumentException(
            file + ": " + id + " lacks \"" + key + "\"; state it or name a material it is like.");
      }
    }
    for (String key : List.of("shrink", "density", "demoldStrain")) {
      if (m.hasNonNull(key) && m.get(key).path("source").asText().isBlank()) {
        throw new IllegalArgumentException(
            file + ": the " + key + " of " + id + " needs a \"source\", as \"my own test cast\".");
      }
    }
  }

  /** Keys of cautions become their texts; a user's own text stands as it is. */
  private static Material withTexts(Material m, Map<String, String> texts) {
    List<String> cautions = m.cautions().stream().map(c -> texts.getOrDefault(c, c)).toList();
    return new Material(
        m.id(),
        m.name(),
        m.shrink(),
        m.density(),
        m.viscosityPaS(),
        m.gateMm(),
        m.ventMm(),
        m.headMm(),
        m.demoldStrain(),
        m.pourC(),
        m.workingTimeMin(),
        m.demoldTimeMin(),
        cautions,
        m.notes(),
        m.figures(),
        m.mix(),
        m.filling(),
        m.release(),
        m.origin());
  }
}
