package org.castwright.heat;

import java.util.ArrayList;
import java.util.List;

/**
 * Thermal figures of a class of casting material. Those that the way of setting does not need are
 * null; those that it needs and that are null are missing.
 *
 * @param id as in the material table
 * @param name for people
 * @param setting how it sets
 * @param solidK conductivity of the solid, W/(m K)
 * @param liquidK of the liquid, W/(m K); null means that of the solid
 * @param solidHeatCapacity J/(kg K)
 * @param liquidHeatCapacity J/(kg K); null means that of the solid
 * @param solidDensity kg/m³; for a mix its density as poured
 * @param liquidDensity kg/m³; null means that of the solid
 * @param solidusC below it all is solid, or firm enough to leave the mold, °C
 * @param liquidusC above it all is liquid, °C
 * @param latentKJPerKg heat of fusion
 * @param reactionKJPerKg heat of the whole reaction for each kg of the mix
 * @param workMin working time at room temperature, minutes
 * @param demoldMin time to demold of thin castings at room temperature, minutes
 * @param activationKJPerMol activation energy; null means speed without regard to temperature
 * @param order order of the reaction in what is left to set, 1 or 2
 * @param softensC above it the set casting is too soft to leave the mold, °C
 * @param pourC temperature at the pour, °C
 * @param airC of the air that it usually sets in, °C; null for that of a room
 * @param notes what is missing or left out, in sentences
 */
public record ThermalMaterial(
    String id,
    String name,
    Setting setting,
    Figure solidK,
    Figure liquidK,
    Figure solidHeatCapacity,
    Figure liquidHeatCapacity,
    Figure solidDensity,
    Figure liquidDensity,
    Figure solidusC,
    Figure liquidusC,
    Figure latentKJPerKg,
    Figure reactionKJPerKg,
    Figure workMin,
    Figure demoldMin,
    Figure activationKJPerMol,
    Figure order,
    Figure softensC,
    Figure pourC,
    Figure airC,
    List<String> notes) {

  public ThermalMaterial {
    notes = notes == null ? List.of() : List.copyOf(notes);
  }

  /**
   * A grade with a melting point of its own.
   *
   * @throws IllegalArgumentException if this is no melt
   */
  public ThermalMaterial meltingAt(double celsius) {
    if (setting != Setting.FREEZING) {
      throw new IllegalArgumentException(name + " has no melting point");
    }
    Figure own = Figure.of(celsius, "given");
    return new ThermalMaterial(
        id,
        name,
        setting,
        solidK,
        liquidK,
        solidHeatCapacity,
        liquidHeatCapacity,
        solidDensity,
        liquidDensity,
        own,
        own,
        latentKJPerKg,
        reactionKJPerKg,
        workMin,
        demoldMin,
        activationKJPerMol,
        order,
        softensC,
        pourC,
        airC,
        notes);
  }

  /**
   * A product with times of its own, minutes.
   *
   * @throws IllegalArgumentException if this is no mix
   */
  public ThermalMaterial withTimes(Figure work, Figure demold) {
    if (setting != Setting.REACTION) {
      throw new IllegalArgumentException(name + " does not set by a reaction known here");
    }
    return new ThermalMaterial(
        id,
        name,
        setting,
        solidK,
        liquidK,
        solidHeatCapacity,
        liquidHeatCapacity,
        solidDensity,
        liquidDensity,
        solidusC,
        liquidusC,
        latentKJPerKg,
        reactionKJPerKg,
        work,
        demold,
        activationKJPerMol,
        order,
        softensC,
        pourC,
        airC,
        notes);
  }

  /** Names of the figures that a computation needs and the table does not have; empty if none. */
  public List<String> missing() {
    List<String> out = new ArrayList<>();
    need(out, solidK, "conductivity");
    need(out, solidHeatCapacity, "heat capacity");
    need(out, solidDensity, "density");
    need(out, pourC, "temperature at the pour");
    switch (setting) {
      case FREEZING -> {
        need(out, solidusC, "solidus");
        need(out, liquidusC, "liquidus");
        need(out, latentKJPerKg, "latent heat");
      }
      case COOLING -> need(out, solidusC, "temperature of setting");
      case REACTION -> {
        need(out, reactionKJPerKg, "reaction heat");
        need(out, workMin, "working time");
        need(out, demoldMin, "time to demold");
        need(out, order, "order of the reaction");
      }
      case UNKNOWN -> out.add("law of setting");
    }
    return out;
  }

  private static void need(List<String> out, Figure figure, String name) {
    if (figure == null) {
      out.add(name);
    }
  }
}
