package org.castwright.meshio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.SplittableRandom;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Printing and reading of numbers against the JDK's correctly rounded {@code parseDouble}. */
class DecimalsTest {

  private static String print(double v) {
    StringBuilder s = new StringBuilder();
    Decimals.append(s, v);
    return s.toString();
  }

  private static double parse(String s) {
    Source source = new Source("n", ModelFiles.ascii(s), ReadLimits.DEFAULT, Progress.NONE);
    TextCursor in = new TextCursor(source, 0, 0);
    in.nextLine();
    return in.number("x");
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "-0.0, 0",
    "1, 1",
    "-2.5, -2.5",
    "0.1, 0.1",
    "1e-7, 0.0000001",
    "-0.001, -0.001",
    "123456789012345, 123456789012345",
    "2e-3, 0.002",
    "1e22, 1E+22",
    "2.5E-20, 2.5E-20"
  })
  void shortest(double value, String text) {
    assertEquals(text, print(value));
  }

  @Test
  void readsBackAndIsShort() {
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < 40_000; i++) {
      double v =
          switch (i % 5) {
            case 0 -> random.nextDouble(-500, 500);
            case 1 -> (float) random.nextDouble(-500, 500);
            case 2 -> random.nextInt(-1_000_000, 1_000_000) / 1000.0;
            case 3 -> random.nextDouble() * 1e-5;
            default -> Double.longBitsToDouble(random.nextLong());
          };
      if (!Double.isFinite(v)) {
        continue;
      }
      String s = print(v);
      assertEquals(v, Double.parseDouble(s), s);
      assertEquals(v, parse(s), s);
      // Double.toString may print a digit too many but never one too few
      int digits = new BigDecimal(s).stripTrailingZeros().precision();
      int java = new BigDecimal(Double.toString(v)).stripTrailingZeros().precision();
      assertTrue(digits <= java, s);
      // the number form of 3MF, ST_Number of the core schema
      assertTrue(s.matches("-?[0-9]+(\\.[0-9]+)?(E[-+]?[0-9]+)?"), s);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1.",
        ".5",
        "+.5e3",
        "-0",
        "00012.500",
        "1e-400",
        "9007199254740993",
        "1E+2",
        "0.1000000000000000055511151231257827",
        "123456789012345678901234567890",
        "4.9e-324",
        "0.000000000000000000000000000000000000001e39",
        "1.7976931348623157e308"
      })
  void parsesAsTheJdkDoes(String text) {
    assertEquals(Double.parseDouble(text), parse(text));
  }
}
