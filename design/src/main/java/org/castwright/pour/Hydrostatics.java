package org.castwright.pour;

import java.util.function.IntPredicate;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Hydrostatic pressure on the facets of a mesh, {@code p = ρ·g·depth} (Pascal), summed exactly: a
 * facet that the free surface crosses is clipped there; pressure times lever is quadratic on a
 * facet, for which the rule of edge midpoints is exact.
 */
public final class Hydrostatics {

  private Hydrostatics() {}

  /** Which side of the facets the liquid is on. */
  public enum Side {
    /** Behind the facets, as in a casting: it presses along their normals. */
    INSIDE(1),
    /** Before the facets, as at a mold piece: it presses against their normals. */
    OUTSIDE(-1);

    private final int sign;

    Side(int sign) {
      this.sign = sign;
    }
  }

  /** The load of a liquid on all facets of a mesh. */
  public static Load on(TriMesh mesh, Liquid liquid, Side side) {
    return on(mesh, liquid, side, f -> true);
  }

  /** The load of a liquid on some facets of a mesh. */
  public static Load on(TriMesh mesh, Liquid liquid, Side side, IntPredicate wanted) {
    return sum(mesh, new Sum(liquid, side.sign, null), wanted);
  }

  /**
   * As {@link #on(TriMesh, Liquid, Side, IntPredicate)}, but only the part of every force along a
   * unit direction: its moment tells where that part acts.
   */
  public static Load along(
      TriMesh mesh, Liquid liquid, Side side, IntPredicate wanted, Vec3 direction) {
    return sum(mesh, new Sum(liquid, side.sign, direction), wanted);
  }

  private static Load sum(TriMesh mesh, Sum sum, IntPredicate wanted) {
    for (int f = 0; f < mesh.triangleCount(); f++) {
      if (wanted.test(f)) {
        sum.facet(
            mesh.vertex(mesh.tri()[3 * f]),
            mesh.vertex(mesh.tri()[3 * f + 1]),
            mesh.vertex(mesh.tri()[3 * f + 2]));
      }
    }
    return new Load(sum.force, sum.moment, sum.area, sum.highest);
  }

  /**
   * The pressure at the middle of every facet, Pa; facets above the free surface have none.
   *
   * @return one value for each triangle
   */
  public static double[] pressures(TriMesh mesh, Liquid liquid) {
    double[] out = new double[mesh.triangleCount()];
    for (int f = 0; f < out.length; f++) {
      out[f] = liquid.pressurePa(mesh.center(f));
    }
    return out;
  }

  /** Running sums. */
  private static final class Sum {
    private final Liquid liquid;
    private final int sign;
    private final Vec3 only;
    private Vec3 force = Vec3.ZERO;
    private Vec3 moment = Vec3.ZERO;
    private double area;
    private double highest;

    Sum(Liquid liquid, int sign, Vec3 only) {
      this.liquid = liquid;
      this.sign = sign;
      this.only = only;
    }

    /** Clips by the free surface: what is left is a triangle or a quadrilateral. */
    void facet(Vec3 a, Vec3 b, Vec3 c) {
      Vec3[] corner = {a, b, c};
      Vec3[] kept = new Vec3[4];
      int n = 0;
      for (int k = 0; k < 3; k++) {
        Vec3 p = corner[k];
        Vec3 q = corner[(k + 1) % 3];
        double dp = liquid.depthMm(p);
        double dq = liquid.depthMm(q);
        if (dp >= 0) {
          kept[n++] = p;
        }
        if ((dp > 0 && dq < 0) || (dp < 0 && dq > 0)) {
          kept[n++] = p.plus(q.minus(p).times(dp / (dp - dq)));
        }
      }
      for (int k = 2; k < n; k++) {
        wet(kept[0], kept[k - 1], kept[k]);
      }
    }

    private void wet(Vec3 a, Vec3 b, Vec3 c) {
      Vec3 normal = b.minus(a).cross(c.minus(a)).times(sign / 2.0);
      for (Vec3 p : new Vec3[] {a, b, c}) {
        highest = Math.max(highest, liquid.pressurePa(p));
      }
      Vec3[] middles = {a.plus(b).times(0.5), b.plus(c).times(0.5), c.plus(a).times(0.5)};
      for (Vec3 m : middles) {
        Vec3 part = normal.times(liquid.pressurePa(m) / 3 / Liquid.MM2_PER_M2);
        if (only != null) {
          part = only.times(part.dot(only));
        }
        force = force.plus(part);
        moment = moment.plus(m.cross(part));
      }
      area += normal.length();
    }
  }
}
