package org.castwright.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.trial.Reading.Fit;
import org.castwright.trial.Reading.Kind;
import org.junit.jupiter.api.Test;

class CalibrationTest {

  private static Reading key(double gap, Fit fit) {
    return new Reading(Kind.KEY_FIT, "", "bench-printer", "fdm", gap, null, fit, "", "");
  }

  private static Reading cast(String material, String printer, double drawn, double got) {
    return new Reading(Kind.CAST_LENGTH, material, printer, "fdm", drawn, got, null, "", "");
  }

  private static Double gap(Reading... readings) {
    return new Calibration(List.of(readings)).of("x", "bench-printer", "fdm").clearanceMm();
  }

  @Test
  void theSmallestGoodGapIsTaken() {
    assertEquals(
        0.25, gap(key(0.15, Fit.NO), key(0.2, Fit.TIGHT), key(0.25, Fit.GOOD), key(0.3, Fit.GOOD)));
  }

  @Test
  void aGoodGapBelowATightOneIsNotTrusted() {
    assertEquals(0.3, gap(key(0.2, Fit.GOOD), key(0.25, Fit.TIGHT), key(0.3, Fit.GOOD)));
  }

  @Test
  void withoutAGoodOneItLiesBetweenTightAndLoose() {
    assertEquals(0.275, gap(key(0.2, Fit.TIGHT), key(0.35, Fit.LOOSE)));
    assertEquals(0.4, gap(key(0.35, Fit.TIGHT)));
    assertEquals(0.3, gap(key(0.35, Fit.LOOSE)));
    assertNull(gap());
  }

  @Test
  void readingsCountForTheirMaterialAndPrinterOnly() {
    Calibration c =
        new Calibration(
            List.of(
                cast("beeswax", "a", 100, 97),
                cast("beeswax", "b", 100, 98),
                cast("concrete", "a", 100, 99)));
    assertEquals(3, c.of("beeswax", "a", "fdm").cast().percent(), 1e-9);
    assertEquals(2, c.of("beeswax", "b", "fdm").cast().percent(), 1e-9);
    assertEquals(1, c.of("concrete", "a", "fdm").cast().percent(), 1e-9);
    assertTrue(c.of("beeswax", "a", "resin").nothing());
  }

  @Test
  void thePrintsOwnShrinkComesOnTopOfTheTables() {
    Reading print =
        new Reading(Kind.PRINT_LENGTH, "", "a", "fdm", 100, 99.0, null, "coupon", "2026-01-02");
    Calibration.Own own = new Calibration(List.of(print)).of("beeswax", "a", "fdm");
    assertEquals(100 * (1 - 0.99 * 0.97), own.shrinkPercent(3), 1e-9);
    Calibration.Own both =
        new Calibration(List.of(print, cast("beeswax", "a", 100, 96))).of("beeswax", "a", "fdm");
    assertEquals(4, both.shrinkPercent(3), 1e-9);
    assertNull(Calibration.NONE.of("beeswax", "a", "fdm").shrinkPercent(3));
  }

  @Test
  void theSmallestBoreThatWorkedIsTaken() {
    List<Reading> bores =
        List.of(bore(0.8, Fit.NO), bore(1, Fit.NO), bore(1.5, Fit.GOOD), bore(2, Fit.GOOD));
    assertEquals(1.5, new Calibration(bores).of("beeswax", "a", "fdm").ventMm());
    assertNull(new Calibration(bores.subList(0, 2)).of("beeswax", "a", "fdm").ventMm());
  }

  private static Reading bore(double mm, Fit fit) {
    return new Reading(Kind.VENT_BORE, "beeswax", "a", "fdm", mm, null, fit, "", "");
  }

  @Test
  void slipsAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> cast("beeswax", "a", 100, 9.8));
    assertThrows(IllegalArgumentException.class, () -> cast("", "a", 100, 98));
    assertThrows(IllegalArgumentException.class, () -> cast("beeswax", " ", 100, 98));
    assertThrows(IllegalArgumentException.class, () -> key(0.2, null));
  }
}
