package org.castwright.meshio;

/** Numbers in XML attributes, by the 3MF rules, narrower than Java's own. */
final class XmlNumbers {

  private XmlNumbers() {}

  /** The decimal number, or not-a-number if it is none. */
  static double decimal(String s) {
    for (int i = 0; i < s.length(); i++) {
      char c = s.charAt(i);
      boolean good =
          (c >= '0' && c <= '9') || c == '.' || c == '-' || c == '+' || c == 'e' || c == 'E';
      if (!good) {
        return Double.NaN;
      }
    }
    try {
      return Double.parseDouble(s);
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  /** The whole number from 0 on, or -1 if it is none. */
  static int index(String s) {
    int n = s.length();
    // nine digits fit an int
    if (n == 0 || n > 9) {
      return -1;
    }
    int value = 0;
    for (int i = 0; i < n; i++) {
      int d = s.charAt(i) - '0';
      if (d < 0 || d > 9) {
        return -1;
      }
      value = 10 * value + d;
    }
    return value;
  }
}
