package org.castwright.solid.manifold;

import java.util.Arrays;
import java.util.List;
import org.castwright.mesh.TriMesh;

/** The vertices of several meshes in one array. */
final class Points {

  private Points() {}

  /** Three doubles for every vertex some triangle uses. */
  static double[] of(List<TriMesh> meshes) {
    int room = 0;
    for (TriMesh mesh : meshes) {
      room += mesh.xyz().length;
    }
    double[] all = new double[room];
    int n = 0;
    for (TriMesh mesh : meshes) {
      boolean[] used = new boolean[mesh.vertexCount()];
      for (int v : mesh.tri()) {
        if (!used[v]) {
          used[v] = true;
          System.arraycopy(mesh.xyz(), 3 * v, all, n, 3);
          n += 3;
        }
      }
    }
    return Arrays.copyOf(all, n);
  }
}
