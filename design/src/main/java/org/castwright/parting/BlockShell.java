package org.castwright.parting;

import org.castwright.mesh.MeshBuilder;

/**
 * The outer faces of a half: four walls between the sheet's border and the block's top or bottom,
 * and that top or bottom. The border lies at one height, so each wall is a fan from one corner.
 */
final class BlockShell {

  private final BlockBox box;

  BlockShell(BlockBox box) {
    this.box = box;
  }

  /**
   * Adds the faces.
   *
   * @param walls vertices of the border on each wall from corner to corner, counter-clockwise from
   *     the wall at y0, as indices in {@code out}
   */
  void add(MeshBuilder out, int[][] walls, boolean upper) {
    double z = upper ? box.z1() : box.z0();
    int[] c = {
      out.vertex(box.x0(), box.y0(), z),
      out.vertex(box.x1(), box.y0(), z),
      out.vertex(box.x1(), box.y1(), z),
      out.vertex(box.x0(), box.y1(), z)
    };
    for (int k = 0; k < 4; k++) {
      int[] w = walls[k];
      int here = c[k];
      int next = c[(k + 1) % 4];
      facet(out, next, here, w[0], upper);
      for (int i = 0; i + 1 < w.length; i++) {
        facet(out, next, w[i], w[i + 1], upper);
      }
    }
    facet(out, c[0], c[1], c[2], upper);
    facet(out, c[0], c[2], c[3], upper);
  }

  private static void facet(MeshBuilder out, int a, int b, int c, boolean upper) {
    out.triangle(a, upper ? b : c, upper ? c : b);
  }
}
