package org.castwright.size;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SizeTest {

  @Test
  void chains() {
    // bar-test convention (ASTM D2566): 1/(1−s)
    assertEquals(1.020408, ShrinkChain.of(new Shrink("mold", 2)).scale(), 5e-7);
    // print 0.3 %, silicone 0.1 %, resin 0.5 %
    ShrinkChain three =
        ShrinkChain.of(
            new Shrink("print", 0.3), new Shrink("silicone", 0.1), new Shrink("resin", 0.5));
    assertEquals(1.009058, three.scale(), 5e-7);
    // gypsum grows 0.2 %, then slip shrinks 12 %
    ShrinkChain slip = ShrinkChain.of(new Shrink("gypsum", -0.2), new Shrink("slip", 12));
    assertEquals(1.134095, slip.scale(), 5e-7);
    // drying and firing of clay: 6 and 6 % make 11.64 %, 7 and 8 % make 14.44 %
    assertEquals(11.64, ShrinkChain.of(new Shrink("d", 6), new Shrink("f", 6)).percent(), 1e-9);
    assertEquals(14.44, ShrinkChain.of(new Shrink("d", 7), new Shrink("f", 8)).percent(), 1e-9);
  }

  @Test
  void theBandHoldsTheSizeAndTheScaleGivesItBack() {
    ShrinkChain chain =
        ShrinkChain.of(new Shrink("print", 0.3, 0.1, 0.5), new Shrink("wax", 2, 1.7, 4.7));
    ShrinkChain.Band ends = chain.ends(100 * chain.scale());
    assertEquals(100, ends.mm(), 1e-12);
    assertEquals(100 * chain.scale() * 0.995 * 0.953, ends.lowMm(), 1e-9);
    assertEquals(100 * chain.scale() * 0.999 * 0.983, ends.highMm(), 1e-9);
    assertTrue(ends.lowMm() < ends.mm() && ends.mm() < ends.highMm());
  }

  @ParameterizedTest
  @CsvSource({
    "2, 0.671",
    "3, 1.010",
    "5, 1.695",
    "7, 2.390",
    "8, 2.741",
    "10, 3.451",
    "12, 4.172",
    "15, 5.273"
  })
  void volumeToLength(double volume, double linear) {
    assertEquals(linear, Shrink.linearPercent(volume), 5e-4);
  }

  @Test
  void fromDensitiesAndTemperatures() {
    // ice from water, steam tables: 999.8 and 917 kg/m³: -2.92 %
    assertEquals(-2.92, Shrink.linearPercentOfDensities(999.8, 917), 5e-3);
    // paraffin 780 to 900: 4.66 %
    assertEquals(4.66, Shrink.linearPercentOfDensities(780, 900), 5e-3);
    // silicone, 250 to 300 ppm/K over 40 K: 1.0 to 1.2 %
    assertEquals(1.0, Shrink.coolingPercent(250e-6, 40), 1e-9);
    assertEquals(1.2, Shrink.coolingPercent(300e-6, 40), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({
    "12, 0.694",
    "8, 1.042",
    "6.4, 1.302",
    "5.3333333, 1.563",
    "4.5714286, 1.823",
    "4, 2.083",
    "3.2, 2.604"
  })
  void shrinkRules(double oneInchIn, double percent) {
    // fractions of an inch for each foot, as shrink rules are marked: 1/12, 1/8, 5/32 ... 5/16
    assertEquals(percent, 100.0 / oneInchIn / 12, 5e-4);
    assertEquals(1 + percent / 100, Shrink.ruleFactor(100.0 / oneInchIn / 12), 5e-6);
  }

  @Test
  void theRuleOfCastIron() {
    // a pattern of 12 1/8 in for a casting of 12 in: factor 1.010417
    assertEquals(1.010417, Shrink.ruleFactor(100.0 / 8 / 12), 5e-7);
  }

  @Test
  void iso8062Table2() {
    // ISO 8062-3:2007, table 2, total widths
    assertEquals(0.26 / 2, ToleranceClass.iso8062(4, 10));
    assertEquals(0.28 / 2, ToleranceClass.iso8062(4, 10.01));
    assertEquals(1.6 / 2, ToleranceClass.iso8062(8, 100));
    assertEquals(9.0 / 2, ToleranceClass.iso8062(12, 400));
    assertTrue(Double.isNaN(ToleranceClass.iso8062(8, 401)));
    assertThrows(IllegalArgumentException.class, () -> ToleranceClass.iso8062(3, 10));
    for (double l : new double[] {5, 12, 20, 30, 50, 80, 120, 200, 300}) {
      for (int g = 5; g <= 12; g++) {
        assertTrue(ToleranceClass.iso8062(g, l) > ToleranceClass.iso8062(g - 1, l));
      }
    }
    assertEquals(8, ToleranceClass.finestIso8062(100, 0.8));
    assertEquals(9, ToleranceClass.finestIso8062(100, -0.81));
    assertEquals(0, ToleranceClass.finestIso8062(100, 9));
  }

  @Test
  void din16742Tg6() {
    // group TG6 as quoted in an enclosure maker's tolerance sheet
    assertEquals(0.07, ToleranceClass.din16742Tg6(1, false));
    assertEquals(0.12, ToleranceClass.din16742Tg6(2, true));
    assertEquals(0.57, ToleranceClass.din16742Tg6(100, false));
    assertEquals(0.80, ToleranceClass.din16742Tg6(100, true));
    assertEquals(1.60, ToleranceClass.din16742Tg6(400, true));
    assertTrue(Double.isNaN(ToleranceClass.din16742Tg6(0.5, false)));
  }

  @Test
  void aShrinkOutOfOrderIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Shrink("x", 2, 3, 4));
    assertThrows(IllegalArgumentException.class, () -> new Shrink("x", 50));
  }
}
