package org.castwright.proof;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Counts places where the surface of a body passes through itself: an edge of one triangle pierces
 * another triangle, with both its ends farther from that triangle's plane than the noise and the
 * piercing point farther inside that triangle. Rounding a clean body to 32-bit floats moves a
 * vertex by less than one float step, so the noise is {@value #STEPS} steps at the largest
 * coordinate. Triangles that only touch, or overlap within one plane, are not counted.
 */
final class SelfCrossing {

  private static final int STEPS = 8;

  private final TriMesh mesh;
  private final double[] xyz;
  private final int[] tri;
  private final double noise;
  private int count;
  private Vec3 where = Vec3.ZERO;

  private SelfCrossing(TriMesh mesh) {
    this.mesh = mesh;
    this.xyz = mesh.xyz();
    this.tri = mesh.tri();
    double largest = 0;
    for (double x : xyz) {
      largest = Math.max(largest, Math.abs(x));
    }
    this.noise = STEPS * Math.ulp((float) largest);
  }

  /** How many crossings, and where one of them is. */
  record Result(int count, Vec3 where) {}

  static Result of(TriMesh mesh) {
    SelfCrossing c = new SelfCrossing(mesh);
    new Bvh(mesh).selfPairs(c::pair);
    return new Result(c.count, c.where);
  }

  private void pair(int f, int g) {
    if (pierces(f, g) || pierces(g, f)) {
      count++;
    }
  }

  /** Whether an edge of {@code f} pierces {@code g}; edges with a corner of g only touch it. */
  private boolean pierces(int f, int g) {
    Vec3 n = mesh.areaVector(g);
    double length = n.length();
    if (length == 0) {
      return false;
    }
    int origin = tri[3 * g];
    boolean below = false;
    boolean above = false;
    double[] h = new double[3];
    for (int k = 0; k < 3; k++) {
      h[k] = height(n, origin, tri[3 * f + k]) / length;
      above |= h[k] > noise;
      below |= h[k] < -noise;
    }
    if (!above || !below) {
      return false;
    }
    for (int k = 0; k < 3; k++) {
      int m = (k + 1) % 3;
      int p = tri[3 * f + k];
      int q = tri[3 * f + m];
      boolean across = h[k] > noise ? h[m] < -noise : h[k] < -noise && h[m] > noise;
      if (across && !isCorner(p, g) && !isCorner(q, g)) {
        Vec3 at = mesh.vertex(p).plus(edge(p, q).times(h[k] / (h[k] - h[m])));
        if (deepInside(at, g, n.times(1 / length))) {
          where = at;
          return true;
        }
      }
    }
    return false;
  }

  private double height(Vec3 n, int origin, int p) {
    return n.x() * (xyz[3 * p] - xyz[3 * origin])
        + n.y() * (xyz[3 * p + 1] - xyz[3 * origin + 1])
        + n.z() * (xyz[3 * p + 2] - xyz[3 * origin + 2]);
  }

  private Vec3 edge(int p, int q) {
    return mesh.vertex(q).minus(mesh.vertex(p));
  }

  private boolean isCorner(int vertex, int f) {
    return tri[3 * f] == vertex || tri[3 * f + 1] == vertex || tri[3 * f + 2] == vertex;
  }

  private boolean deepInside(Vec3 at, int g, Vec3 unit) {
    for (int k = 0; k < 3; k++) {
      int a = tri[3 * g + k];
      Vec3 along = edge(a, tri[3 * g + (k + 1) % 3]);
      double inward = unit.cross(along).dot(at.minus(mesh.vertex(a)));
      if (inward <= noise * along.length()) {
        return false;
      }
    }
    return true;
  }
}
