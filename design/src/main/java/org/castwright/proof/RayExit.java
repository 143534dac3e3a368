package org.castwright.proof;

import org.castwright.geom.Vec3;

/**
 * Keeps the first of the triangles shown to it through which a ray leaves a body. Intersection as
 * in T. Möller and B. Trumbore, "Fast, minimum storage ray/triangle intersection", Journal of
 * Graphics Tools 2(1), 1997; boxes by slabs (C. Ericson, Real-Time Collision Detection, 2005,
 * section 5.3.3). Rays that pass exactly between two triangles may be lost: fit for samples.
 */
final class RayExit {

  private final double[] xyz;
  private final int[] tri;
  private final double[] start;
  private final double[] way;
  private double distance = Double.POSITIVE_INFINITY;
  private int face = -1;

  RayExit(double[] xyz, int[] tri, Vec3 start, Vec3 direction) {
    this.xyz = xyz;
    this.tri = tri;
    this.start = new double[] {start.x(), start.y(), start.z()};
    this.way = new double[] {direction.x(), direction.y(), direction.z()};
  }

  /** In lengths of the direction; infinite if nothing was met. */
  double distance() {
    return distance;
  }

  /** The triangle, or −1. */
  int face() {
    return face;
  }

  /** Whether the ray passes a box (min x, y, z, max x, y, z from {@code at}) or meets it later. */
  boolean misses(double[] box, int at) {
    double near = 0;
    double far = distance;
    for (int k = 0; k < 3; k++) {
      double lo = box[at + k] - start[k];
      double hi = box[at + 3 + k] - start[k];
      if (way[k] == 0) {
        if (lo > 0 || hi < 0) {
          return true;
        }
        continue;
      }
      double a = lo / way[k];
      double b = hi / way[k];
      near = Math.max(near, Math.min(a, b));
      far = Math.min(far, Math.max(a, b));
    }
    return near > far;
  }

  void to(int f) {
    int a = 3 * tri[3 * f];
    int b = 3 * tri[3 * f + 1];
    int c = 3 * tri[3 * f + 2];
    double ux = xyz[b] - xyz[a];
    double uy = xyz[b + 1] - xyz[a + 1];
    double uz = xyz[b + 2] - xyz[a + 2];
    double vx = xyz[c] - xyz[a];
    double vy = xyz[c + 1] - xyz[a + 1];
    double vz = xyz[c + 2] - xyz[a + 2];
    double px = way[1] * vz - way[2] * vy;
    double py = way[2] * vx - way[0] * vz;
    double pz = way[0] * vy - way[1] * vx;
    double det = ux * px + uy * py + uz * pz;
    if (det >= 0) {
      // the ray comes from outside here, or along the triangle
      return;
    }
    double sx = start[0] - xyz[a];
    double sy = start[1] - xyz[a + 1];
    double sz = start[2] - xyz[a + 2];
    double p = (sx * px + sy * py + sz * pz) / det;
    double qx = sy * uz - sz * uy;
    double qy = sz * ux - sx * uz;
    double qz = sx * uy - sy * ux;
    double q = (way[0] * qx + way[1] * qy + way[2] * qz) / det;
    double t = (vx * qx + vy * qy + vz * qz) / det;
    if (p >= 0 && q >= 0 && p + q <= 1 && t > 0 && t < distance) {
      distance = t;
      face = f;
    }
  }
}
