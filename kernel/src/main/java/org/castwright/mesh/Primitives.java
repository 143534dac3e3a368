package org.castwright.mesh;

import org.castwright.geom.Vec3;

/** Closed, outward-oriented meshes of simple shapes: the tools a mold is cut with. */
public final class Primitives {

  private Primitives() {}

  /** The box between two corners. */
  public static TriMesh box(Vec3 lo, Vec3 hi) {
    MeshBuilder m = new MeshBuilder();
    for (int i = 0; i < 8; i++) {
      m.vertex(
          (i & 1) == 0 ? lo.x() : hi.x(),
          (i & 2) == 0 ? lo.y() : hi.y(),
          (i & 4) == 0 ? lo.z() : hi.z());
    }
    int[][] quads = {
      {0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}
    };
    for (int[] q : quads) {
      m.triangle(q[0], q[1], q[2]);
      m.triangle(q[0], q[2], q[3]);
    }
    return m.build();
  }

  /**
   * A solid of revolution about the z axis. {@code profile} lists {@code r, z} pairs from the
   * lowest point to the highest; the first and last radius may be zero (a pole) or above (a flat
   * cap).
   *
   * @param sides facets round the axis, at least 3
   * @throws IllegalArgumentException if the profile is too short or a radius is wrong
   */
  public static TriMesh revolve(double[] profile, int sides) {
    int rings = profile.length / 2;
    if (profile.length % 2 != 0 || rings < 2 || sides < 3) {
      throw new IllegalArgumentException("a profile needs two r, z pairs and three sides");
    }
    MeshBuilder m = new MeshBuilder();
    int[][] ring = new int[rings][];
    for (int j = 0; j < rings; j++) {
      double r = profile[2 * j];
      double z = profile[2 * j + 1];
      boolean end = j == 0 || j == rings - 1;
      if (r < 0 || (r == 0 && !end)) {
        throw new IllegalArgumentException("radius " + r + " inside a profile");
      }
      if (r == 0) {
        ring[j] = new int[] {m.vertex(0, 0, z)};
        continue;
      }
      ring[j] = new int[sides];
      for (int i = 0; i < sides; i++) {
        double a = 2 * Math.PI * i / sides;
        ring[j][i] = m.vertex(r * StrictMath.cos(a), r * StrictMath.sin(a), z);
      }
    }
    cap(m, ring[0], profile[1], true);
    cap(m, ring[rings - 1], profile[2 * rings - 1], false);
    for (int j = 0; j + 1 < rings; j++) {
      band(m, ring[j], ring[j + 1], sides);
    }
    return m.build();
  }

  /** A cone frustum along z: radius {@code r0} at {@code z0}, {@code r1} at {@code z1 > z0}. */
  public static TriMesh frustum(double r0, double z0, double r1, double z1, int sides) {
    return revolve(new double[] {r0, z0, r1, z1}, sides);
  }

  /** A sphere about the origin with poles on the z axis. */
  public static TriMesh sphere(double radius, int sides) {
    int n = Math.max(2, sides / 2);
    double[] p = new double[2 * (n + 1)];
    for (int j = 0; j <= n; j++) {
      double a = Math.PI * j / n;
      p[2 * j] = j == 0 || j == n ? 0 : radius * StrictMath.sin(a);
      p[2 * j + 1] = -radius * StrictMath.cos(a);
    }
    return revolve(p, sides);
  }

  private static void cap(MeshBuilder m, int[] ring, double z, boolean low) {
    if (ring.length < 3) {
      return;
    }
    int c = m.vertex(0, 0, z);
    for (int i = 0; i < ring.length; i++) {
      int a = ring[i];
      int b = ring[(i + 1) % ring.length];
      m.triangle(c, low ? b : a, low ? a : b);
    }
  }

  private static void band(MeshBuilder m, int[] lo, int[] hi, int sides) {
    for (int i = 0; i < sides; i++) {
      int k = (i + 1) % sides;
      if (lo.length == 1) {
        m.triangle(lo[0], hi[k], hi[i]);
      } else if (hi.length == 1) {
        m.triangle(lo[i], lo[k], hi[0]);
      } else {
        m.triangle(lo[i], lo[k], hi[k]);
        m.triangle(lo[i], hi[k], hi[i]);
      }
    }
  }
}
