package org.castwright.seams;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/** What labels of facets cost, in whole numbers for the minimum cut. */
final class SeamEnergy {

  /** Steps of cost in a millimeter of plain seam: 2^16 rounds a facet's cost to 0.015 microns. */
  static final double SCALE = 65536;

  /** Cost of a square millimeter given to a piece that cannot have it. */
  static final double CAUGHT_WEIGHT = 10;

  /** Cost of a square millimeter not formed by the piece wished for. */
  static final double WISH_WEIGHT = 1000;

  private SeamEnergy() {}

  static PottsProblem of(FacetFacts facts, SurfaceEdges edges, SeamOptions options) {
    int k = facts.pieces;
    int n = facts.mesh().triangleCount();
    long[] unary = new long[n * k];
    for (int f = 0; f < n; f++) {
      facet(facts, f, options, unary);
    }
    long[] weight = new long[edges.count()];
    for (int e = 0; e < weight.length; e++) {
      weight[e] = scaled(edge(facts, edges, e, options));
    }
    long[] labelCost = new long[k];
    for (int i = 0; i < k; i++) {
      labelCost[i] = scaled(options.pieceCost());
    }
    return new PottsProblem(k, unary, edges.left, edges.right, weight, labelCost);
  }

  private static void facet(FacetFacts facts, int f, SeamOptions options, long[] unary) {
    int k = facts.pieces;
    double area = facts.mesh().areaVector(f).length();
    int may = facts.may(f);
    for (int i = 0; i < k; i++) {
      if ((may >> i & 1) == 0) {
        unary[f * k + i] = MaxFlow.INFINITE;
        continue;
      }
      double cost = options.draftWeight() * facts.shortfall(f, i);
      cost += CAUGHT_WEIGHT * (1 - facts.share[f * k + i]);
      cost += facts.wished[f] >= 0 && facts.wished[f] != i ? WISH_WEIGHT : 0;
      unary[f * k + i] = scaled(area * cost);
    }
  }

  /** The cost of a seam along an edge: its length, less in creases, weighed by the marks. */
  private static double edge(FacetFacts facts, SurfaceEdges edges, int e, SeamOptions options) {
    int f = edges.left[e];
    int g = edges.right[e];
    double sharp = Math.min(1, bend(facts.mesh(), f, g) / options.creaseDeg());
    double crease = 1 - (1 - options.creaseShare()) * sharp;
    double mark =
        facts.noSeam[f] || facts.noSeam[g]
            ? Math.max(facts.weight[f], facts.weight[g])
            : (facts.weight[f] + facts.weight[g]) / 2;
    return edges.length(facts.mesh(), e) * crease * mark;
  }

  /** The angle by which the surface bends at the edge of two facets, degrees, 0 to 180. */
  static double bend(TriMesh mesh, int f, int g) {
    Vec3 a = mesh.areaVector(f);
    Vec3 b = mesh.areaVector(g);
    return Math.toDegrees(StrictMath.atan2(a.cross(b).length(), a.dot(b)));
  }

  private static long scaled(double cost) {
    return Math.round(cost * SCALE);
  }
}
