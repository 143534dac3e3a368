package org.castwright.advice;

import java.util.ArrayList;
import java.util.List;
import org.castwright.heat.MoldMaterial;
import org.castwright.heat.ThermalMaterial;
import org.castwright.heat.ThermalTable;
import org.castwright.material.Material;

/**
 * What is known of the heat of a job.
 *
 * @param material figures of what is poured, null when none are known
 * @param wall of what the mold is made of
 * @param airC of the air, and of the mold at the pour, °C
 */
record HeatFigures(ThermalMaterial material, MoldMaterial wall, double airC) {

  /** Air of a room, °C; common practice, no source. */
  private static final double ROOM = 20;

  static HeatFigures of(PourJob job) {
    ThermalMaterial m = material(job.material());
    Double asked = job.cooling().airC();
    double usual = m == null || m.airC() == null ? ROOM : m.airC().middle();
    return new HeatFigures(m, ThermalTable.mold(wallOf(job)), asked == null ? usual : asked);
  }

  private static ThermalMaterial material(Material m) {
    Material.Origin origin = m.origin();
    String id = origin == null ? m.id() : origin.like();
    ThermalMaterial known =
        ThermalTable.castings().stream().filter(t -> t.id().equals(id)).findFirst().orElse(null);
    return origin == null || known == null ? known : StatedHeat.over(known, m);
  }

  private static String wallOf(PourJob job) {
    if (job.cooling().wallOf() != null) {
      return job.cooling().wallOf();
    }
    return job.print() == PourJob.Print.FDM ? "pla" : "photopolymer";
  }

  /** Figures that the table does not have, in words; needs a material. */
  List<String> missing() {
    List<String> out = new ArrayList<>();
    material.missing().forEach(m -> out.add("the " + m + " of " + material.name()));
    wall.missing().forEach(m -> out.add("the " + m + " of " + wall.name()));
    return out;
  }
}
