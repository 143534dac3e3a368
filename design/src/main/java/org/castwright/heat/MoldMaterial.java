package org.castwright.heat;

import java.util.ArrayList;
import java.util.List;

/**
 * Thermal figures of what a mold is made of; null where missing.
 *
 * @param id short name
 * @param name for people
 * @param printed whether it is printed, so that it may have infill
 * @param k conductivity of the full material, W/(m K)
 * @param heatCapacity J/(kg K)
 * @param density kg/m³
 * @param limitC the temperature that the wall must not pass, °C; its least value counts
 * @param limit what happens there, e.g. "glass transition"
 * @param notes sentences for people
 */
public record MoldMaterial(
    String id,
    String name,
    boolean printed,
    Figure k,
    Figure heatCapacity,
    Figure density,
    Figure limitC,
    String limit,
    List<String> notes) {

  public MoldMaterial {
    notes = notes == null ? List.of() : List.copyOf(notes);
  }

  /** Names of the figures that a computation needs and the table does not have; empty if none. */
  public List<String> missing() {
    List<String> out = new ArrayList<>();
    if (k == null) {
      out.add("conductivity");
    }
    if (heatCapacity == null) {
      out.add("heat capacity");
    }
    if (density == null) {
      out.add("density");
    }
    if (limitC == null) {
      out.add("limit of temperature");
    }
    return out;
  }
}
