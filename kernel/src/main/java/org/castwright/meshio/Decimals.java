package org.castwright.meshio;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Prints doubles with as few digits as read back to the same double. {@code Double.toString} is not
 * used: its digits differ between Java versions.
 */
final class Decimals {

  /** The powers of ten that are doubles without rounding, 10^0 to 10^22. */
  static final double[] TEN = new double[23];

  static {
    double p = 1;
    for (int i = 0; i < TEN.length; i++) {
      TEN[i] = p;
      p *= 10;
    }
  }

  /** Powers of ten up to 10^15 times a number below 2^53 stay exact to one rounding. */
  private static final int MOST_PLACES = 15;

  private static final double EXACT = 0x1p53;

  /** Fifteen digits always survive being a double; seventeen always suffice. */
  private static final int FEWEST = 15;

  private static final int ENOUGH = 17;

  /** With 17 digits this needs 22 places, the last power of ten in the table. */
  private static final double LEAST_MIDDLING = 1e-5;

  private Decimals() {}

  static void append(StringBuilder out, double value) {
    if (value == 0) {
      out.append('0');
      return;
    }
    for (int places = 0; places <= MOST_PLACES; places++) {
      double power = TEN[places];
      double scaled = Math.rint(value * power);
      if (Math.abs(scaled) >= EXACT) {
        break;
      }
      // both operands are exact, so the quotient is the double nearest to the decimal
      if (scaled / power == value) {
        appendScaled(out, (long) scaled, places);
        return;
      }
    }
    if (!appendMiddling(out, value)) {
      appendAny(out, value);
    }
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

  /**
   * Prints numbers near enough to one that scaling them to 17 digits takes a power of ten that is a
   * double: the product is then known exactly as a sum of two doubles.
   *
   * @return false, with nothing printed, for other numbers
   */
  private static boolean appendMiddling(StringBuilder out, double value) {
    double size = Math.abs(value);
    if (size < LEAST_MIDDLING || size >= TEN[FEWEST]) {
      return false;
    }
    int exponent = 0;
    while (size >= TEN[exponent + 1]) {
      exponent++;
    }
    while (exponent <= 0 && size * TEN[-exponent] < 1) {
      exponent--;
    }
    for (int digits = FEWEST; digits <= ENOUGH; digits++) {
      int places = digits - 1 - exponent;
      double high = size * TEN[places];
      double low = Math.fma(size, TEN[places], -high);
      long whole = (long) high;
      long n = whole + (long) Math.rint(high - whole + low);
      while (places > 0 && n % 10 == 0) {
        n /= 10;
        places--;
      }
      int start = out.length();
      appendScaled(out, value < 0 ? -n : n, places);
      if (Double.parseDouble(out.substring(start)) == value) {
        return true;
      }
      out.setLength(start);
    }
    return false;
  }

  private static void appendAny(StringBuilder out, double value) {
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
