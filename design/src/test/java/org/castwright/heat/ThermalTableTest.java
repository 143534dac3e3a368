package org.castwright.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The thermal figures that ship with the program. */
class ThermalTableTest {

  @Test
  void idsAreTheirOwnAndEveryFigureHasASource() throws IOException {
    try (InputStream in = ThermalTable.class.getResourceAsStream("thermal.json")) {
      JsonNode table = new ObjectMapper().readTree(in);
      Set<String> ids = new HashSet<>();
      int figures = 0;
      for (String part : List.of("castings", "molds")) {
        for (JsonNode m : table.get(part)) {
          assertTrue(ids.add(part + m.get("id").asText()), m.get("id").asText());
          for (JsonNode f : m) {
            if (f.isObject()) {
              figures++;
              assertTrue(f.get("source").asText().length() > 8, m + "");
              assertTrue(f.get("low").isNumber() && f.get("high").isNumber());
            }
          }
        }
      }
      assertTrue(figures > 150, figures + "");
    }
  }

  /** What is missing is said by name; nothing computes without it. */
  @Test
  void missingFiguresAreSaid() {
    assertEquals(
        List.of("conductivity", "heat capacity", "density"),
        ThermalTable.mold("photopolymer").missing());
    assertTrue(ThermalTable.casting("rubber-polyurethane").missing().contains("conductivity"));
    assertEquals(List.of("law of setting"), ThermalTable.casting("silicone-platinum").missing());
    for (String id : List.of("paraffin-wax", "plaster-pottery", "resin-epoxy", "sugar-cast")) {
      assertEquals(List.of(), ThermalTable.casting(id).missing(), id);
    }
    String words =
        assertThrows(IllegalArgumentException.class, () -> ThermalTable.casting("cheese"))
            .getMessage();
    assertTrue(words.contains("'cheese'") && words.contains("beeswax"), words);
  }

  /** Figures that the table says are computed, computed again. */
  @Test
  void computedFigures() {
    ThermalMaterial pottery = ThermalTable.casting("plaster-pottery");
    assertEquals(Exotherm.plasterHeatCapacity(0.7), pottery.solidHeatCapacity().middle(), 1);
    assertEquals(112 / 1.7, pottery.reactionKJPerKg().low(), 0.05);
    assertEquals(133 / 1.7, pottery.reactionKJPerKg().high(), 0.05);
    ThermalMaterial hard = ThermalTable.casting("gypsum-hard");
    assertEquals(Exotherm.plasterHeatCapacity(0.30), hard.solidHeatCapacity().low(), 1);
    assertEquals(Exotherm.plasterHeatCapacity(0.45), hard.solidHeatCapacity().high(), 1);
    assertEquals(112 / 1.45, hard.reactionKJPerKg().low(), 0.05);
    assertEquals(133 / 1.30, hard.reactionKJPerKg().high(), 0.05);
    Figure concrete = ThermalTable.casting("concrete").reactionKJPerKg();
    assertEquals(350.0 / 2400 * 250, concrete.low(), 0.05);
    assertEquals(350.0 / 2400 * 500, concrete.high(), 0.1);
  }

  /** At every corner a melt is poured as a melt, and slower means slower. */
  @Test
  void cornersOfTheRanges() {
    MoldWall wall = MoldWall.full(ThermalTable.mold("pla"));
    int seen = 0;
    for (ThermalMaterial m : ThermalTable.castings()) {
      if (!m.missing().isEmpty()) {
        continue;
      }
      for (Corner corner : Corner.values()) {
        Ingredients i = Ingredients.of(m, wall, HeatOptions.FINE, corner);
        Substance s = i.substances()[Voxels.CASTING];
        if (m.setting() != Setting.REACTION) {
          assertTrue(s.heat(i.pourC()) > 0, m.id() + " " + corner);
        } else {
          assertEquals(0.9, i.kinetics().advance(0, 23, 0, 0, demoldS(m, corner)), 0.003, m.id());
        }
        seen++;
      }
    }
    assertTrue(seen >= 3 * 12, seen + "");
  }

  private static double demoldS(ThermalMaterial m, Corner corner) {
    return 60 * corner.slowing(m.demoldMin());
  }

  /** Wax of 80 °C on walls of 20 °C: closed form; figures of the classes. */
  @Test
  void contact() {
    double wax = Contact.effusivity(0.15, 780 * 2300);
    double alloy = Contact.effusivity(20, 8600 * 180);
    double pla = Contact.effusivity(0.13, 1250 * 1800);
    double silicone = Contact.effusivity(0.2, 1100 * 1300);
    double plaster = Contact.effusivity(0.35, 1100 * 1090);
    assertEquals(49.4, Contact.celsius(80, wax, 20, pla), 0.05);
    assertEquals(49.5, Contact.celsius(80, wax, 20, silicone), 0.05);
    assertEquals(157, Contact.celsius(170, alloy, 20, pla), 0.5);
    assertEquals(157, Contact.celsius(170, alloy, 20, silicone), 0.5);
    assertEquals(154, Contact.celsius(170, alloy, 20, plaster), 0.5);
  }

  /** Maxwell's mixture: the ends, and a worked middle at half air, k 0.13 and 0.026. */
  @Test
  void infill() {
    assertEquals(0.13, MoldWall.withAir(0.13, 1), 1e-12);
    assertEquals(0.026, MoldWall.withAir(0.13, 1e-12), 1e-9);
    assertEquals(0.13 * (0.286 - 0.104) / (0.286 + 0.052), MoldWall.withAir(0.13, 0.5), 1e-12);
    assertThrows(
        IllegalArgumentException.class, () -> new MoldWall(ThermalTable.mold("silicone"), 0.5, 2));
    assertFalse(ThermalTable.mold("silicone").printed());
  }
}
