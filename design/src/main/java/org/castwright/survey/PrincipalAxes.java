package org.castwright.survey;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * The principal axes of a surface: eigenvectors of the covariance of its facet centers, each
 * weighted with the facet's area, found by Jacobi rotations. An axis whose spread is shared with
 * another is arbitrary and is marked so.
 */
final class PrincipalAxes {

  private static final int SWEEPS = 30;
  // spreads closer than this share of the sum mean a round cross-section
  private static final double SAME_SPREAD = 1e-3;

  private final List<Vec3> axes = new ArrayList<>();
  private final boolean[] distinct = new boolean[3];

  PrincipalAxes(TriMesh mesh, FacetTable facets) {
    double[][] c = covariance(mesh, facets);
    double[][] v = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    for (int s = 0; s < SWEEPS; s++) {
      rotate(c, v, 0, 1);
      rotate(c, v, 0, 2);
      rotate(c, v, 1, 2);
    }
    double sum = c[0][0] + c[1][1] + c[2][2];
    for (int k = 0; k < 3; k++) {
      axes.add(new Vec3(v[0][k], v[1][k], v[2][k]).unit());
      double next = c[(k + 1) % 3][(k + 1) % 3];
      double other = c[(k + 2) % 3][(k + 2) % 3];
      double nearest = Math.min(Math.abs(c[k][k] - next), Math.abs(c[k][k] - other));
      distinct[k] = nearest > SAME_SPREAD * sum;
    }
  }

  List<Vec3> axes() {
    return axes;
  }

  boolean distinct(int k) {
    return distinct[k];
  }

  private static double[][] covariance(TriMesh mesh, FacetTable facets) {
    double[] p = mesh.xyz();
    int[] t = mesh.tri();
    double[] mean = new double[3];
    double[] at = new double[3];
    for (int f = 0; f < facets.count(); f++) {
      center(p, t, f, at);
      for (int k = 0; k < 3; k++) {
        mean[k] += facets.area(f) * at[k] / facets.totalArea();
      }
    }
    double[][] c = new double[3][3];
    for (int f = 0; f < facets.count(); f++) {
      center(p, t, f, at);
      for (int i = 0; i < 3; i++) {
        for (int k = 0; k < 3; k++) {
          c[i][k] += facets.area(f) * (at[i] - mean[i]) * (at[k] - mean[k]);
        }
      }
    }
    return c;
  }

  private static void center(double[] p, int[] t, int f, double[] out) {
    for (int k = 0; k < 3; k++) {
      out[k] = (p[3 * t[3 * f] + k] + p[3 * t[3 * f + 1] + k] + p[3 * t[3 * f + 2] + k]) / 3;
    }
  }

  private static void rotate(double[][] c, double[][] v, int p, int q) {
    if (c[p][q] == 0) {
      return;
    }
    double tau = (c[q][q] - c[p][p]) / (2 * c[p][q]);
    double t = (tau >= 0 ? 1 : -1) / (Math.abs(tau) + Math.sqrt(1 + tau * tau));
    double cos = 1 / Math.sqrt(1 + t * t);
    double sin = t * cos;
    for (int k = 0; k < 3; k++) {
      double x = c[k][p];
      double y = c[k][q];
      c[k][p] = cos * x - sin * y;
      c[k][q] = sin * x + cos * y;
    }
    for (int k = 0; k < 3; k++) {
      double x = c[p][k];
      double y = c[q][k];
      c[p][k] = cos * x - sin * y;
      c[q][k] = sin * x + cos * y;
      x = v[k][p];
      y = v[k][q];
      v[k][p] = cos * x - sin * y;
      v[k][q] = sin * x + cos * y;
    }
  }
}
