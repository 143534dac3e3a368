package org.castwright.parting;

import java.util.Arrays;
import org.castwright.mesh.MeshException;

/** Which facet lies across each edge of a closed mesh. */
final class Neighbors {

  private Neighbors() {}

  /**
   * For corner {@code 3 f + k} the facet across the edge from corner k of facet f to the next.
   *
   * @throws MeshException if the mesh is open
   */
  static int[] of(int[] tri) {
    int[] across = new int[tri.length];
    Arrays.fill(across, -1);
    EdgeMap waiting = new EdgeMap(tri.length / 2);
    for (int c = 0; c < tri.length; c++) {
      int a = tri[c];
      int b = tri[next(c)];
      int mate = waiting.put(EdgeMap.both(a, b), c);
      if (mate != EdgeMap.NONE) {
        across[c] = mate / 3;
        across[mate] = c / 3;
      }
    }
    for (int c = 0; c < across.length; c++) {
      if (across[c] < 0) {
        throw new MeshException(
            "The casting is open at triangle " + c / 3 + "; repair it before parting.");
      }
    }
    return across;
  }

  /** The corner after {@code corner} in its triangle. */
  static int next(int corner) {
    return corner % 3 == 2 ? corner - 2 : corner + 1;
  }

  /** The corner before {@code corner} in its triangle. */
  static int previous(int corner) {
    return corner % 3 == 0 ? corner + 2 : corner - 1;
  }
}
