package org.castwright.cover;

import org.castwright.geom.Vec3;

/** Tells whether points lie close to one triangle. */
final class PointTriangle {

  private final Vec3[] corner = new Vec3[3];
  private final Vec3 normal;

  PointTriangle(double[] xyz, int a, int b, int c) {
    corner[0] = new Vec3(xyz[a], xyz[a + 1], xyz[a + 2]);
    corner[1] = new Vec3(xyz[b], xyz[b + 1], xyz[b + 2]);
    corner[2] = new Vec3(xyz[c], xyz[c + 1], xyz[c + 2]);
    Vec3 n = corner[1].minus(corner[0]).cross(corner[2].minus(corner[0]));
    normal = n.length() > 0 ? n.unit() : Vec3.ZERO;
  }

  /** Whether the point lies closer than a distance to the triangle, its rim included. */
  boolean within(double x, double y, double z, double distance) {
    Vec3 p = new Vec3(x, y, z);
    if (Math.abs(p.minus(corner[0]).dot(normal)) >= distance) {
      return false;
    }
    boolean over = normal.length() > 0;
    for (int k = 0; k < 3; k++) {
      Vec3 edge = corner[(k + 1) % 3].minus(corner[k]);
      Vec3 to = p.minus(corner[k]);
      double long2 = edge.dot(edge);
      double s = long2 > 0 ? Math.max(0, Math.min(1, to.dot(edge) / long2)) : 0;
      if (to.minus(edge.times(s)).length() < distance) {
        return true;
      }
      over &= edge.cross(to).dot(normal) >= 0;
    }
    return over;
  }
}
