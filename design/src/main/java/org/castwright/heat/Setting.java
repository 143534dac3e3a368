package org.castwright.heat;

/** How a material turns from liquid to solid, as far as heat decides it. */
public enum Setting {
  /** A melt freezes and gives off its latent heat. */
  FREEZING,

  /** A gel or glass stiffens below a temperature, without latent heat. */
  COOLING,

  /** A mix reacts and warms itself. */
  REACTION,

  /** Heat has no known part in it, or the figures are missing. */
  UNKNOWN
}
