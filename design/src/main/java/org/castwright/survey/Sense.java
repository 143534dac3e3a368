package org.castwright.survey;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Which of two opposite directions is up. The rule, first that decides:
 *
 * <ol>
 *   <li>the end with the larger flat face lies below, when the two differ by more than 1 % of the
 *       surface: facets within 1° of square to the pull and within 0.5 % of the height from the
 *       end;
 *   <li>the bulk lies below: the center of volume is under half the height by more than 0.1 % of
 *       it;
 *   <li>the largest component of the direction is positive (of equal ones z, then y, then x).
 * </ol>
 */
final class Sense {

  private static final double SQUARE = Math.cos(Math.toRadians(1));
  private static final double END = 0.005;
  private static final double FLAT_SHARE = 0.01;
  private static final double BULK_SHARE = 0.001;
  // components closer than this count as equal, so rounding does not decide
  private static final double EQUAL = 1e-9;

  private Sense() {}

  /**
   * @param center from {@link #centerOfVolume}
   */
  static Vec3 of(TriMesh mesh, FacetTable facets, Vec3 center, Vec3 d) {
    double[] p = mesh.xyz();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < p.length; i += 3) {
      double z = p[i] * d.x() + p[i + 1] * d.y() + p[i + 2] * d.z();
      low = Math.min(low, z);
      high = Math.max(high, z);
    }
    double ends = flatBelowMinusAbove(mesh, facets, d, low, high);
    if (Math.abs(ends) > FLAT_SHARE * facets.totalArea()) {
      return ends > 0 ? d : opposite(d);
    }
    double bulk = (center.dot(d) - low) / (high - low) - 0.5;
    if (Math.abs(bulk) > BULK_SHARE) {
      return bulk < 0 ? d : opposite(d);
    }
    return canonical(d);
  }

  /** The sense whose largest component is positive. */
  static Vec3 canonical(Vec3 d) {
    double[] c = {d.z(), d.y(), d.x()};
    int k = 0;
    for (int i = 1; i < 3; i++) {
      if (Math.abs(c[i]) > Math.abs(c[k]) + EQUAL) {
        k = i;
      }
    }
    return c[k] < 0 ? opposite(d) : d;
  }

  private static Vec3 opposite(Vec3 d) {
    // from zero, so that no component becomes -0
    return Vec3.ZERO.minus(d);
  }

  private static double flatBelowMinusAbove(
      TriMesh mesh, FacetTable facets, Vec3 d, double low, double high) {
    double[] p = mesh.xyz();
    double near = END * (high - low);
    double sum = 0;
    for (int f = 0; f < facets.count(); f++) {
      double s = facets.normalDot(f, d.x(), d.y(), d.z());
      if (Math.abs(s) > SQUARE) {
        int a = 3 * mesh.tri()[3 * f];
        double z = p[a] * d.x() + p[a + 1] * d.y() + p[a + 2] * d.z();
        if (s < 0 && z < low + near) {
          sum += facets.area(f);
        } else if (s > 0 && z > high - near) {
          sum -= facets.area(f);
        }
      }
    }
    return sum;
  }

  /** The center of volume by the divergence theorem, mm. */
  static Vec3 centerOfVolume(TriMesh mesh) {
    Vec3 o = mesh.bounds().center();
    Vec3 moment = Vec3.ZERO;
    double volume = 0;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      Vec3 a = mesh.vertex(mesh.tri()[3 * f]).minus(o);
      Vec3 b = mesh.vertex(mesh.tri()[3 * f + 1]).minus(o);
      Vec3 c = mesh.vertex(mesh.tri()[3 * f + 2]).minus(o);
      double six = a.dot(b.cross(c));
      volume += six;
      moment = moment.plus(a.plus(b).plus(c).times(six / 4));
    }
    return o.plus(moment.times(1 / volume));
  }
}
