package org.castwright.seams;

import org.castwright.mesh.TriMesh;

/** What each piece may take along the edges of a mesh, sampled when first asked and remembered. */
final class EdgeFreedom {

  /** Parts an edge is cut into; samples stand at their ends. */
  private static final int PARTS = 8;

  private final TriMesh mesh;
  private final SurfaceEdges edges;
  private final int[] base;
  private final byte[] wished;
  private final Freedom freedom;
  private final int[] mask;
  private final boolean[] known;

  /**
   * @param base facet of {@code wished} in which each facet lies
   * @param wished piece wished for, or -1
   */
  EdgeFreedom(TriMesh mesh, SurfaceEdges edges, int[] base, byte[] wished, Freedom freedom) {
    this.mesh = mesh;
    this.edges = edges;
    this.base = base;
    this.wished = wished;
    this.freedom = freedom;
    mask = new int[edges.count() * (PARTS + 1)];
    known = new boolean[edges.count()];
  }

  int atVertex(int v) {
    double[] x = mesh.xyz();
    return freedom.at(x[3 * v], x[3 * v + 1], x[3 * v + 2]);
  }

  /** The largest t up to which the edge, from its low vertex on, may be the label's. */
  double to(int e, int label) {
    sample(e);
    int i = 0;
    while (i <= PARTS && (mask[e * (PARTS + 1) + i] >> label & 1) == 1) {
      i++;
    }
    return i > PARTS ? 1 : Math.max(0, i - 1.0) / PARTS;
  }

  /** The smallest t from which on the edge, to its high vertex, may be the label's. */
  double from(int e, int label) {
    sample(e);
    int i = PARTS;
    while (i >= 0 && (mask[e * (PARTS + 1) + i] >> label & 1) == 1) {
      i--;
    }
    return i < 0 ? 0 : Math.min(PARTS, i + 1.0) / PARTS;
  }

  /** Share of the edge the label may not have. */
  double lost(int e, int label) {
    sample(e);
    int lost = 0;
    for (int i = 0; i <= PARTS; i++) {
      lost += 1 - (mask[e * (PARTS + 1) + i] >> label & 1);
    }
    return lost / (PARTS + 1.0);
  }

  private void sample(int e) {
    if (known[e]) {
      return;
    }
    known[e] = true;
    int wish = wish(edges.left[e]) & wish(edges.right[e]);
    double[] x = mesh.xyz();
    int a = 3 * edges.low[e];
    int b = 3 * edges.high[e];
    for (int i = 0; i <= PARTS; i++) {
      double t = i / (double) PARTS;
      int m =
          freedom.at(
              x[a] + (x[b] - x[a]) * t,
              x[a + 1] + (x[b + 1] - x[a + 1]) * t,
              x[a + 2] + (x[b + 2] - x[a + 2]) * t);
      mask[e * (PARTS + 1) + i] = (m & wish) == 0 ? m : m & wish;
    }
  }

  private int wish(int facet) {
    int w = wished[base[facet]];
    return w < 0 ? -1 : 1 << w;
  }
}
