package org.castwright.mesh;

import org.castwright.geom.Vec3;

/**
 * Distance from a point to a facet: straight down to its plane where that falls inside, else to the
 * nearest edge (C. Ericson, Real-Time Collision Detection, 2005, section 5.1.5).
 */
public final class FacetDistance {

  private FacetDistance() {}

  /** mm, for facet {@code f} of a mesh. */
  public static double of(TriMesh mesh, int f, Vec3 p) {
    return Math.sqrt(squared(mesh, f, p));
  }

  /** The square of it, mm², which costs no root. */
  public static double squared(TriMesh mesh, int f, Vec3 p) {
    Vec3 a = mesh.vertex(mesh.tri()[3 * f]);
    Vec3 b = mesh.vertex(mesh.tri()[3 * f + 1]);
    Vec3 c = mesh.vertex(mesh.tri()[3 * f + 2]);
    Vec3 n = b.minus(a).cross(c.minus(a));
    double square = n.dot(n);
    boolean over =
        square > 0
            && n.dot(b.minus(a).cross(p.minus(a))) >= 0
            && n.dot(c.minus(b).cross(p.minus(b))) >= 0
            && n.dot(a.minus(c).cross(p.minus(c))) >= 0;
    if (over) {
      double h = p.minus(a).dot(n);
      return h * h / square;
    }
    return Math.min(toEdge(p, a, b), Math.min(toEdge(p, b, c), toEdge(p, c, a)));
  }

  private static double toEdge(Vec3 p, Vec3 a, Vec3 b) {
    Vec3 along = b.minus(a);
    double squared = along.dot(along);
    double t = squared > 0 ? p.minus(a).dot(along) / squared : 0;
    Vec3 r = p.minus(a.plus(along.times(Math.max(0, Math.min(1, t)))));
    return r.dot(r);
  }
}
