package org.castwright.survey;

import org.castwright.mesh.TriMesh;

/** Unit normals and areas of a mesh's facets in packed arrays. Facets without area have none. */
final class FacetTable {

  private static final int STRIDE = 4;

  private final double[] table;
  private final int count;
  private final double total;

  FacetTable(TriMesh mesh) {
    count = mesh.triangleCount();
    table = new double[STRIDE * count];
    double[] p = mesh.xyz();
    int[] t = mesh.tri();
    double sum = 0;
    for (int f = 0; f < count; f++) {
      int a = 3 * t[3 * f];
      int b = 3 * t[3 * f + 1];
      int c = 3 * t[3 * f + 2];
      double ux = p[b] - p[a];
      double uy = p[b + 1] - p[a + 1];
      double uz = p[b + 2] - p[a + 2];
      double vx = p[c] - p[a];
      double vy = p[c + 1] - p[a + 1];
      double vz = p[c + 2] - p[a + 2];
      double nx = uy * vz - uz * vy;
      double ny = uz * vx - ux * vz;
      double nz = ux * vy - uy * vx;
      double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
      if (length > 0) {
        int o = STRIDE * f;
        table[o] = nx / length;
        table[o + 1] = ny / length;
        table[o + 2] = nz / length;
        table[o + 3] = length / 2;
        sum += length / 2;
      }
    }
    total = sum;
  }

  int count() {
    return count;
  }

  double totalArea() {
    return total;
  }

  double area(int f) {
    return table[STRIDE * f + 3];
  }

  double nx(int f) {
    return table[STRIDE * f];
  }

  double ny(int f) {
    return table[STRIDE * f + 1];
  }

  double nz(int f) {
    return table[STRIDE * f + 2];
  }

  double normalDot(int f, double x, double y, double z) {
    int o = STRIDE * f;
    return table[o] * x + table[o + 1] * y + table[o + 2] * z;
  }
}
