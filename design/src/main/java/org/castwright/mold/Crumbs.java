package org.castwright.mold;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * Closed shells of next to no volume that cutting leaves where surfaces all but coincide, as where
 * the seam surface meets the casting.
 */
final class Crumbs {

  /** A shell that holds less is no part of a piece: a tenth of a millimeter cubed, mm³. */
  private static final double LEAST = 1e-3;

  private Crumbs() {}

  /** The mesh without shells of less volume than a crumb; the very mesh when it has none. */
  static TriMesh swept(TriMesh mesh) {
    int[] t = mesh.tri();
    int[] shell = shells(mesh);
    double[] volume = new double[mesh.vertexCount()];
    double[] v = mesh.xyz();
    for (int f = 0; f < t.length; f += 3) {
      volume[shell[t[f]]] += cone(v, 3 * t[f], 3 * t[f + 1], 3 * t[f + 2]);
    }
    int[] kept = new int[t.length];
    int n = 0;
    for (int f = 0; f < t.length; f += 3) {
      if (Math.abs(volume[shell[t[f]]]) >= LEAST) {
        System.arraycopy(t, f, kept, n, 3);
        n += 3;
      }
    }
    return n == t.length ? mesh : compact(v, Arrays.copyOf(kept, n));
  }

  /** For each vertex the least vertex of its shell. */
  private static int[] shells(TriMesh mesh) {
    int[] root = new int[mesh.vertexCount()];
    Arrays.setAll(root, i -> i);
    int[] t = mesh.tri();
    for (int f = 0; f < t.length; f += 3) {
      for (int k = 1; k < 3; k++) {
        int a = find(root, t[f]);
        int b = find(root, t[f + k]);
        root[Math.max(a, b)] = Math.min(a, b);
      }
    }
    for (int i = 0; i < root.length; i++) {
      root[i] = find(root, i);
    }
    return root;
  }

  private static int find(int[] root, int i) {
    int at = i;
    while (root[at] != at) {
      root[at] = root[root[at]];
      at = root[at];
    }
    return at;
  }

  private static double cone(double[] v, int a, int b, int c) {
    double x = v[b + 1] * v[c + 2] - v[b + 2] * v[c + 1];
    double y = v[b + 2] * v[c] - v[b] * v[c + 2];
    double z = v[b] * v[c + 1] - v[b + 1] * v[c];
    return (v[a] * x + v[a + 1] * y + v[a + 2] * z) / 6;
  }

  private static TriMesh compact(double[] v, int[] tri) {
    int[] number = new int[v.length / 3];
    Arrays.fill(number, -1);
    double[] out = new double[v.length];
    int n = 0;
    for (int i = 0; i < tri.length; i++) {
      int p = tri[i];
      if (number[p] < 0) {
        System.arraycopy(v, 3 * p, out, 3 * n, 3);
        number[p] = n++;
      }
      tri[i] = number[p];
    }
    return new TriMesh(Arrays.copyOf(out, 3 * n), tri);
  }
}
