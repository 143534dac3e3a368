package org.castwright.repair;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * Counts places where the surface of a body passes through itself: an edge of one triangle pierces
 * another triangle, with both its ends farther from that triangle's plane than the noise and the
 * piercing point farther inside that triangle. Rounding a clean body to 32-bit floats moves a
 * vertex by less than one float step, so the noise is {@value #STEPS} steps at the largest
 * coordinate. Triangles that only touch, or overlap within one plane, are not counted.
 */
public final class SelfCrossing {

  private static final int STEPS = 8;

  private final TriMesh mesh;
  private final double[] xyz;
  private final int[] tri;
  private final double noise;

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

  /**
   * What was found.
   *
   * @param count pairs of triangles that cross
   * @param where one of them does, mm; the origin for none
   */
  public record Result(int count, Vec3 where) {}

  /** Looks at a closed mesh, mm, on all cores. */
  public static Result of(TriMesh mesh) {
    if (mesh.isEmpty()) {
      return new Result(0, Vec3.ZERO);
    }
    SelfCrossing c = new SelfCrossing(mesh);
    int[] one = new int[mesh.triangleCount()];
    Crossings pairs = new Crossings(new TriangleTree(mesh), one, Progress.NONE, () -> c::cross);
    int[] first = pairs.first();
    return new Result(pairs.count(), first.length == 0 ? Vec3.ZERO : c.where(first[0], first[1]));
  }

  private boolean cross(int f, int g) {
    return pierced(f, g) != null || pierced(g, f) != null;
  }

  private Vec3 where(int f, int g) {
    Vec3 at = pierced(f, g);
    return at == null ? pierced(g, f) : at;
  }

  /** Where an edge of f pierces g, or null; edges with a corner of g only touch it. */
  private Vec3 pierced(int f, int g) {
    Vec3 n = mesh.areaVector(g);
    double length = n.length();
    if (length == 0) {
      return null;
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
      return null;
    }
    for (int k = 0; k < 3; k++) {
      int m = (k + 1) % 3;
      int p = tri[3 * f + k];
      int q = tri[3 * f + m];
      boolean across = h[k] > noise ? h[m] < -noise : h[k] < -noise && h[m] > noise;
      if (across && !isCorner(p, g) && !isCorner(q, g)) {
        Vec3 at = mesh.vertex(p).plus(edge(p, q).times(h[k] / (h[k] - h[m])));
        if (deepInside(at, g, n.times(1 / length))) {
          return at;
        }
      }
    }
    return null;
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
