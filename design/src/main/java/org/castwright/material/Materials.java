package org.castwright.material;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The material table that ships with the program. */
public final class Materials {

  private static final List<Material> ALL = load();

  private Materials() {}

  public static List<Material> all() {
    return ALL;
  }

  /**
   * The material of that id.
   *
   * @throws IllegalArgumentException naming the known ids
   */
  public static Material of(String id) {
    return ALL.stream()
        .filter(m -> m.id().equals(id))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "no material is called '"
                        + id
                        + "'; known are "
                        + ALL.stream().map(Material::id).collect(Collectors.joining(", "))));
  }

  private static List<Material> load() {
    try (InputStream in = Materials.class.getResourceAsStream("materials.json")) {
      Table table = new ObjectMapper().readValue(in, Table.class);
      return table.materials().stream().map(m -> withTexts(m, table.cautions())).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Material withTexts(Material m, Map<String, String> texts) {
    List<String> cautions =
        m.cautions().stream()
            .map(
                key -> {
                  if (!texts.containsKey(key)) {
                    throw new IllegalStateException("no caution text '" + key + "'");
                  }
                  return texts.get(key);
                })
            .toList();
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
        m.notes());
  }

  @JsonIgnoreProperties("comment")
  private record Table(Map<String, String> cautions, List<Material> materials) {}
}
