package org.castwright.survey;

import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;

/** Reads packed coordinates in the axes of a frame. */
final class Projection {

  static final int MAX_X = 3;
  static final int MAX_Y = 4;
  static final int MIN_Z = 2;
  static final int MAX_Z = 5;

  private Projection() {}

  /**
   * Writes {@code xyz} in the frame's axes to {@code out}.
   *
   * @return the box: smallest x, y, z, then largest x, y, z, mm
   */
  static double[] into(double[] xyz, Frame frame, double[] out) {
    Vec3 u = frame.u();
    Vec3 v = frame.v();
    Vec3 w = frame.w();
    double ux = u.x();
    double uy = u.y();
    double uz = u.z();
    double vx = v.x();
    double vy = v.y();
    double vz = v.z();
    double wx = w.x();
    double wy = w.y();
    double wz = w.z();
    double lx = Double.POSITIVE_INFINITY;
    double ly = lx;
    double lz = lx;
    double hx = Double.NEGATIVE_INFINITY;
    double hy = hx;
    double hz = hx;
    for (int i = 0; i < xyz.length; i += 3) {
      double x = xyz[i];
      double y = xyz[i + 1];
      double z = xyz[i + 2];
      double p = ux * x + uy * y + uz * z;
      double q = vx * x + vy * y + vz * z;
      double r = wx * x + wy * y + wz * z;
      out[i] = p;
      out[i + 1] = q;
      out[i + 2] = r;
      lx = Math.min(lx, p);
      ly = Math.min(ly, q);
      lz = Math.min(lz, r);
      hx = Math.max(hx, p);
      hy = Math.max(hy, q);
      hz = Math.max(hz, r);
    }
    return new double[] {lx, ly, lz, hx, hy, hz};
  }
}
