package org.castwright.mesh;

/** Joins vertices that stand on the same spot, so that triangles share corners. */
public final class Weld {

  private Weld() {}

  /**
   * The mesh with vertices of equal coordinates merged into one. Numbers follow the first
   * appearance in the vertex list. No vertex moves, vertices that no triangle uses stay, and every
   * triangle stays in its place and order, including those that now name one corner twice.
   */
  public static TriMesh exact(TriMesh mesh) {
    double[] xyz = mesh.xyz();
    int[] tri = mesh.tri();
    PointTable points = new PointTable(mesh.vertexCount());
    int[] number = new int[mesh.vertexCount()];
    for (int i = 0; i < number.length; i++) {
      number[i] = points.indexOf(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
    }
    int[] out = new int[tri.length];
    for (int i = 0; i < tri.length; i++) {
      out[i] = number[tri[i]];
    }
    return new TriMesh(points.toArray(), out);
  }
}
