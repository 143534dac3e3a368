package org.castwright.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BatchTest {

  @Test
  void siliconeRoundAMaster() {
    // supplier's worked box: 6 x 4 x 3 cm round 5 x 3 x 2 cm at 1.2 g/cm³: 42 cm³, 50.4 g
    double ml = Mix.boxLessMasterMl(6 * 4 * 3, 5 * 3 * 2);
    assertEquals(42, ml, 1e-12);
    assertEquals(50.4, Mix.massG(ml, 1200, 0), 1e-9);
    assertEquals(52.9, Mix.massG(ml, 1200, 0.05), 0.05);
    assertEquals(55.4, Mix.massG(ml, 1200, 0.10), 0.05);
    assertThrows(IllegalArgumentException.class, () -> Mix.boxLessMasterMl(30, 72));
  }

  @Test
  void mixesAddUp() {
    Mix two =
        Mix.ofMass(
            550, List.of(new Mix.Component("A", 100, 1180), new Mix.Component("B", 10, 980)));
    assertEquals(500, two.parts().get(0).massG(), 1e-9);
    assertEquals(50, two.parts().get(1).massG(), 1e-9);
    assertEquals(500 / 1.18, two.parts().get(0).volumeMl(), 1e-9);
    assertEquals(500 / 1.18 + 50 / 0.98, two.totalMl(), 1e-9);
    List<Mix.Component> four =
        Mix.byVolume(
            List.of(
                new Mix.Component("a", 1, 1100),
                new Mix.Component("b", 2, 900),
                new Mix.Component("c", 0.5, 1300),
                new Mix.Component("d", 0.1, 1000)));
    Mix mix = Mix.ofMass(1000, four);
    assertEquals(1000, mix.parts().stream().mapToDouble(Mix.Part::massG).sum(), 1e-9);
    assertEquals(2, mix.parts().get(1).volumeMl() / mix.parts().get(0).volumeMl(), 1e-12);
    Mix unknown = Mix.ofMass(10, List.of(new Mix.Component("A", 1, Double.NaN)));
    assertTrue(Double.isNaN(unknown.totalMl()));
    assertThrows(IllegalArgumentException.class, () -> Mix.ofMass(10, List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> Mix.byVolume(List.of(new Mix.Component("A", 1, Double.NaN))));
  }

  @ParameterizedTest
  @CsvSource({
    "30, 1911, 1744",
    "40, 1794, 1520",
    "50, 1704, 1348",
    "60, 1632, 1210",
    "70, 1574, 1098",
    "80, 1525, 1005"
  })
  void plasterDensities(double water, double wet, double dry) {
    // computed by additive volumes, powder 2630 kg/m³
    PlasterMix mix = new PlasterMix(water);
    assertEquals(wet, mix.wetKgPerM3(), 0.6);
    assertEquals(dry, mix.dryKgPerM3(), 0.6);
  }

  @Test
  void plasterAgainstAGypsumTable() {
    // compilation on pottery plaster at consistency 70: 99 lb/ft³ wet, 69 dry; 1 %
    PlasterMix mix = new PlasterMix(70);
    assertEquals(1586, mix.wetKgPerM3(), 16);
    assertEquals(1105, mix.dryKgPerM3(), 11);
    assertEquals(926, mix.plasterG(1000), 0.5);
    assertEquals(648, mix.waterG(1000), 0.5);
    // 6 liters: 5.554 and 3.888 kg
    assertEquals(5554, mix.plasterG(6000), 0.5);
    assertEquals(3888, mix.waterG(6000), 0.5);
    // dental-materials study cards: 18.6 g of water bound by 100 g
    assertEquals(18.617, PlasterMix.BOUND, 5e-4);
    // rule "water = 0.6 x volume": additive volumes need 0.637 at 3:2
    assertEquals(0.637, new PlasterMix(200.0 / 3).waterG(1000) / 1000, 5e-4);
    // rule "3 lb and 2 lb make 80 cubic inches": 86.9 by additive volumes
    double ml = new PlasterMix(200.0 / 3).slurryMl(3 * 453.59237);
    assertEquals(86.9, ml / 16.387064, 0.05);
    assertThrows(IllegalArgumentException.class, () -> new PlasterMix(10));
  }

  @Test
  void slipWalls() {
    // slip supplier's cast times: 4 mm in 3, 3.5 and 4 min; factors 5.3, 4.6, 4.0 mm²/min
    assertEquals(5.3, SlipWall.measured(4, 3).mm2PerMin(), 0.05);
    assertEquals(4.6, SlipWall.measured(4, 3.5).mm2PerMin(), 0.05);
    assertEquals(4.0, SlipWall.measured(4, 4).mm2PerMin(), 0.05);
    assertEquals(11.25, new SlipWall(3.2).minutes(6), 1e-9);
    assertEquals(6, new SlipWall(3.2).wallMm(11.25), 1e-9);
    // density 1.75, solids 2.6: 69.6 % by weight
    assertEquals(0.696, SlipWall.solidsShare(1750, 2600), 5e-4);
  }

  @Test
  void batches() {
    // 10 castings, 4 molds, 3 min each, 7 min pot life: two a batch; 4 + 4 + 2
    Batches b = Batches.of(10, 4, 3, 7, 60);
    assertEquals(2, b.perBatch());
    assertEquals(5, b.batches());
    assertEquals(3, b.rounds());
    assertEquals(12 + 60 + 12 + 60 + 6 + 60, b.minutes(), 1e-9);
    Batches melt = Batches.of(3, 5, 1, Double.POSITIVE_INFINITY, 30);
    assertEquals(1, melt.batches());
    assertEquals(33, melt.minutes(), 1e-9);
    assertThrows(IllegalArgumentException.class, () -> Batches.of(1, 1, 8, 7, 60));
  }

  @ParameterizedTest
  @CsvSource({
    "0.2, 0.45, 60, 5.4, 5.14",
    "0.28, 0.45, 60, 7.56, 3.67",
    "0.3, 0.65, 50, 9.75, 2.85",
    "0.1, 0.42, 50, 2.1, 13.2"
  })
  void filamentRates(double layer, double line, double speed, double rate, double hoursFor100) {
    PrintRate r = new PrintRate(layer, line, speed, 1);
    assertEquals(rate, r.mm3PerS(), 1e-9);
    assertEquals(hoursFor100, r.hours(100_000), hoursFor100 > 10 ? 0.05 : 5e-3);
  }

  @Test
  void resinTimeAndPlastic() {
    // 100 mm at 0.05 mm and 8 s: 4.44 h
    assertEquals(4.44, PrintRate.resinHours(100, 0.05, 8), 5e-3);
    assertEquals(600 + 0.2 * 400, PrintRate.plasticMm3(1000, 500, 1.2, 0.2), 1e-9);
    assertEquals(1000, PrintRate.plasticMm3(1000, 5000, 1.2, 0.2), 1e-9);
  }

  @Test
  void costNamesWhatHasNoPrice() {
    Cost c =
        Cost.of(
            List.of(
                new Cost.Need("plaster, kg", 2.5, 3),
                new Cost.Need("filament, kg", 0.4, 20),
                new Cost.Need("release agent, ml", 5, Double.NaN)));
    assertEquals(15.5, c.total(), 1e-12);
    assertEquals(List.of("release agent, ml"), c.unpriced());
    assertEquals(2, c.lines().size());
    assertThrows(IllegalArgumentException.class, () -> Cost.of(List.of(new Cost.Need("x", 1, -1))));
  }
}
