package org.castwright.material;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MaterialsTest {

  @Test
  void everyMaterialHasSourcesCautionsAndAShrinkInsideItsOwnBand() {
    Set<String> ids = new HashSet<>();
    for (Material m : Materials.all()) {
      assertTrue(ids.add(m.id()), m.id());
      if (m.shrink() != null) {
        assertTrue(
            m.shrink().lowPercent() <= m.shrink().percent()
                && m.shrink().percent() <= m.shrink().highPercent(),
            m.id());
        assertFalse(m.shrink().source().isBlank(), m.id());
      }
      if (m.density() != null) {
        assertFalse(m.density().source().isBlank(), m.id());
        assertTrue(m.density().kgPerM3() > 500 && m.density().kgPerM3() < 10000, m.id());
      }
      assertTrue(m.demoldStrain() == null || !m.demoldStrain().source().isBlank(), m.id());
      assertTrue(m.mix() == null || !m.mix().source().isBlank(), m.id());
      assertFalse(m.cautions().isEmpty(), m.id());
      m.cautions().forEach(c -> assertTrue(c.contains(" "), "no text for " + c));
      assertTrue(m.gateMm() > m.ventMm() && m.ventMm() >= 1, m.id());
      assertTrue(
          (m.viscosityPaS() != null) == m.figures().containsKey(Quantity.VISCOSITY)
              || m.id().startsWith("soap"),
          "viscosity without a range: " + m.id());
    }
    assertTrue(ids.size() >= 27, "classes: " + ids.size());
  }

  @Test
  void figuresAgreeWithWhatPlansUse() {
    for (Material m : Materials.all()) {
      Figure v = m.figure(Quantity.VISCOSITY);
      if (v != null && m.viscosityPaS() != null) {
        assertTrue(v.low() <= m.viscosityPaS() && m.viscosityPaS() <= v.high(), m.id());
      }
      Figure l = m.figure(Quantity.LIQUID_DENSITY);
      if (l != null && m.density() != null) {
        // a solid within a fifth of its melt
        assertEquals(1, m.density().kgPerM3() / l.usual(), 0.2, m.id());
      }
    }
  }

  @Test
  void whatIsNotKnownIsSaidAndNotGuessed() {
    Material agar = Materials.find("agar-jelly");
    assertEquals(List.of("shrink", "density", "strain when opening"), agar.gaps());
    assertNull(agar.viscosityPaS());
    var e = assertThrows(IllegalArgumentException.class, () -> Materials.of("agar-jelly"));
    assertTrue(e.getMessage().contains("no shrink and no density"), e.getMessage());
    assertEquals(List.of(), Materials.of("plaster-pottery").gaps());
  }

  @Test
  void aFileOfOnesOwnOverridesAddsAndFillsGaps(@TempDir Path dir) throws IOException {
    Path file = dir.resolve("bench.json");
    Files.writeString(
        file,
        """
        {"materials": [
          {"id": "agar-jelly",
           "shrink": {"percent": 1, "lowPercent": 0, "highPercent": 2, "source": "my test cast"},
           "density": {"kgPerM3": 1020, "source": "weighed"},
           "demoldStrain": {"share": 0.1, "source": "my test cast"}},
          {"id": "blue-wax", "like": "paraffin-wax", "name": "Blue wax",
           "figures": {"melts": {"low": 70, "high": 72, "source": "its label"}},
           "cautions": ["hot-wax", "It stains."]}
        ]}
        """);
    Material agar = Materials.of(file + ":agar-jelly");
    assertEquals(1020, agar.density().kgPerM3());
    assertEquals("my test cast", agar.shrink().source());
    Material wax = Materials.of(file + ":blue-wax");
    assertEquals("Blue wax", wax.name());
    assertEquals(71, wax.figure(Quantity.MELTS).usual());
    assertEquals(
        Materials.of("paraffin-wax").figure(Quantity.VISCOSITY), wax.figure(Quantity.VISCOSITY));
    assertEquals("paraffin-wax", wax.origin().like());
    assertEquals(Set.of(Quantity.MELTS), wax.origin().figures().keySet());
    assertEquals("agar-jelly", agar.origin().like());
    assertNull(Materials.of("paraffin-wax").origin());
    assertEquals(2, wax.cautions().size());
    assertTrue(wax.cautions().get(0).startsWith("Hot wax burns"));
    assertEquals("It stains.", wax.cautions().get(1));
    assertEquals(Materials.all().size() + 1, Materials.all(file).size());
    assertEquals(Materials.of("ice").figures(), Materials.of(file + ":ice").figures());
    // found again from anywhere by the id that reports state
    assertEquals(file.toAbsolutePath() + ":blue-wax", wax.id());
    assertEquals(wax, Materials.of(wax.id()));
    assertEquals("ice", Materials.reference("ice"));
  }

  @Test
  void wrongFilesAreToldInOneSentence(@TempDir Path dir) throws IOException {
    refused(dir, "[1, 2]", "needs a list");
    refused(dir, "{\"materials\": [{\"name\": \"x\"}]}", "needs an \"id\"");
    refused(dir, "{\"materials\": [{\"id\": \"x\"}]}", "lacks \"name\"");
    refused(dir, "{\"materials\": [{\"id\": \"x\", \"like\": \"marble\"}]}", "unknown");
    refused(dir, "{\"materials\": [{\"id\": \"ice\", \"gateMm\": \"wide\"}]}", "is wrong");
    refused(dir, "{\"materials\": [{\"id\": \"ice\", \"density\": {\"kgPerM3\": 9}}]}", "source");
    refused(dir, "no json", "is wrong");
    assertThrows(
        IllegalArgumentException.class, () -> Materials.of(dir.resolve("no.json") + ":ice"));
  }

  private static void refused(Path dir, String text, String words) throws IOException {
    Path file = Files.writeString(dir.resolve("t.json"), text);
    var e = assertThrows(IllegalArgumentException.class, () -> Materials.of(file + ":x"));
    assertTrue(e.getMessage().contains(words), e.getMessage());
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
