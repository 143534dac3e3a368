package org.castwright.survey;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;
import org.castwright.mesh.Weld;

/**
 * Simplifies a mesh by gathering all vertices in a cell of a cubic grid into their mean (Rossignac,
 * Borrel, "Multi-resolution 3D approximations for rendering complex scenes", 1993). No vertex moves
 * farther than the cell's diagonal. Facets with two corners in one cell vanish; the surface stays
 * closed in the sense that each edge is still run as often one way as the other.
 *
 * @param mesh the simplified mesh
 * @param bound no point of the surface moved farther than this, mm
 */
record Clustering(TriMesh mesh, double bound) {

  // Gathering in cells leaves about this many vertices per cell-sized patch of surface, since a
  // slanted surface passes more cells than its area has squares.
  private static final double CELLS_PER_PATCH = 1.5;
  private static final int BITS = 21;

  /** A copy with about {@code triangles} facets. */
  static Clustering to(TriMesh mesh, double area, int triangles) {
    double cell = Math.sqrt(CELLS_PER_PATCH * area / (triangles / 2.0));
    // keys hold 21 bits an axis
    cell = Math.max(cell, mesh.bounds().longestSide() / ((1 << BITS) - 2));
    return new Clustering(gather(mesh, cell), cell * Math.sqrt(3));
  }

  private static TriMesh gather(TriMesh mesh, double cell) {
    double[] p = mesh.xyz();
    int n = mesh.vertexCount();
    double x0 = mesh.bounds().min().x();
    double y0 = mesh.bounds().min().y();
    double z0 = mesh.bounds().min().z();
    long[] keys = new long[n];
    for (int v = 0; v < n; v++) {
      long i = (long) ((p[3 * v] - x0) / cell);
      long j = (long) ((p[3 * v + 1] - y0) / cell);
      long k = (long) ((p[3 * v + 2] - z0) / cell);
      keys[v] = (k << (2 * BITS)) | (j << BITS) | i;
    }
    long[] sorted = keys.clone();
    Arrays.sort(sorted);
    int cells = 0;
    for (int i = 0; i < n; i++) {
      if (i == 0 || sorted[i] != sorted[i - 1]) {
        sorted[cells++] = sorted[i];
      }
    }
    double[] out = new double[3 * cells];
    int[] count = new int[cells];
    int[] home = new int[n];
    for (int v = 0; v < n; v++) {
      int c = Arrays.binarySearch(sorted, 0, cells, keys[v]);
      home[v] = c;
      count[c]++;
      for (int k = 0; k < 3; k++) {
        out[3 * c + k] += p[3 * v + k];
      }
    }
    for (int i = 0; i < out.length; i++) {
      out[i] /= count[i / 3];
    }
    return new TriMesh(out, Weld.joined(mesh.tri(), home));
  }
}
