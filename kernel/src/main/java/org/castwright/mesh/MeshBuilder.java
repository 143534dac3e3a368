package org.castwright.mesh;

import java.util.Arrays;

/** Grows a mesh vertex by vertex and triangle by triangle without boxing. */
public final class MeshBuilder {

  private double[] xyz = new double[192];
  private int coordinates;
  private int[] tri = new int[192];
  private int corners;

  /** Adds a vertex and returns its index. */
  public int vertex(double x, double y, double z) {
    if (coordinates + 3 > xyz.length) {
      xyz = Arrays.copyOf(xyz, xyz.length * 2);
    }
    xyz[coordinates++] = x;
    xyz[coordinates++] = y;
    xyz[coordinates++] = z;
    return coordinates / 3 - 1;
  }

  public void triangle(int a, int b, int c) {
    if (corners + 3 > tri.length) {
      tri = Arrays.copyOf(tri, tri.length * 2);
    }
    tri[corners++] = a;
    tri[corners++] = b;
    tri[corners++] = c;
  }

  public int vertexCount() {
    return coordinates / 3;
  }

  public int triangleCount() {
    return corners / 3;
  }

  public TriMesh build() {
    return new TriMesh(Arrays.copyOf(xyz, coordinates), Arrays.copyOf(tri, corners));
  }
}
