package org.castwright.seams;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.progress.Progress;

/**
 * Splits facets through which the border of a shadow or of a wished region runs, until they are
 * small, so that whole facets can be given to pieces. Of the shadows' borders only those matter
 * that cross a facet no piece may take whole, or one beside a seam.
 */
final class Refinement {

  private static final int MOST_ROUNDS = 10;

  /** Facets after splitting at most: this many times as many as before, and this many more. */
  private static final int MOST_TIMES = 2;

  private static final int MOST_MORE = 200_000;

  /**
   * Edges at least this share of a facet's longest are split with it: keeps facets from thinning.
   */
  private static final double NEAR_LONGEST = 0.6;

  private Refinement() {}

  /**
   * The facts of a tiling split where it has to be.
   *
   * @param start its labels say which facets lie beside a seam: those not zero
   * @param known facts of the same tiling, or null
   */
  static FacetFacts of(
      Tiling start,
      FacetFacts known,
      List<Vec3> pulls,
      Freedom freedom,
      Wishes wishes,
      SeamOptions options,
      Progress progress) {
    long most = (long) MOST_TIMES * start.mesh.triangleCount() + MOST_MORE;
    Tiling tiling = start;
    FacetFacts facts =
        known == null
            ? FacetFacts.of(tiling, pulls, freedom, wishes, options)
            : FacetFacts.same(start, known, pulls, options);
    for (int round = 0; round < MOST_ROUNDS; round++) {
      progress.at("seams: shadows", round / (double) MOST_ROUNDS);
      SurfaceEdges edges = SurfaceEdges.of(tiling.mesh);
      boolean[] split = new boolean[edges.count()];
      int marked = mark(facts, edges, options.splitMm(), split);
      if (marked == 0 || tiling.mesh.triangleCount() + 2L * marked > most) {
        break;
      }
      tiling = tiling.halved(edges, split);
      facts = FacetFacts.of(tiling, pulls, freedom, wishes, options, facts);
    }
    return facts;
  }

  /** Labels that are 1 for facets with a corner on a seam and 0 for others. */
  static byte[] besideSeams(Tiling tiling, SurfaceEdges edges) {
    boolean[] on = CurveStart.seamVertices(tiling, edges);
    byte[] beside = new byte[tiling.label.length];
    int[] tri = tiling.mesh.tri();
    for (int c = 0; c < tri.length; c++) {
      if (on[tri[c]]) {
        beside[c / 3] = 1;
      }
    }
    return beside;
  }

  private static int mark(FacetFacts facts, SurfaceEdges edges, double splitMm, boolean[] split) {
    int marked = 0;
    for (int f = 0; f < facts.tiling.parent.length; f++) {
      if (!facts.split(f)) {
        continue;
      }
      double longest = 0;
      for (int k = 0; k < 3; k++) {
        longest = Math.max(longest, edges.length(facts.mesh(), edges.of[3 * f + k]));
      }
      for (int k = 0; k < 3; k++) {
        int e = edges.of[3 * f + k];
        double l = edges.length(facts.mesh(), e);
        if (l > splitMm && l >= NEAR_LONGEST * longest && !split[e]) {
          split[e] = true;
          marked++;
        }
      }
    }
    return marked;
  }
}
