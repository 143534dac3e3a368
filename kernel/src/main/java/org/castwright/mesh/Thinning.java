package org.castwright.mesh;

import java.util.Arrays;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;

/**
 * Fewer triangles for looking at a mesh. Vertices in a cell of a cubic grid become one, placed
 * where the sum of squared distances to the planes of the facets round them is least (P. Lindstrom,
 * "Out-of-core simplification of large polygonal models", SIGGRAPH 2000), so edges and flat faces
 * stay what they are. The result is for the eye only: it may touch itself.
 */
public final class Thinning {

  /** A cell-sized patch of surface passes about so many cells. */
  private static final double CELLS_PER_PATCH = 1.6;

  /** Weight of staying near the mean of the cell's vertices, as a share of the planes' own. */
  private static final double REST = 1e-3;

  /** The grid is made coarser by this factor until the result is small enough. */
  private static final double COARSER = 1.2;

  /** Numbers of a quadric: six of its matrix, three of its vector. */
  private static final int NUMBERS = 9;

  private static final int BITS = 21;

  private final TriMesh mesh;
  private final double cell;
  private final Box3 box;
  private long[] keys;
  private int[] home;

  private Thinning(TriMesh mesh, double cell) {
    this.mesh = mesh;
    this.box = mesh.bounds();
    // keys hold 21 bits an axis
    this.cell = Math.max(cell, box.longestSide() / ((1 << BITS) - 2));
  }

  /** The mesh itself if it has at most so many triangles, else one that does. */
  public static TriMesh to(TriMesh mesh, int triangles) {
    if (mesh.triangleCount() <= triangles) {
      return mesh;
    }
    double cell = Math.sqrt(CELLS_PER_PATCH * mesh.area() / (triangles / 2.0));
    TriMesh out = new Thinning(mesh, cell).thin();
    while (out.triangleCount() > triangles) {
      cell *= COARSER;
      out = new Thinning(mesh, cell).thin();
    }
    return out;
  }

  private TriMesh thin() {
    gather();
    double[] quadrics = new double[NUMBERS * keys.length];
    double[] mean = new double[3 * keys.length];
    int[] count = new int[keys.length];
    for (int v = 0; v < home.length; v++) {
      count[home[v]]++;
      for (int k = 0; k < 3; k++) {
        mean[3 * home[v] + k] += mesh.xyz()[3 * v + k];
      }
    }
    for (int i = 0; i < mean.length; i++) {
      mean[i] /= count[i / 3];
    }
    for (int f = 0; f < mesh.triangleCount(); f++) {
      addFacet(f, quadrics, mean);
    }
    double[] out = new double[mean.length];
    for (int c = 0; c < keys.length; c++) {
      place(c, quadrics, mean, out);
    }
    return new TriMesh(out, Weld.joined(mesh.tri(), home));
  }

  private void gather() {
    double[] p = mesh.xyz();
    long[] of = new long[mesh.vertexCount()];
    for (int v = 0; v < of.length; v++) {
      long i = (long) ((p[3 * v] - box.min().x()) / cell);
      long j = (long) ((p[3 * v + 1] - box.min().y()) / cell);
      long k = (long) ((p[3 * v + 2] - box.min().z()) / cell);
      of[v] = (k << (2 * BITS)) | (j << BITS) | i;
    }
    keys = Arrays.stream(of).parallel().sorted().distinct().toArray();
    home = new int[of.length];
    for (int v = 0; v < of.length; v++) {
      home[v] = Arrays.binarySearch(keys, of[v]);
    }
  }

  /** Adds the facet's plane to the cells of its corners, relative to each cell's mean. */
  private void addFacet(int f, double[] q, double[] mean) {
    Vec3 n = mesh.areaVector(f);
    Vec3 a = mesh.vertex(mesh.tri()[3 * f]);
    int before = -1;
    for (int k = 0; k < 3; k++) {
      int c = home[mesh.tri()[3 * f + k]];
      if (c == before) {
        continue;
      }
      before = c;
      double d =
          n.x() * (a.x() - mean[3 * c])
              + n.y() * (a.y() - mean[3 * c + 1])
              + n.z() * (a.z() - mean[3 * c + 2]);
      int at = NUMBERS * c;
      q[at] += n.x() * n.x();
      q[at + 1] += n.x() * n.y();
      q[at + 2] += n.x() * n.z();
      q[at + 3] += n.y() * n.y();
      q[at + 4] += n.y() * n.z();
      q[at + 5] += n.z() * n.z();
      q[at + 6] += n.x() * d;
      q[at + 7] += n.y() * d;
      q[at + 8] += n.z() * d;
    }
  }

  /** The least point of a cell's quadric, held near the mean, and never out of the cell's reach. */
  private void place(int c, double[] q, double[] mean, double[] out) {
    int at = NUMBERS * c;
    double rest = REST * (q[at] + q[at + 3] + q[at + 5]);
    double[] x = {0, 0, 0};
    if (rest > 0) {
      solve(
          q[at] + rest,
          q[at + 1],
          q[at + 2],
          q[at + 3] + rest,
          q[at + 4],
          q[at + 5] + rest,
          q[at + 6],
          q[at + 7],
          q[at + 8],
          x);
    }
    for (int k = 0; k < 3; k++) {
      out[3 * c + k] = mean[3 * c + k] + Math.max(-cell, Math.min(cell, x[k]));
    }
  }

  /** A symmetric system of three, by Cramer's rule; the matrix is well conditioned by its rest. */
  private static void solve(
      double a,
      double b,
      double c,
      double d,
      double e,
      double f,
      double u,
      double v,
      double w,
      double[] x) {
    double m0 = d * f - e * e;
    double m1 = c * e - b * f;
    double m2 = b * e - c * d;
    double det = a * m0 + b * m1 + c * m2;
    x[0] = (m0 * u + m1 * v + m2 * w) / det;
    x[1] = (m1 * u + (a * f - c * c) * v + (b * c - a * e) * w) / det;
    x[2] = (m2 * u + (b * c - a * e) * v + (a * d - b * b) * w) / det;
  }
}
