package org.castwright.advice;

import java.util.List;
import org.castwright.heat.Figure;
import org.castwright.heat.Setting;
import org.castwright.heat.ThermalMaterial;
import org.castwright.material.Material;
import org.castwright.material.Quantity;

/**
 * Thermal figures of a material of the user's own table: what the user stated, over those of the
 * shipped material that it is like.
 */
final class StatedHeat {

  private static final String OWN = "stated in the table of your own";

  private final Material.Origin stated;

  private StatedHeat(Material.Origin stated) {
    this.stated = stated;
  }

  /** The figures of a material with an origin. */
  static ThermalMaterial over(ThermalMaterial like, Material m) {
    return new StatedHeat(m.origin()).with(like, m);
  }

  private ThermalMaterial with(ThermalMaterial like, Material m) {
    boolean melt = like.setting() == Setting.FREEZING;
    Quantity firm = melt ? Quantity.MELTS : Quantity.SETS;
    return new ThermalMaterial(
        m.id(),
        m.name(),
        like.setting(),
        or(Quantity.CONDUCTIVITY, like.solidK()),
        or(Quantity.CONDUCTIVITY_LIQUID, like.liquidK()),
        or(Quantity.HEAT_CAPACITY, like.solidHeatCapacity()),
        like.liquidHeatCapacity(),
        or(Quantity.SOLID_DENSITY, like.solidDensity()),
        or(Quantity.LIQUID_DENSITY, like.liquidDensity()),
        or(firm, like.solidusC()),
        melt ? or(Quantity.MELTS, like.liquidusC()) : like.liquidusC(),
        or(Quantity.LATENT_HEAT, like.latentKJPerKg()),
        or(Quantity.REACTION_HEAT, like.reactionKJPerKg()),
        // only what sets by a reaction has times among its thermal figures
        like.workMin() == null ? null : or("workingTimeMin", m.workingTimeMin(), like.workMin()),
        like.demoldMin() == null ? null : or("demoldTimeMin", m.demoldTimeMin(), like.demoldMin()),
        like.activationKJPerMol(),
        like.order(),
        or(Quantity.SOFTENS, like.softensC()),
        or("pourC", m.pourC(), like.pourC()),
        like.airC(),
        like.notes());
  }

  private Figure or(Quantity q, Figure other) {
    org.castwright.material.Figure own = stated.figures().get(q);
    return own == null ? other : new Figure(own.low(), own.high(), own.source());
  }

  private Figure or(String key, List<Double> range, Figure other) {
    boolean own = stated.stated().contains(key) && range != null && !range.isEmpty();
    return own ? new Figure(range.get(0), range.get(range.size() - 1), OWN) : other;
  }
}
