package org.castwright.material;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;

class MaterialsTest {

  @Test
  void everyMaterialHasSourcesCautionsAndAShrinkInsideItsOwnBand() {
    Set<String> ids = new HashSet<>();
    for (Material m : Materials.all()) {
      assertTrue(ids.add(m.id()), m.id());
      assertTrue(
          m.shrink().lowPercent() <= m.shrink().percent()
              && m.shrink().percent() <= m.shrink().highPercent(),
          m.id());
      assertFalse(m.shrink().source().isBlank(), m.id());
      assertFalse(m.density().source().isBlank(), m.id());
      assertFalse(m.demoldStrain().source().isBlank(), m.id());
      assertFalse(m.cautions().isEmpty(), m.id());
      assertTrue(m.gateMm() > m.ventMm() && m.ventMm() >= 1, m.id());
      assertTrue(m.density().kgPerM3() > 500 && m.density().kgPerM3() < 10000, m.id());
    }
    assertTrue(ids.size() >= 15);
  }

  @Test
  void neverSaysFoodSafe() {
    for (Material m : Materials.all()) {
      assertFalse(m.toString().toLowerCase(Locale.ROOT).contains("food safe"), m.id());
      assertFalse(m.toString().toLowerCase(Locale.ROOT).contains("food-safe"), m.id());
    }
  }

  @Test
  void scaleIsOneOverOneMinusShrink() {
    // definition of bar-test shrink (ASTM D2566 convention): mold length = casting / (1 - s);
    // 2 % gives 1.020408, not 1.02
    assertEquals(1.020408, Material.scaleFactor(2), 5e-7);
    // gypsum that grows 0.2 % wants a smaller mold
    assertEquals(1 / 1.002, Material.scaleFactor(-0.2), 1e-12);
    assertThrows(IllegalArgumentException.class, () -> Material.scaleFactor(100));
    assertThrows(IllegalArgumentException.class, () -> Material.scaleFactor(Double.NaN));
  }

  @Test
  void unknownMaterialNamesTheKnownOnes() {
    var e = assertThrows(IllegalArgumentException.class, () -> Materials.of("marble"));
    assertTrue(e.getMessage().contains("plaster-pottery"));
  }
}
