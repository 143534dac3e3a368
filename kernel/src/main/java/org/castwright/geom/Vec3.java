package org.castwright.geom;

/** A point or a vector in millimeters (or a unit direction, where the caller says so). */
public record Vec3(double x, double y, double z) {

  public static final Vec3 ZERO = new Vec3(0, 0, 0);
  public static final Vec3 X = new Vec3(1, 0, 0);
  public static final Vec3 Y = new Vec3(0, 1, 0);
  public static final Vec3 Z = new Vec3(0, 0, 1);

  public Vec3 plus(Vec3 o) {
    return new Vec3(x + o.x, y + o.y, z + o.z);
  }

  public Vec3 minus(Vec3 o) {
    return new Vec3(x - o.x, y - o.y, z - o.z);
  }

  public Vec3 times(double s) {
    return new Vec3(x * s, y * s, z * s);
  }

  public Vec3 negate() {
    return new Vec3(-x, -y, -z);
  }

  public double dot(Vec3 o) {
    return x * o.x + y * o.y + z * o.z;
  }

  public Vec3 cross(Vec3 o) {
    return new Vec3(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
  }

  public double length() {
    return Math.sqrt(dot(this));
  }

  /**
   * The unit vector along this one.
   *
   * @throws IllegalArgumentException if the length is zero or not finite
   */
  public Vec3 unit() {
    double l = length();
    if (!(l > 0) || Double.isInfinite(l)) {
      throw new IllegalArgumentException("a direction needs a finite length above zero: " + this);
    }
    return times(1 / l);
  }
}
