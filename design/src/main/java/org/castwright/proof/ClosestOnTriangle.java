package org.castwright.proof;

import org.castwright.geom.Vec3;

/**
 * Keeps the closest of the triangles shown to it to one point. Regions of the triangle as in C.
 * Ericson, Real-Time Collision Detection (2005), section 5.1.5.
 */
final class ClosestOnTriangle {

  private final double[] xyz;
  private final int[] tri;
  private final Vec3 p;
  private double squared;
  private int face = -1;
  private Vec3 point = Vec3.ZERO;

  ClosestOnTriangle(double[] xyz, int[] tri, Vec3 p) {
    this(xyz, tri, p, Double.POSITIVE_INFINITY);
  }

  /** Keeps only triangles closer than the root of {@code squaredLimit}. */
  ClosestOnTriangle(double[] xyz, int[] tri, Vec3 p, double squaredLimit) {
    this.xyz = xyz;
    this.tri = tri;
    this.p = p;
    this.squared = squaredLimit;
  }

  double squared() {
    return squared;
  }

  int face() {
    return face;
  }

  Vec3 point() {
    return point;
  }

  void to(int f) {
    Vec3 q = closest(vertex(tri[3 * f]), vertex(tri[3 * f + 1]), vertex(tri[3 * f + 2]));
    Vec3 d = q.minus(p);
    double s = d.dot(d);
    if (s < squared) {
      squared = s;
      face = f;
      point = q;
    }
  }

  private Vec3 vertex(int i) {
    return new Vec3(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
  }

  private Vec3 closest(Vec3 a, Vec3 b, Vec3 c) {
    Vec3 ab = b.minus(a);
    Vec3 ac = c.minus(a);
    Vec3 ap = p.minus(a);
    double d1 = ab.dot(ap);
    double d2 = ac.dot(ap);
    if (d1 <= 0 && d2 <= 0) {
      return a;
    }
    Vec3 bp = p.minus(b);
    double d3 = ab.dot(bp);
    double d4 = ac.dot(bp);
    if (d3 >= 0 && d4 <= d3) {
      return b;
    }
    double vc = d1 * d4 - d3 * d2;
    if (vc <= 0 && d1 >= 0 && d3 <= 0) {
      return a.plus(ab.times(share(d1, d1 - d3)));
    }
    Vec3 cp = p.minus(c);
    double d5 = ab.dot(cp);
    double d6 = ac.dot(cp);
    if (d6 >= 0 && d5 <= d6) {
      return c;
    }
    double vb = d5 * d2 - d1 * d6;
    if (vb <= 0 && d2 >= 0 && d6 <= 0) {
      return a.plus(ac.times(share(d2, d2 - d6)));
    }
    double va = d3 * d6 - d5 * d4;
    if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
      return b.plus(c.minus(b).times(share(d4 - d3, d4 - d3 + d5 - d6)));
    }
    double whole = va + vb + vc;
    return a.plus(ab.times(share(vb, whole))).plus(ac.times(share(vc, whole)));
  }

  private static double share(double part, double whole) {
    return whole == 0 ? 0 : part / whole;
  }
}
