package org.castwright.seams;

import org.castwright.mesh.TriMesh;

/** Evenly spread points of a facet: the centers of the n² like triangles it can be cut into. */
final class FacetSamples {

  /** Distance of samples aimed at, mm. */
  private static final double STEP_MM = 0.5;

  private static final int FEWEST = 2;
  private static final int MOST = 24;

  private FacetSamples() {}

  /** Takes a sample point. */
  interface Sink {
    void at(double x, double y, double z);
  }

  /** Shows all samples of a facet; returns how many there are. */
  static int visit(TriMesh mesh, int f, Sink sink) {
    double[] v = mesh.xyz();
    int a = 3 * mesh.tri()[3 * f];
    int b = 3 * mesh.tri()[3 * f + 1];
    int c = 3 * mesh.tri()[3 * f + 2];
    int n = parts(v, a, b, c);
    for (int i = 0; i < n; i++) {
      for (int j = 0; i + j < n; j++) {
        show(v, a, b, c, (i + 1 / 3.0) / n, (j + 1 / 3.0) / n, sink);
        if (i + j + 1 < n) {
          show(v, a, b, c, (i + 2 / 3.0) / n, (j + 2 / 3.0) / n, sink);
        }
      }
    }
    return n * n;
  }

  private static void show(double[] v, int a, int b, int c, double s, double t, Sink sink) {
    double r = 1 - s - t;
    sink.at(
        r * v[a] + s * v[b] + t * v[c],
        r * v[a + 1] + s * v[b + 1] + t * v[c + 1],
        r * v[a + 2] + s * v[b + 2] + t * v[c + 2]);
  }

  private static int parts(double[] v, int a, int b, int c) {
    double longest = Math.max(square(v, a, b), Math.max(square(v, b, c), square(v, c, a)));
    int n = (int) Math.ceil(Math.sqrt(longest) / STEP_MM);
    return Math.max(FEWEST, Math.min(MOST, n));
  }

  private static double square(double[] v, int a, int b) {
    double x = v[a] - v[b];
    double y = v[a + 1] - v[b + 1];
    double z = v[a + 2] - v[b + 2];
    return x * x + y * y + z * z;
  }
}
