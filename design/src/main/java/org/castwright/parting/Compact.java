package org.castwright.parting;

import java.util.Arrays;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;

/** Takes over, one by one, the vertices of a large array that a mesh really uses. */
final class Compact {

  private final double[] xyz;
  private final int[] map;
  private final MeshBuilder builder = new MeshBuilder();

  Compact(double[] xyz) {
    this.xyz = xyz;
    map = new int[xyz.length / 3];
    Arrays.fill(map, -1);
  }

  MeshBuilder builder() {
    return builder;
  }

  /** The index in the mesh of vertex {@code v} of the array. */
  int of(int v) {
    if (map[v] < 0) {
      map[v] = builder.vertex(xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2]);
    }
    return map[v];
  }

  /** The mesh of these triangles. */
  TriMesh mesh(int[] tri) {
    for (int i = 0; i < tri.length; i += 3) {
      int a = of(tri[i]);
      int b = of(tri[i + 1]);
      builder.triangle(a, b, of(tri[i + 2]));
    }
    return builder.build();
  }
}
