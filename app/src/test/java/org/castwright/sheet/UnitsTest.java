package org.castwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.junit.jupiter.api.Test;

/** Against NIST Handbook 44, appendix C, and ISO 216; both from memory. */
class UnitsTest {

  private static String plain(String s) {
    return s.replace(Type.NO_BREAK, ' ');
  }

  @Test
  void oneOfEachCustomaryUnit() {
    assertEquals("1.00 in", plain(Units.INCH.length(25.4)));
    assertEquals("1.00 fl oz", Units.INCH.volume(29_573.529_562_5));
    assertEquals("1.00 oz", Units.INCH.mass(0.028_349_523_125));
    assertEquals("1 lb 0.0 oz", Units.INCH.mass(0.453_592_37));
    assertEquals("2 lb 8.0 oz", Units.INCH.mass(2.5 * 0.453_592_37));
    assertEquals("32 to 212 °F", plain(Units.INCH.temperature(List.of(0.0, 100.0))));
    assertEquals("0.039 in", plain(Units.INCH.gap(1)));
  }

  @Test
  void metricDigitsFollowTheSize() {
    assertEquals("12.3 mm", plain(Units.METRIC.length(12.34)));
    assertEquals("270 mm", plain(Units.METRIC.length(270.04)));
    assertEquals("90.5 × 88.9 mm", Units.METRIC.size(List.of(90.46, 88.91)));
    assertEquals("62.2 cm³", Units.METRIC.volume(62_203));
    assertEquals("193 cm³", Units.METRIC.volume(193_321));
    assertEquals("64.1 g", Units.METRIC.mass(0.06407));
    assertEquals("641 g", Units.METRIC.mass(0.6407));
    assertEquals("1.250 kg", Units.METRIC.mass(1.25));
    assertEquals("60 to 65 °C", plain(Units.METRIC.temperature(List.of(60.0, 65.0))));
  }

  @Test
  void timesTurnToHours() {
    assertEquals("5 to 30 min", plain(Units.time(List.of(5.0, 30.0))));
    assertEquals("4 to 24 h", plain(Units.time(List.of(240.0, 1440.0))));
    assertEquals("0.5 to 16 h", plain(Units.time(List.of(30.0, 960.0))));
  }

  @Test
  void paperHasItsSize() {
    PDRectangle a4 = Paper.A4.size();
    assertEquals(210, a4.getWidth() / 72 * 25.4, 0.01);
    assertEquals(297, a4.getHeight() / 72 * 25.4, 0.01);
    assertEquals(8.5, Paper.LETTER.size().getWidth() / 72, 1e-6);
    assertEquals(11, Paper.LETTER.size().getHeight() / 72, 1e-6);
  }
}
