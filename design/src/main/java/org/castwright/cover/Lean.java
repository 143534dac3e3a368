package org.castwright.cover;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Which facets lean under a pull by themselves: a facet whose normal points against the pull and
 * whose own shadow across the pull is wider than two creases is caught over half of it and more,
 * whatever else is there. Exact, while pictures only see to a column.
 */
final class Lean {

  private static final int STRIDE = 12;

  private final double[] table;
  private final double width;

  /**
   * @param width of a crease, mm
   */
  Lean(TriMesh mesh, double width) {
    this.width = 2 * width;
    table = new double[STRIDE * mesh.triangleCount()];
    for (int f = 0; f < mesh.triangleCount(); f++) {
      Vec3 area = mesh.areaVector(f);
      if (area.length() == 0) {
        continue;
      }
      Vec3 n = area.unit();
      int o = STRIDE * f;
      put(o, n);
      Vec3 a = mesh.vertex(mesh.tri()[3 * f]);
      Vec3 b = mesh.vertex(mesh.tri()[3 * f + 1]);
      Vec3 c = mesh.vertex(mesh.tri()[3 * f + 2]);
      put(o + 3, b.minus(a));
      put(o + 6, c.minus(a));
      double longest =
          Math.max(b.minus(a).length(), Math.max(c.minus(a).length(), c.minus(b).length()));
      table[o + 9] = longest;
    }
  }

  private void put(int o, Vec3 v) {
    table[o] = v.x();
    table[o + 1] = v.y();
    table[o + 2] = v.z();
  }

  private double dot(int o, Vec3 v) {
    return table[o] * v.x() + table[o + 1] * v.y() + table[o + 2] * v.z();
  }

  /** The sine of a facet's draft along a pull: 1 facing it, 0 a wall, below 0 leaning under. */
  double sine(int f, Vec3 pull) {
    return dot(STRIDE * f, pull);
  }

  /**
   * On which side of an axis a facet surely is.
   *
   * @return 1 when it leans under a pull against the axis, -1 when it leans under a pull along it,
   *     0 when it may be free both ways
   */
  int side(int f, Vec3 axis) {
    int o = STRIDE * f;
    if (table[o + 9] <= width) {
      return 0;
    }
    double sine = dot(o, axis);
    double across = Math.sqrt(Math.max(0, 1 - sine * sine));
    // how far the facet reaches along its slope is how high it stands over the slope's steepness
    double b = dot(o + 3, axis);
    double c = dot(o + 6, axis);
    double rise = Math.max(0, Math.max(b, c)) - Math.min(0, Math.min(b, c));
    double shadow = across > 0 ? rise * Math.abs(sine) / across : 0;
    return shadow <= width ? 0 : sine > 0 ? 1 : -1;
  }
}
