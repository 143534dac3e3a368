package org.castwright.web;

import java.util.List;
import org.castwright.material.Material;
import org.castwright.material.Materials;

/** What the page shows of a material. */
record MaterialCard(
    String id,
    String name,
    double shrinkPercent,
    String shrinkSource,
    double densityKgPerM3,
    List<Double> pourC,
    List<Double> demoldTimeMin,
    List<String> cautions,
    String notes) {

  /** Those that a mold can be made for: some classes of the table have gaps. */
  static List<MaterialCard> all() {
    return Materials.all().stream().filter(m -> m.gaps().isEmpty()).map(MaterialCard::of).toList();
  }

  private static MaterialCard of(Material m) {
    return new MaterialCard(
        m.id(),
        m.name(),
        m.shrink().percent(),
        m.shrink().source(),
        m.density().kgPerM3(),
        m.pourC(),
        m.demoldTimeMin(),
        m.cautions(),
        m.notes());
  }
}
