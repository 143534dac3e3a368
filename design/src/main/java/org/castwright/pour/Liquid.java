package org.castwright.pour;

import org.castwright.geom.Vec3;

/**
 * A resting liquid with a free surface.
 *
 * @param densityKgPerM3 above zero
 * @param up unit direction against gravity
 * @param surfaceMm height of the free surface along {@code up}, mm from the origin
 */
public record Liquid(double densityKgPerM3, Vec3 up, double surfaceMm) {

  /** Acceleration of gravity, m/s², as rounded in handbooks of mechanics. */
  public static final double GRAVITY = 9.81;

  static final double MM_PER_M = 1000;
  static final double MM2_PER_M2 = 1e6;
  static final double MM3_PER_M3 = 1e9;

  /**
   * @throws IllegalArgumentException if the density is not above zero or up has no direction
   */
  public Liquid {
    if (!(densityKgPerM3 > 0) || !Double.isFinite(densityKgPerM3)) {
      throw new IllegalArgumentException("a liquid needs a density above 0 kg/m³");
    }
    up = up.unit();
  }

  /** Pressure under a head of {@code headMm}, Pa: {@code ρ·g·h}. */
  public static double pressurePa(double densityKgPerM3, double headMm) {
    return densityKgPerM3 * GRAVITY * headMm / MM_PER_M;
  }

  /** The head, mm, of a liquid that presses with {@code pressurePa}. */
  public static double headMm(double densityKgPerM3, double pressurePa) {
    return pressurePa / (densityKgPerM3 * GRAVITY) * MM_PER_M;
  }

  /** Depth of a point under the free surface, mm; below zero above it. */
  public double depthMm(Vec3 p) {
    return surfaceMm - p.dot(up);
  }

  /** Pressure at a point, Pa; zero above the surface. */
  public double pressurePa(Vec3 p) {
    return pressurePa(densityKgPerM3, Math.max(0, depthMm(p)));
  }

  /** The weight, N, of a volume of the liquid. */
  public double weightN(double volumeMm3) {
    return densityKgPerM3 * GRAVITY * volumeMm3 / MM3_PER_M3;
  }
}
