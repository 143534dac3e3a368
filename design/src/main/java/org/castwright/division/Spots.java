package org.castwright.division;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/** Places spread evenly over the facets of a mesh: the centers of small triangles. */
final class Spots {

  private Spots() {}

  /** Hears of each place, its facet, and the area it stands for with its direction, mm². */
  interface Visitor {
    void at(int facet, Vec3 place, Vec3 area);
  }

  /** Visits places no farther apart than a spacing, mm, facet by facet. */
  static void visit(TriMesh m, double spacing, Visitor visitor) {
    for (int f = 0; f < m.triangleCount(); f++) {
      Vec3 a = m.vertex(m.tri()[3 * f]);
      Vec3 b = m.vertex(m.tri()[3 * f + 1]).minus(a);
      Vec3 c = m.vertex(m.tri()[3 * f + 2]).minus(a);
      double longest = Math.max(b.minus(c).length(), Math.max(b.length(), c.length()));
      int n = Math.max(1, (int) Math.ceil(longest / spacing));
      Vec3 area = m.areaVector(f).times(1.0 / (n * n));
      for (int i = 0; i < n; i++) {
        for (int j = 0; i + j < n; j++) {
          // the small triangle there, and the one upside down beside it
          visitor.at(f, at(a, b, c, (i + 1.0 / 3) / n, (j + 1.0 / 3) / n), area);
          if (i + j + 1 < n) {
            visitor.at(f, at(a, b, c, (i + 2.0 / 3) / n, (j + 2.0 / 3) / n), area);
          }
        }
      }
    }
  }

  private static Vec3 at(Vec3 a, Vec3 b, Vec3 c, double s, double t) {
    return a.plus(b.times(s)).plus(c.times(t));
  }
}
