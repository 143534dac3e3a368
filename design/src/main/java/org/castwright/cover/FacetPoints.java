package org.castwright.cover;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Points a hair outside the facets of a casting. Each facet gets one, large facets are divided
 * evenly into smaller triangles with one each.
 */
final class FacetPoints {

  // a facet's side is cut into this many at most
  private static final int MOST_PARTS = 64;

  private final TriMesh mesh;
  private final int[] parts;
  private final int count;

  /**
   * @param spacing small triangles have about this side squared as area, mm
   */
  FacetPoints(TriMesh mesh, double spacing) {
    this.mesh = mesh;
    parts = new int[mesh.triangleCount()];
    int n = 0;
    for (int f = 0; f < parts.length; f++) {
      double area = mesh.areaVector(f).length();
      double side = Math.ceil(Math.sqrt(area) / spacing);
      parts[f] = area > 0 ? (int) Math.max(1, Math.min(MOST_PARTS, side)) : 0;
      n += parts[f] * parts[f];
    }
    count = n;
  }

  int count() {
    return count;
  }

  void into(double[] xyz, int[] id, double[] weight, int first) {
    int s = first;
    for (int f = 0; f < parts.length; f++) {
      int n = parts[f];
      if (n == 0) {
        continue;
      }
      Vec3 area = mesh.areaVector(f);
      Vec3 off = area.unit().times(Samples.OFF_SURFACE);
      Vec3 a = mesh.vertex(mesh.tri()[3 * f]);
      Vec3 u = mesh.vertex(mesh.tri()[3 * f + 1]).minus(a);
      Vec3 v = mesh.vertex(mesh.tri()[3 * f + 2]).minus(a);
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < 2 * (n - i) - 1; j++) {
          // centers of the upright and the upturned small triangles of one strip
          double third = j % 2 == 0 ? 1 / 3.0 : 2 / 3.0;
          int place = j / 2;
          Vec3 p = a.plus(u.times((place + third) / n)).plus(v.times((i + third) / n)).plus(off);
          xyz[3 * s] = p.x();
          xyz[3 * s + 1] = p.y();
          xyz[3 * s + 2] = p.z();
          id[s] = f;
          weight[s++] = area.length() / (n * n);
        }
      }
    }
  }
}
