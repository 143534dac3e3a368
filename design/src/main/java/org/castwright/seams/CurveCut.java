package org.castwright.seams;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/** Splits the facets of a mesh along a {@link SeamCurve}, so that the curve runs along edges. */
final class CurveCut {

  /**
   * Crossings nearer than this share of the edge to its end are cut through the end: no slivers.
   */
  private static final double SNAP = 0.03;

  /** How far a meeting point that falls on a facet's border is drawn into the facet. */
  private static final double INWARD = 0.1;

  /** A meeting point nearer to a crossing than this is that crossing, mm. */
  private static final double SAME_MM = 1e-6;

  private final SeamCurve curve;
  private final FacetFacts facts;
  private double[] xyz;
  private int vertices;
  private int[] tri;
  private int corners;
  private final Rows rows;
  private final int[] node;

  private CurveCut(SeamCurve curve, FacetFacts facts) {
    this.curve = curve;
    this.facts = facts;
    rows = new Rows(curve.base.length);
    node = new int[curve.edges.count()];
    vertices = curve.mesh.vertexCount();
    xyz = curve.mesh.xyz().clone();
    tri = new int[curve.mesh.tri().length];
  }

  /** The casting, tiled along the curve. */
  static Tiling of(SeamCurve curve, FacetFacts facts) {
    CurveCut cut = new CurveCut(curve, facts);
    cut.nodes();
    for (int f = 0; f < curve.base.length; f++) {
      cut.facet(f);
    }
    TriMesh mesh =
        new TriMesh(Arrays.copyOf(cut.xyz, 3 * cut.vertices), Arrays.copyOf(cut.tri, cut.corners));
    return new Tiling(mesh, cut.rows.parents(), cut.rows.labels());
  }

  /** A vertex for each crossing; one near an end is that end. */
  private void nodes() {
    double[] p = new double[3];
    for (int e = 0; e < node.length; e++) {
      node[e] = -1;
      if (!curve.crossed(e)) {
        continue;
      }
      if (curve.t[e] <= SNAP) {
        node[e] = curve.edges.low[e];
      } else if (curve.t[e] >= 1 - SNAP) {
        node[e] = curve.edges.high[e];
      } else {
        curve.point(e, p);
        node[e] = vertex(p);
      }
    }
  }

  private int vertex(double[] p) {
    if (3 * vertices + 3 > xyz.length) {
      xyz = Arrays.copyOf(xyz, 2 * xyz.length);
    }
    System.arraycopy(p, 0, xyz, 3 * vertices, 3);
    return vertices++;
  }

  private void facet(int f) {
    int[] of = curve.mesh.tri();
    switch (curve.kinds(f)) {
      case 1 -> triangle(f, of[3 * f], of[3 * f + 1], of[3 * f + 2], curve.piece[of[3 * f]]);
      case 2 -> two(f, curve.odd(f));
      default -> three(f);
    }
  }

  /** The corner that differs, cut off by a line; what is left has four corners or fewer. */
  private void two(int f, int k) {
    int[] of = curve.mesh.tri();
    int o = of[3 * f + k];
    int x = of[3 * f + (k + 1) % 3];
    int y = of[3 * f + (k + 2) % 3];
    int c = node[curve.edges.of[3 * f + k]];
    int d = node[curve.edges.of[3 * f + (k + 2) % 3]];
    byte own = curve.piece[o];
    byte other = curve.piece[x];
    triangle(f, o, c, d, own);
    boolean fromX = c == o || (d != o && shorter(x, d, c, y));
    if (fromX) {
      triangle(f, x, y, d, other);
      triangle(f, x, d, c, other);
    } else {
      triangle(f, y, d, c, other);
      triangle(f, y, c, x, other);
    }
  }

  private boolean shorter(int a, int b, int c, int d) {
    return square(a, b) < square(c, d);
  }

  private double square(int a, int b) {
    double x = xyz[3 * a] - xyz[3 * b];
    double y = xyz[3 * a + 1] - xyz[3 * b + 1];
    double z = xyz[3 * a + 2] - xyz[3 * b + 2];
    return x * x + y * y + z * z;
  }

  private void three(int f) {
    int m = middle(f);
    for (int k = 0; k < 3; k++) {
      int v = curve.mesh.tri()[3 * f + k];
      byte label = curve.piece[v];
      triangle(f, m, node[curve.edges.of[3 * f + (k + 2) % 3]], v, label);
      triangle(f, m, v, node[curve.edges.of[3 * f + k]], label);
    }
  }

  /** The vertex where three seams meet: strictly inside the facet, or inside one of its edges. */
  private int middle(int f) {
    double[] p = new double[3];
    curve.meeting(f, p);
    boolean inside = true;
    for (int k = 0; k < 3; k++) {
      int e = curve.edges.of[3 * f + k];
      double x = xyz[3 * node[e]] - p[0];
      double y = xyz[3 * node[e] + 1] - p[1];
      double z = xyz[3 * node[e] + 2] - p[2];
      if (x * x + y * y + z * z < SAME_MM * SAME_MM) {
        if (node[e] != curve.edges.low[e] && node[e] != curve.edges.high[e]) {
          return node[e];
        }
        inside = false;
      }
    }
    double share = inside ? INWARD / 2 : INWARD;
    double[] q = new double[3];
    for (int k = 0; k < 3; k++) {
      int v = curve.mesh.tri()[3 * f + k];
      q[0] += xyz[3 * v] / 3;
      q[1] += xyz[3 * v + 1] / 3;
      q[2] += xyz[3 * v + 2] / 3;
    }
    for (int k = 0; k < 3; k++) {
      p[k] += (q[k] - p[k]) * share;
    }
    return vertex(p);
  }

  private void triangle(int f, int a, int b, int c, byte label) {
    if (a != b && b != c && c != a) {
      if (corners + 3 > tri.length) {
        tri = Arrays.copyOf(tri, 2 * tri.length);
      }
      tri[corners++] = a;
      tri[corners++] = b;
      tri[corners++] = c;
      rows.add(facts.tiling.parent[curve.base[f]], label);
    }
  }
}
