package org.castwright.cover;

import java.util.function.IntConsumer;
import org.castwright.geom.Box3;
import org.castwright.mesh.TriMesh;

/**
 * Tells whether points lie inside a closed mesh, by signed crossings above them: inside is where
 * they sum above zero, so overlapping shells count as one solid. An edge's crossing is computed
 * from its lower end to its upper end, so both facets of the edge decide alike. Facets are kept in
 * square bins across z.
 */
final class Inside {

  /** Bins along the longer side across z at most, and facets that a bin holds about. */
  private static final int MOST = 512;

  private static final double HELD = 4;

  private final double[] xyz;
  private final int[] tri;
  private final double x0;
  private final double y0;
  private final double scale;
  private final int nx;
  private final int ny;
  private final int[] start;
  private final int[] facets;

  Inside(TriMesh mesh) {
    xyz = mesh.xyz();
    tri = mesh.tri();
    Box3 box = mesh.bounds();
    x0 = box.min().x();
    y0 = box.min().y();
    double side = Math.max(Math.max(box.size().x(), box.size().y()), Double.MIN_NORMAL);
    scale = Math.max(1, Math.min(MOST, Math.sqrt(tri.length / (3 * HELD)))) / side;
    nx = (int) (box.size().x() * scale) + 1;
    ny = (int) (box.size().y() * scale) + 1;
    start = new int[nx * ny + 1];
    for (int f = 0; f < tri.length / 3; f++) {
      visit(f, bin -> start[bin + 1]++);
    }
    for (int k = 0; k < nx * ny; k++) {
      start[k + 1] += start[k];
    }
    facets = new int[start[nx * ny]];
    int[] next = start.clone();
    for (int f = 0; f < tri.length / 3; f++) {
      int facet = f;
      visit(f, bin -> facets[next[bin]++] = facet);
    }
  }

  /** All bins that the facet's box across z touches. */
  private void visit(int f, IntConsumer bins) {
    int a = 3 * tri[3 * f];
    int b = 3 * tri[3 * f + 1];
    int c = 3 * tri[3 * f + 2];
    int left = bin(Math.min(xyz[a], Math.min(xyz[b], xyz[c])), x0, nx);
    int right = bin(Math.max(xyz[a], Math.max(xyz[b], xyz[c])), x0, nx);
    int last = bin(Math.max(xyz[a + 1], Math.max(xyz[b + 1], xyz[c + 1])), y0, ny);
    int first = bin(Math.min(xyz[a + 1], Math.min(xyz[b + 1], xyz[c + 1])), y0, ny);
    for (int j = first; j <= last; j++) {
      for (int i = left; i <= right; i++) {
        bins.accept(j * nx + i);
      }
    }
  }

  private int bin(double at, double zero, int count) {
    return (int) Math.max(0, Math.min(count - 1, (at - zero) * scale));
  }

  boolean test(double x, double y, double z) {
    int winding = 0;
    int k = bin(y, y0, ny) * nx + bin(x, x0, nx);
    for (int i = start[k]; i < start[k + 1]; i++) {
      winding += above(facets[i], x, y, z);
    }
    return winding > 0;
  }

  /** How the facet counts for the point: 1 facing up above it, -1 facing down above it, else 0. */
  private int above(int f, double x, double y, double z) {
    int turn = 0;
    for (int k = 0; k < 3; k++) {
      int p = 3 * tri[3 * f + k];
      int q = 3 * tri[3 * f + (k + 1) % 3];
      boolean rises = xyz[p + 1] <= y;
      if (rises != xyz[q + 1] <= y) {
        int lower = rises ? p : q;
        int upper = rises ? q : p;
        double s = (y - xyz[lower + 1]) / (xyz[upper + 1] - xyz[lower + 1]);
        if (x < xyz[lower] + (xyz[upper] - xyz[lower]) * s) {
          turn += rises ? 1 : -1;
        }
      }
    }
    return turn != 0 && height(f, x, y) > z ? turn : 0;
  }

  /** The height of the facet's plane over a point; seen from above it is no line there. */
  private double height(int f, double x, double y) {
    int a = 3 * tri[3 * f];
    int b = 3 * tri[3 * f + 1];
    int c = 3 * tri[3 * f + 2];
    double ux = xyz[b] - xyz[a];
    double uy = xyz[b + 1] - xyz[a + 1];
    double vx = xyz[c] - xyz[a];
    double vy = xyz[c + 1] - xyz[a + 1];
    double twice = ux * vy - uy * vx;
    double s = ((x - xyz[a]) * vy - (y - xyz[a + 1]) * vx) / twice;
    double t = (ux * (y - xyz[a + 1]) - uy * (x - xyz[a])) / twice;
    return xyz[a + 2] + s * (xyz[b + 2] - xyz[a + 2]) + t * (xyz[c + 2] - xyz[a + 2]);
  }
}
