package org.castwright.advice;

import java.util.List;
import java.util.Locale;
import org.castwright.geom.Vec3;

/** Numbers on their way into the report. */
final class Numbers {

  private Numbers() {}

  static double round(double v, int digits) {
    double f = Math.pow(10, digits);
    return Double.isFinite(v) ? Math.rint(v * f) / f + 0.0 : v;
  }

  /** To some digits that count; null for what is no finite number. */
  static Double significant(double v, int digits) {
    if (!Double.isFinite(v)) {
      return null;
    }
    if (v == 0) {
      return 0.0;
    }
    int before = (int) Math.floor(Math.log10(Math.abs(v))) + 1;
    return round(v, Math.max(0, digits - before));
  }

  static List<Double> round(List<Double> values, int digits) {
    return values.stream().map(v -> round(v, digits)).toList();
  }

  static List<Double> list(Vec3 v) {
    // adding zero turns -0 into 0
    return List.of(v.x() + 0.0, v.y() + 0.0, v.z() + 0.0);
  }

  static String place(Vec3 p) {
    return String.format(Locale.ROOT, "(%.1f, %.1f, %.1f)", p.x(), p.y(), p.z());
  }
}
