package org.castwright.cover;

import org.castwright.mesh.TriMesh;

/**
 * Tells whether points lie inside a closed mesh, by signed crossings above them: inside is where
 * they sum above zero, so overlapping shells count as one solid. An edge's crossing is computed
 * from its lower end to its upper end, so both facets of the edge decide alike. Facets are kept in
 * strips along y.
 */
final class Inside {

  private static final int STRIPS = 1024;

  private final double[] xyz;
  private final int[] tri;
  private final double low;
  private final double scale;
  private final int[] start = new int[STRIPS + 1];
  private final int[] facets;

  Inside(TriMesh mesh) {
    xyz = mesh.xyz();
    tri = mesh.tri();
    low = mesh.bounds().min().y();
    scale = STRIPS / Math.max(mesh.bounds().size().y(), Double.MIN_NORMAL);
    int[] count = new int[STRIPS + 1];
    for (int f = 0; f < tri.length / 3; f++) {
      for (int k = strip(least(f)); k <= strip(most(f)); k++) {
        count[k + 1]++;
      }
    }
    for (int k = 0; k < STRIPS; k++) {
      count[k + 1] += count[k];
      start[k + 1] = count[k + 1];
    }
    facets = new int[start[STRIPS]];
    for (int f = 0; f < tri.length / 3; f++) {
      for (int k = strip(least(f)); k <= strip(most(f)); k++) {
        facets[count[k]++] = f;
      }
    }
  }

  private int strip(double y) {
    return (int) Math.max(0, Math.min(STRIPS - 1, (y - low) * scale));
  }

  private double y(int f, int corner) {
    return xyz[3 * tri[3 * f + corner] + 1];
  }

  private double least(int f) {
    return Math.min(y(f, 0), Math.min(y(f, 1), y(f, 2)));
  }

  private double most(int f) {
    return Math.max(y(f, 0), Math.max(y(f, 1), y(f, 2)));
  }

  boolean test(double x, double y, double z) {
    int winding = 0;
    int k = strip(y);
    for (int i = start[k]; i < start[k + 1]; i++) {
      int f = facets[i];
      if (least(f) <= y && most(f) > y) {
        winding += above(f, x, y, z);
      }
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
