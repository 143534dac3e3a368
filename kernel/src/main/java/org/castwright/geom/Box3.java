package org.castwright.geom;

/** An axis-aligned box, {@code min} to {@code max}, millimeters. */
public record Box3(Vec3 min, Vec3 max) {

  /** The box of packed coordinates {@code x y z x y z ...}; at least one point is needed. */
  public static Box3 of(double[] xyz) {
    if (xyz.length < 3) {
      throw new IllegalArgumentException("no points");
    }
    double[] lo = {xyz[0], xyz[1], xyz[2]};
    double[] hi = {xyz[0], xyz[1], xyz[2]};
    for (int i = 3; i < xyz.length; i += 3) {
      for (int k = 0; k < 3; k++) {
        double v = xyz[i + k];
        if (v < lo[k]) {
          lo[k] = v;
        } else if (v > hi[k]) {
          hi[k] = v;
        }
      }
    }
    return new Box3(new Vec3(lo[0], lo[1], lo[2]), new Vec3(hi[0], hi[1], hi[2]));
  }

  public Vec3 size() {
    return max.minus(min);
  }

  public Vec3 center() {
    return min.plus(max).times(0.5);
  }

  public double diagonal() {
    return size().length();
  }

  public double longestSide() {
    Vec3 s = size();
    return Math.max(s.x(), Math.max(s.y(), s.z()));
  }

  public double volume() {
    Vec3 s = size();
    return s.x() * s.y() * s.z();
  }
}
