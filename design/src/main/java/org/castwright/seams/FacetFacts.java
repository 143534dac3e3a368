package org.castwright.seams;

import java.util.List;
import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * What is known of each facet of a tiling before labels are chosen: which pieces may take it, how
 * far each would be short of draft, and what the user wishes there.
 */
final class FacetFacts {

  final Tiling tiling;
  final int pieces;

  /** Share of facet f that piece i may take: {@code share[f * pieces + i]}. */
  final float[] share;

  /** Weight of a millimeter of seam on each facet, from the marks. */
  final double[] weight;

  /** Whether the facet lies in a region marked so. */
  final boolean[] noSeam;

  final boolean[] hide;
  final boolean[] show;

  /** The piece, from 0, wished to form each facet, or -1. */
  final byte[] wished;

  /** Whether a shadow's border runs through the facet. */
  private final boolean[] shaded;

  /** Whether a region's border runs through the facet. */
  private final boolean[] marked;

  private final List<Vec3> pulls;
  private final double sinDraft;

  private FacetFacts(Tiling tiling, List<Vec3> pulls, SeamOptions options) {
    this.tiling = tiling;
    this.pulls = pulls;
    pieces = pulls.size();
    int n = tiling.mesh.triangleCount();
    share = new float[n * pieces];
    weight = new double[n];
    noSeam = new boolean[n];
    hide = new boolean[n];
    show = new boolean[n];
    wished = new byte[n];
    shaded = new boolean[n];
    marked = new boolean[n];
    sinDraft = StrictMath.sin(Math.toRadians(options.draftDeg()));
  }

  static FacetFacts of(
      Tiling tiling, List<Vec3> pulls, Freedom freedom, Wishes wishes, SeamOptions options) {
    return of(tiling, pulls, freedom, wishes, options, null);
  }

  /** The same, with what is known of facets that were not split since. */
  static FacetFacts of(
      Tiling tiling,
      List<Vec3> pulls,
      Freedom freedom,
      Wishes wishes,
      SeamOptions options,
      FacetFacts before) {
    FacetFacts facts = new FacetFacts(tiling, pulls, options);
    IntStream.range(0, tiling.mesh.triangleCount())
        .parallel()
        .forEach(
            f -> {
              if (before == null || tiling.unsplit[f] < 0) {
                facts.look(f, freedom, wishes.all(), options);
              } else {
                facts.copy(f, before, tiling.unsplit[f]);
              }
            });
    return facts;
  }

  /** The same facts of the same facets, with the labels of another tiling. */
  static FacetFacts same(Tiling tiling, FacetFacts known, List<Vec3> pulls, SeamOptions options) {
    FacetFacts facts = new FacetFacts(tiling, pulls, options);
    for (int f = 0; f < tiling.parent.length; f++) {
      facts.copy(f, known, f);
    }
    return facts;
  }

  private void copy(int f, FacetFacts from, int g) {
    System.arraycopy(from.share, g * pieces, share, f * pieces, pieces);
    weight[f] = from.weight[g];
    noSeam[f] = from.noSeam[g];
    hide[f] = from.hide[g];
    show[f] = from.show[g];
    wished[f] = from.wished[g];
    shaded[f] = from.shaded[g];
    marked[f] = from.marked[g];
  }

  /** Facets do not look at each other, so their order does not matter. */
  private void look(int f, Freedom freedom, List<Wish> wishes, SeamOptions options) {
    int[] free = new int[pieces];
    int[] held = new int[wishes.size()];
    int samples =
        FacetSamples.visit(
            tiling.mesh,
            f,
            (x, y, z) -> {
              int mask = freedom.at(x, y, z);
              for (int i = 0; i < pieces; i++) {
                free[i] += mask >> i & 1;
              }
              for (int w = 0; w < held.length; w++) {
                held[w] += wishes.get(w).region().holds(tiling.parent[f], x, y, z) ? 1 : 0;
              }
            });
    for (int i = 0; i < pieces; i++) {
      share[f * pieces + i] = (float) free[i] / samples;
      shaded[f] |= free[i] > 0 && free[i] < samples;
    }
    wished[f] = -1;
    for (int w = 0; w < held.length; w++) {
      marked[f] |= held[w] > 0 && held[w] < samples;
      if (2 * held[w] > samples) {
        mark(f, wishes.get(w));
      }
    }
    weight[f] =
        noSeam[f]
            ? options.noSeamWeight()
            : show[f] ? options.showWeight() : hide[f] ? options.hideWeight() : 1;
  }

  private void mark(int f, Wish wish) {
    switch (wish.mark()) {
      case NO_SEAM -> noSeam[f] = true;
      case HIDE -> {
        hide[f] = true;
        show[f] = false;
      }
      case SHOW -> {
        show[f] = true;
        hide[f] = false;
      }
      case PIECE -> wished[f] = (byte) (wish.piece() - 1);
    }
  }

  /** Whether the facet should be split: see {@link Refinement}. */
  boolean split(int f) {
    return marked[f] || (shaded[f] && (tiling.label[f] != 0 || whole(f) == 0));
  }

  /** Bits of the pieces that may take the whole facet. */
  int whole(int f) {
    int mask = 0;
    for (int i = 0; i < pieces; i++) {
      mask |= share[f * pieces + i] == 1 ? 1 << i : 0;
    }
    return mask;
  }

  /** Bits of the pieces that may get the facet: the whole of it, or if none may, a part. */
  int may(int f) {
    int mask = whole(f);
    for (int i = 0; i < pieces && mask == 0; i++) {
      mask = share[f * pieces + i] > 0 ? part(f) : 0;
    }
    return mask == 0 ? (1 << pieces) - 1 : mask;
  }

  private int part(int f) {
    int mask = 0;
    for (int i = 0; i < pieces; i++) {
      mask |= share[f * pieces + i] > 0 ? 1 << i : 0;
    }
    return mask;
  }

  /** The largest share of the facet that one piece may take. */
  double best(int f) {
    double most = 0;
    for (int i = 0; i < pieces; i++) {
      most = Math.max(most, share[f * pieces + i]);
    }
    return most;
  }

  /** How much the facet is short of draft along a pull, 0 to about 2: sines of angles. */
  double shortfall(int f, int piece) {
    Vec3 n = tiling.mesh.areaVector(f);
    double area = n.length();
    return area == 0 ? 0 : Math.max(0, sinDraft - n.dot(pulls.get(piece)) / area);
  }

  TriMesh mesh() {
    return tiling.mesh;
  }
}
