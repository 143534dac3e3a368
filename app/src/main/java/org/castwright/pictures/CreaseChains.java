package org.castwright.pictures;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * Tells creases from the noise of coarse or scanned surfaces: edges that run on into one another
 * belong to one chain, and only chains of some length are drawn.
 */
final class CreaseChains {

  /** Ints a crease in the packed list: two vertices, two facets. */
  private static final int STRIDE = 4;

  /** Two edges run on if they turn by less than 40 degrees where they meet. */
  private static final double RUNS_ON = StrictMath.cos(Math.toRadians(40));

  /** Shortest chain drawn, as a share of the diagonal of the mesh's box. */
  private static final double SHORTEST = 0.06;

  private final TriMesh mesh;
  private final int[] creases;
  private final int[] parent;

  private CreaseChains(TriMesh mesh, int[] creases) {
    this.mesh = mesh;
    this.creases = creases;
    parent = new int[creases.length / STRIDE];
    for (int e = 0; e < parent.length; e++) {
      parent[e] = e;
    }
  }

  /** The creases that belong to long chains, in their order. */
  static int[] longOnes(TriMesh mesh, int[] creases) {
    if (creases.length == 0) {
      return creases;
    }
    CreaseChains c = new CreaseChains(mesh, creases);
    c.link();
    double[] length = new double[c.parent.length];
    for (int e = 0; e < length.length; e++) {
      length[c.root(e)] += c.length(e);
    }
    double shortest = SHORTEST * mesh.bounds().diagonal();
    int[] kept = new int[creases.length];
    int n = 0;
    for (int e = 0; e < length.length; e++) {
      if (length[c.root(e)] >= shortest) {
        System.arraycopy(creases, STRIDE * e, kept, n, STRIDE);
        n += STRIDE;
      }
    }
    return Arrays.copyOf(kept, n);
  }

  /** Joins each pair of creases that meet at a vertex and run on. */
  private void link() {
    long[] ends = new long[2 * parent.length];
    for (int e = 0; e < parent.length; e++) {
      ends[2 * e] = (long) creases[STRIDE * e] << Integer.SIZE | e;
      ends[2 * e + 1] = (long) creases[STRIDE * e + 1] << Integer.SIZE | e;
    }
    Arrays.sort(ends);
    for (int i = 0; i < ends.length; i++) {
      int v = (int) (ends[i] >> Integer.SIZE);
      for (int j = i + 1; j < ends.length && (int) (ends[j] >> Integer.SIZE) == v; j++) {
        int e = (int) ends[i];
        int f = (int) ends[j];
        if (runOn(v, e, f)) {
          parent[root(f)] = root(e);
        }
      }
    }
  }

  private boolean runOn(int v, int e, int f) {
    double[] a = away(v, e);
    double[] b = away(v, f);
    double dot = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    return -dot >= RUNS_ON * length(e) * length(f);
  }

  private double[] away(int v, int e) {
    int p = 3 * v;
    int q = 3 * (creases[STRIDE * e] + creases[STRIDE * e + 1] - v);
    double[] xyz = mesh.xyz();
    return new double[] {xyz[q] - xyz[p], xyz[q + 1] - xyz[p + 1], xyz[q + 2] - xyz[p + 2]};
  }

  private double length(int e) {
    double[] d = away(creases[STRIDE * e], e);
    return Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
  }

  private int root(int e) {
    int r = e;
    while (parent[r] != r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  }
}
