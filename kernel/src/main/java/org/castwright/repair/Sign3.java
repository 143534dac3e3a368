package org.castwright.repair;

/**
 * Which side of a plane or line a point lies on. The fast answer is kept when it is larger than its
 * rounding error can be (J. R. Shewchuk, Adaptive precision floating-point arithmetic and fast
 * robust geometric predicates, 1997); otherwise the determinant is worked out again in
 * double-double arithmetic and taken for zero below 2^-90 of the sum of its terms, so the sign is
 * right except for points nearer to the plane than that.
 */
final class Sign3 {

  /** Half an ulp of 1. */
  private static final double EPS = 0x1p-53;

  /** Shewchuk's bounds for the first stage of orient3d and orient2d. */
  private static final double BOUND_3 = (7 + 56 * EPS) * EPS;

  private static final double BOUND_2 = (3 + 16 * EPS) * EPS;

  /** Double-double carries 106 bits; products and sums of this size lose fewer than 16. */
  private static final double TINY = 0x1p-90;

  private Sign3() {}

  /**
   * The sign of the volume of the tetrahedron a, b, c, d: 1 if a, b, c run clockwise seen from d.
   * Offsets are into the packed coordinates of each.
   */
  static int side(double[] x, int a, int b, int c, double[] y, int d) {
    double ax = x[a] - y[d];
    double ay = x[a + 1] - y[d + 1];
    double az = x[a + 2] - y[d + 2];
    double bx = x[b] - y[d];
    double by = x[b + 1] - y[d + 1];
    double bz = x[b + 2] - y[d + 2];
    double cx = x[c] - y[d];
    double cy = x[c + 1] - y[d + 1];
    double cz = x[c + 2] - y[d + 2];
    double bc = bx * cy;
    double cb = cx * by;
    double ca = cx * ay;
    double ac = ax * cy;
    double ab = ax * by;
    double ba = bx * ay;
    double det = az * (bc - cb) + bz * (ca - ac) + cz * (ab - ba);
    double sum =
        (Math.abs(bc) + Math.abs(cb)) * Math.abs(az)
            + (Math.abs(ca) + Math.abs(ac)) * Math.abs(bz)
            + (Math.abs(ab) + Math.abs(ba)) * Math.abs(cz);
    double bound = BOUND_3 * sum;
    if (det > bound) {
      return 1;
    }
    if (-det > bound) {
      return -1;
    }
    return sum == 0 ? 0 : slowSide(x, a, b, c, y, d, sum);
  }

  private static int slowSide(double[] x, int a, int b, int c, double[] y, int d, double sum) {
    DoubleDouble[] p = new DoubleDouble[9];
    for (int k = 0; k < 3; k++) {
      p[k] = DoubleDouble.difference(x[a + k], y[d + k]);
      p[3 + k] = DoubleDouble.difference(x[b + k], y[d + k]);
      p[6 + k] = DoubleDouble.difference(x[c + k], y[d + k]);
    }
    DoubleDouble det =
        p[2].times(p[3].times(p[7]).minus(p[6].times(p[4])))
            .plus(p[5].times(p[6].times(p[1]).minus(p[0].times(p[7]))))
            .plus(p[8].times(p[0].times(p[4]).minus(p[3].times(p[1]))));
    return det.sign(TINY * sum);
  }

  /** The sign of the area of a triangle in a plane: 1 if counter-clockwise. */
  static int turn(double ax, double ay, double bx, double by, double cx, double cy) {
    double left = (ax - cx) * (by - cy);
    double right = (ay - cy) * (bx - cx);
    double det = left - right;
    double sum = Math.abs(left) + Math.abs(right);
    if (Math.abs(det) > BOUND_2 * sum) {
      return det > 0 ? 1 : -1;
    }
    if (sum == 0) {
      return 0;
    }
    DoubleDouble exact =
        DoubleDouble.difference(ax, cx)
            .times(DoubleDouble.difference(by, cy))
            .minus(DoubleDouble.difference(ay, cy).times(DoubleDouble.difference(bx, cx)));
    return exact.sign(TINY * sum);
  }

  /** An unevaluated sum of two doubles (T. J. Dekker, 1971). */
  private record DoubleDouble(double high, double low) {

    static DoubleDouble difference(double a, double b) {
      double s = a - b;
      double bb = s - a;
      return new DoubleDouble(s, (a - (s - bb)) - (b + bb));
    }

    DoubleDouble plus(DoubleDouble o) {
      double s = high + o.high;
      double bb = s - high;
      double error = (high - (s - bb)) + (o.high - bb) + low + o.low;
      double h = s + error;
      return new DoubleDouble(h, error - (h - s));
    }

    DoubleDouble minus(DoubleDouble o) {
      return plus(new DoubleDouble(-o.high, -o.low));
    }

    DoubleDouble times(DoubleDouble o) {
      double p = high * o.high;
      double error = Math.fma(high, o.high, -p) + (high * o.low + low * o.high);
      double h = p + error;
      return new DoubleDouble(h, error - (h - p));
    }

    int sign(double bound) {
      return high > bound ? 1 : -high > bound ? -1 : 0;
    }
  }
}
