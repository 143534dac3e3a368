package org.castwright.parting;

import org.castwright.mesh.TriMesh;

/** Counts triangles too thin to mean anything. */
final class Slivers {

  /** Height over the longest side below which a triangle is a sliver, mm. */
  private static final double THIN_MM = 1e-3;

  private Slivers() {}

  static int count(TriMesh mesh) {
    double[] v = mesh.xyz();
    int[] t = mesh.tri();
    int n = 0;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      double longest = 0;
      for (int k = 0; k < 3; k++) {
        int a = 3 * t[3 * f + k];
        int b = 3 * t[3 * f + (k + 1) % 3];
        double dx = v[a] - v[b];
        double dy = v[a + 1] - v[b + 1];
        double dz = v[a + 2] - v[b + 2];
        longest = Math.max(longest, Math.sqrt(dx * dx + dy * dy + dz * dz));
      }
      if (2 * mesh.areaVector(f).length() < THIN_MM * longest) {
        n++;
      }
    }
    return n;
  }
}
