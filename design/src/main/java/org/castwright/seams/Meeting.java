package org.castwright.seams;

/** The point with the least sum of distances from three others (Fermat; found as Weiszfeld did). */
final class Meeting {

  /** Rounds of averaging; each brings the point about half way. */
  private static final int ROUNDS = 24;

  /** Cosine of 120 degrees: a wider corner is itself the answer. */
  private static final double WIDE = -0.5;

  /** Points nearer than this are one, mm. */
  private static final double ONE_MM = 1e-9;

  private Meeting() {}

  static void of(double[] a, double[] b, double[] c, double[] out) {
    if (corner(a, b, c)) {
      copy(a, out);
    } else if (corner(b, c, a)) {
      copy(b, out);
    } else if (corner(c, a, b)) {
      copy(c, out);
    } else {
      for (int k = 0; k < 3; k++) {
        out[k] = (a[k] + b[k] + c[k]) / 3;
      }
      for (int i = 0; i < ROUNDS; i++) {
        average(a, b, c, out);
      }
    }
  }

  private static boolean corner(double[] a, double[] b, double[] c) {
    double u = SeamCurve.distance(a, b);
    double v = SeamCurve.distance(a, c);
    if (u < ONE_MM || v < ONE_MM) {
      return true;
    }
    double dot = 0;
    for (int k = 0; k < 3; k++) {
      dot += (b[k] - a[k]) * (c[k] - a[k]);
    }
    return dot <= WIDE * u * v;
  }

  private static void average(double[] a, double[] b, double[] c, double[] out) {
    double u = 1 / Math.max(ONE_MM, SeamCurve.distance(a, out));
    double v = 1 / Math.max(ONE_MM, SeamCurve.distance(b, out));
    double w = 1 / Math.max(ONE_MM, SeamCurve.distance(c, out));
    for (int k = 0; k < 3; k++) {
      out[k] = (u * a[k] + v * b[k] + w * c[k]) / (u + v + w);
    }
  }

  private static void copy(double[] from, double[] to) {
    System.arraycopy(from, 0, to, 0, 3);
  }
}
