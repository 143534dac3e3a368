package org.castwright.pour;

import org.castwright.geom.Vec3;

/**
 * What a liquid does to a surface.
 *
 * @param forceN sum of the forces
 * @param momentNmm sum of the moments about the origin
 * @param wettedMm2 area under the free surface
 * @param highestPa highest pressure
 */
public record Load(Vec3 forceN, Vec3 momentNmm, double wettedMm2, double highestPa) {

  static final Load NONE = new Load(Vec3.ZERO, Vec3.ZERO, 0, 0);

  /** Both loads at once. */
  public Load plus(Load o) {
    return new Load(
        forceN.plus(o.forceN),
        momentNmm.plus(o.momentNmm),
        wettedMm2 + o.wettedMm2,
        Math.max(highestPa, o.highestPa));
  }

  /** The part of the force along a unit direction, N. */
  public double alongN(Vec3 direction) {
    return forceN.dot(direction);
  }

  /**
   * The point nearest the origin on the line in which one force does the same as the load, save for
   * a twist about that line; null when there is no force.
   */
  public Vec3 lineOfForce() {
    double f2 = forceN.dot(forceN);
    return f2 > 0 ? forceN.cross(momentNmm).times(1 / f2) : null;
  }
}
