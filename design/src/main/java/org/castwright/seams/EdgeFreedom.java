package org.castwright.seams;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/** What each piece may take along the edges of a mesh, sampled when first asked and remembered. */
final class EdgeFreedom {

  /** Parts an edge is cut into; samples stand at their ends. */
  private static final int PARTS = 8;

  /** Borders of shadows are found to within this, mm. */
  private static final double SHARP_MM = 0.02;

  private final TriMesh mesh;
  private final SurfaceEdges edges;
  private final int[] base;
  private final byte[] wished;
  private final Freedom freedom;
  private final int[] mask;
  private final boolean[] known;
  private final int pieces;
  private final float[] reach;
  private final float[] onset;

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
    pieces = freedom.pieces();
    reach = new float[edges.count() * pieces];
    onset = new float[edges.count() * pieces];
    Arrays.fill(reach, Float.NaN);
    Arrays.fill(onset, Float.NaN);
  }

  int atVertex(int v) {
    double[] x = mesh.xyz();
    return freedom.at(x[3 * v], x[3 * v + 1], x[3 * v + 2]);
  }

  /** The largest t up to which the edge, from its low vertex on, may be the label's. */
  double to(int e, int label) {
    int at = e * pieces + label;
    if (Float.isNaN(reach[at])) {
      reach[at] = (float) reach(e, label);
    }
    return reach[at];
  }

  private double reach(int e, int label) {
    sample(e);
    int i = 0;
    while (i <= PARTS && has(e, i, label)) {
      i++;
    }
    return i == 0 ? 0 : i > PARTS ? 1 : border(e, label, i - 1, i);
  }

  /** The smallest t from which on the edge, to its high vertex, may be the label's. */
  double from(int e, int label) {
    int at = e * pieces + label;
    if (Float.isNaN(onset[at])) {
      onset[at] = (float) onset(e, label);
    }
    return onset[at];
  }

  private double onset(int e, int label) {
    sample(e);
    int i = PARTS;
    while (i >= 0 && has(e, i, label)) {
      i--;
    }
    return i == PARTS ? 1 : i < 0 ? 0 : border(e, label, i + 1, i);
  }

  private boolean has(int e, int sample, int label) {
    return (mask[e * (PARTS + 1) + sample] >> label & 1) == 1;
  }

  /** Narrows down how far from one sample toward the next the label may have the edge. */
  private double border(int e, int label, int free, int caught) {
    double yes = free / (double) PARTS;
    double no = caught / (double) PARTS;
    double length = edges.length(mesh, e);
    while (Math.abs(yes - no) * length > SHARP_MM) {
      double middle = (yes + no) / 2;
      if ((at(e, middle) >> label & 1) == 1) {
        yes = middle;
      } else {
        no = middle;
      }
    }
    return yes;
  }

  /** Share of the edge the label may not have. */
  double lost(int e, int label) {
    sample(e);
    int lost = 0;
    for (int i = 0; i <= PARTS; i++) {
      lost += has(e, i, label) ? 0 : 1;
    }
    return lost / (PARTS + 1.0);
  }

  private void sample(int e) {
    if (known[e]) {
      return;
    }
    known[e] = true;
    for (int i = 0; i <= PARTS; i++) {
      mask[e * (PARTS + 1) + i] = at(e, i / (double) PARTS);
    }
  }

  private int at(int e, double t) {
    double[] x = mesh.xyz();
    int a = 3 * edges.low[e];
    int b = 3 * edges.high[e];
    int m =
        freedom.at(
            x[a] + (x[b] - x[a]) * t,
            x[a + 1] + (x[b + 1] - x[a + 1]) * t,
            x[a + 2] + (x[b + 2] - x[a + 2]) * t);
    int wish = wish(edges.left[e]) & wish(edges.right[e]);
    return (m & wish) == 0 ? m : m & wish;
  }

  private int wish(int facet) {
    int w = wished[base[facet]];
    return w < 0 ? -1 : 1 << w;
  }
}
