package org.castwright.geom;

/**
 * A right-handed rotation: three orthonormal axes, each given in world coordinates. {@link
 * #toLocal} reads a world vector in these axes; {@link #toWorld} is its inverse.
 */
public record Frame(Vec3 u, Vec3 v, Vec3 w) {

  public static final Frame WORLD = new Frame(Vec3.X, Vec3.Y, Vec3.Z);

  /**
   * A frame whose third axis is the direction {@code w}. For the world axes the other two are world
   * axes too, so a model that opens along an axis is only turned by right angles.
   */
  public static Frame along(Vec3 direction) {
    Vec3 w = direction.unit();
    double ax = Math.abs(w.x());
    double ay = Math.abs(w.y());
    double az = Math.abs(w.z());
    Vec3 hint = az >= ax && az >= ay ? Vec3.X : ay >= ax ? Vec3.Z : Vec3.Y;
    Vec3 u = hint.minus(w.times(hint.dot(w))).unit();
    return new Frame(u, w.cross(u), w);
  }

  /** The frame turned about its own third axis by the angle given, degrees, counter-clockwise. */
  public Frame turned(double degrees) {
    double c = StrictMath.cos(Math.toRadians(degrees));
    double s = StrictMath.sin(Math.toRadians(degrees));
    return new Frame(u.times(c).plus(v.times(s)), v.times(c).minus(u.times(s)), w);
  }

  /** The frame turned about its own third axis by so many right angles, without rounding. */
  public Frame quarterTurned(int turns) {
    return switch (Math.floorMod(turns, 4)) {
      case 1 -> new Frame(v, u.negate(), w);
      case 2 -> new Frame(u.negate(), v.negate(), w);
      case 3 -> new Frame(v.negate(), u, w);
      default -> this;
    };
  }

  public Vec3 toLocal(Vec3 p) {
    return new Vec3(u.dot(p), v.dot(p), w.dot(p));
  }

  public Vec3 toWorld(Vec3 p) {
    return u.times(p.x()).plus(v.times(p.y())).plus(w.times(p.z()));
  }

  /** The rotation back: its {@link #toLocal} is this frame's {@link #toWorld}. */
  public Frame inverse() {
    return new Frame(
        new Vec3(u.x(), v.x(), w.x()),
        new Vec3(u.y(), v.y(), w.y()),
        new Vec3(u.z(), v.z(), w.z()));
  }
}
