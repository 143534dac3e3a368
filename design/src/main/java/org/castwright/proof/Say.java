package org.castwright.proof;

import java.util.Locale;
import org.castwright.geom.Vec3;

/** Numbers and places in the sentences of checks. */
final class Say {

  private Say() {}

  /** A number with three or so digits that mean something. */
  static String number(double x) {
    double a = Math.abs(x);
    if (a == 0) {
      return "0";
    }
    if (a < 1e-4) {
      return String.format(Locale.ROOT, "%.1e", x);
    }
    String digits = a < 1 ? "%.4f" : a < 100 ? "%.3f" : "%.1f";
    return String.format(Locale.ROOT, digits, x);
  }

  static String place(Vec3 p) {
    return String.format(Locale.ROOT, "(%.2f, %.2f, %.2f)", p.x(), p.y(), p.z());
  }

  static String count(int n, String one, String many) {
    return n + " " + (n == 1 ? one : many);
  }

  /** The end of a sentence; what fails but is forgiven says so. */
  static String ending(boolean passed, boolean forgiven) {
    return passed || !forgiven ? "." : "; recorded only, since catches are allowed.";
  }
}
