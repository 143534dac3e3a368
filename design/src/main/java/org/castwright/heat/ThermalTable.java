package org.castwright.heat;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.Collector;
import java.util.stream.Collectors;

/** The thermal figures that ship with the program, from {@code thermal.json}. */
public final class ThermalTable {

  private static final Table TABLE = load();

  private ThermalTable() {}

  public static List<ThermalMaterial> castings() {
    return TABLE.castings();
  }

  public static List<MoldMaterial> molds() {
    return TABLE.molds();
  }

  /**
   * The casting material of that id.
   *
   * @throws IllegalArgumentException naming the known ids
   */
  public static ThermalMaterial casting(String id) {
    return castings().stream()
        .filter(m -> m.id().equals(id))
        .findFirst()
        .orElseThrow(
            () -> unknown(id, castings().stream().map(ThermalMaterial::id).collect(joined())));
  }

  /**
   * The mold material of that id.
   *
   * @throws IllegalArgumentException naming the known ids
   */
  public static MoldMaterial mold(String id) {
    return molds().stream()
        .filter(m -> m.id().equals(id))
        .findFirst()
        .orElseThrow(() -> unknown(id, molds().stream().map(MoldMaterial::id).collect(joined())));
  }

  private static Collector<CharSequence, ?, String> joined() {
    return Collectors.joining(", ");
  }

  private static IllegalArgumentException unknown(String id, String known) {
    return new IllegalArgumentException(
        "no thermal figures are known of '" + id + "'; there are some of " + known);
  }

  private static Table load() {
    try (InputStream in = ThermalTable.class.getResourceAsStream("thermal.json")) {
      return new ObjectMapper().readValue(in, Table.class);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @JsonIgnoreProperties("comment")
  private record Table(List<ThermalMaterial> castings, List<MoldMaterial> molds) {}
}
