package org.castwright.material;

import com.fasterxml.jackson.annotation.JsonProperty;

/** What a table may tell of a material beside what a mold must know. */
public enum Quantity {
  @JsonProperty("liquidDensity")
  LIQUID_DENSITY("density, liquid", "kg/m³"),
  @JsonProperty("solidDensity")
  SOLID_DENSITY("density, solid", "kg/m³"),
  @JsonProperty("viscosity")
  VISCOSITY("viscosity at the pour", "Pa·s"),
  @JsonProperty("surfaceTension")
  SURFACE_TENSION("surface tension", "N/m"),
  @JsonProperty("yieldStress")
  YIELD_STRESS("yield stress", "Pa"),
  @JsonProperty("conductivity")
  CONDUCTIVITY("heat conductivity", "W/(m·K)"),
  @JsonProperty("conductivityLiquid")
  CONDUCTIVITY_LIQUID("heat conductivity, liquid", "W/(m·K)"),
  @JsonProperty("heatCapacity")
  HEAT_CAPACITY("heat capacity", "J/(kg·K)"),
  @JsonProperty("latentHeat")
  LATENT_HEAT("latent heat", "kJ/kg"),
  @JsonProperty("reactionHeat")
  REACTION_HEAT("heat of reaction", "kJ/kg"),
  @JsonProperty("temperatureRise")
  TEMPERATURE_RISE("temperature rise without loss", "K"),
  @JsonProperty("melts")
  MELTS("melts", "°C"),
  @JsonProperty("sets")
  SETS("sets", "°C"),
  @JsonProperty("softens")
  SOFTENS("softens or spoils", "°C"),
  @JsonProperty("shoreA")
  SHORE_A("hardness", "Shore A"),
  @JsonProperty("shoreD")
  SHORE_D("hardness", "Shore D"),
  @JsonProperty("elongation")
  ELONGATION("elongation at break", "%"),
  @JsonProperty("section")
  SECTION("largest section for one pour", "mm"),
  @JsonProperty("water")
  WATER("water to 100 parts by weight", "parts");

  private final String words;
  private final String unit;

  Quantity(String words, String unit) {
    this.words = words;
    this.unit = unit;
  }

  public String words() {
    return words;
  }

  public String unit() {
    return unit;
  }
}
