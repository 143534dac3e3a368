package org.castwright.meshio;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Prints doubles with as few digits as read back to the same double. {@code Double.toString} is not
 * used: its digits differ between Java versions.
 */
final class Decimals {

  /** Powers of ten up to 10^15 times a number below 2^53 stay exact to one rounding. */
  private static final int MOST_PLACES = 15;

  private static final double EXACT = 0x1p53;

  /** Fifteen digits always survive being a double; seventeen always suffice. */
  private static final int FEWEST = 15;

  private static final int ENOUGH = 17;

  private Decimals() {}

  static void append(StringBuilder out, double value) {
    if (value == 0) {
      out.append('0');
      return;
    }
    double power = 1;
    for (int places = 0; places <= MOST_PLACES; places++) {
      double scaled = Math.rint(value * power);
      if (Math.abs(scaled) >= EXACT) {
        break;
      }
      // both operands are exact, so the quotient is the double nearest to the decimal
      if (scaled / power == value) {
        appendScaled(out, (long) scaled, places);
        return;
      }
      power *= 10;
    }
    appendLong(out, value);
  }

  private static void appendScaled(StringBuilder out, long digits, int places) {
    if (digits < 0) {
      out.append('-');
    }
    String s = Long.toString(Math.abs(digits));
    int whole = s.length() - places;
    if (whole <= 0) {
      out.append("0.").append("0".repeat(-whole)).append(s);
    } else {
      out.append(s, 0, whole);
      if (places > 0) {
        out.append('.').append(s, whole, s.length());
      }
    }
  }

  private static void appendLong(StringBuilder out, double value) {
    BigDecimal exact = new BigDecimal(value);
    for (int digits = FEWEST; digits <= ENOUGH; digits++) {
      BigDecimal d = exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
      if (d.doubleValue() == value) {
        out.append(d.stripTrailingZeros());
        return;
      }
    }
    throw new IllegalArgumentException("not finite: " + value);
  }
}
