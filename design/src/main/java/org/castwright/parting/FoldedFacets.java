package org.castwright.parting;

import org.castwright.mesh.TriMesh;

/**
 * Finds facets that the band cut has folded onto the sheet. A facet that faces down but was given
 * to the upper half, with its outer edge on the outline, is covered by a triangle of the sheet with
 * the very same corners; the half would have a flap without thickness there. Giving the facet back
 * changes no body and removes the flap.
 */
final class FoldedFacets {

  private FoldedFacets() {}

  /** The casting with folded facets given back, or null if there are none. */
  static Labeled unfolded(Seam seam, Triangulation plan, boolean[] outside) {
    TriMesh mesh = seam.casting.mesh();
    int[] tri = mesh.tri();
    byte[] side = seam.casting.side();
    int[] across = Neighbors.of(tri);
    byte[] fixed = null;
    for (int c = 0; c < tri.length; c++) {
      int f = c / 3;
      int g = across[c];
      int p = seam.planOf[tri[c]];
      int q = seam.planOf[tri[Neighbors.next(c)]];
      if (f > g || p < 0 || q < 0 || side[f] != side[g] || !inSheet(plan, outside, p, q)) {
        continue;
      }
      int wrong = folded(across, side, c) ? f : folded(across, side, mate(tri, across, c)) ? g : -1;
      if (wrong >= 0) {
        fixed = fixed == null ? side.clone() : fixed;
        fixed[wrong] = (byte) -side[wrong];
      }
    }
    return fixed == null ? null : new Labeled(mesh, fixed);
  }

  /** Whether both other edges of the facet at this corner lie on the seam. */
  private static boolean folded(int[] across, byte[] side, int corner) {
    byte own = side[corner / 3];
    return side[across[Neighbors.next(corner)]] != own
        && side[across[Neighbors.previous(corner)]] != own;
  }

  /** The corner of the facet across an edge at which that facet's run of the edge begins. */
  private static int mate(int[] tri, int[] across, int corner) {
    int end = tri[Neighbors.next(corner)];
    int c = 3 * across[corner];
    while (tri[c] != end) {
      c++;
    }
    return c;
  }

  private static boolean inSheet(Triangulation plan, boolean[] outside, int p, int q) {
    int a = plan.cornerOf(p, q);
    int b = plan.cornerOf(q, p);
    return (a >= 0 && outside[a / 3]) || (b >= 0 && outside[b / 3]);
  }
}
