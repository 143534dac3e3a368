package org.castwright.seams;

import java.util.List;

/**
 * What came of the seams.
 *
 * @param lengthMm all seams together
 * @param firstLengthMm the same along facets' edges, before shortening
 * @param visibleMm seams outside regions marked hide; nothing else is taken for hidden
 * @param showMm seams on faces marked show
 * @param showShare their share of all seams, 0 to 1
 * @param noSeamMm seams where none may run: wishes that could not be met
 * @param caughtMm2 surface that went to a piece that may not take it, sampled
 * @param wishMissedMm2 surface not formed by the piece wished for
 * @param hiddenMm2 surface that no piece may take, sampled facet by facet
 * @param patches connected parts of the surface each piece forms
 * @param areaMm2 surface each piece forms
 */
public record SeamMeasures(
    double lengthMm,
    double firstLengthMm,
    double visibleMm,
    double showMm,
    double showShare,
    double noSeamMm,
    double caughtMm2,
    double wishMissedMm2,
    double hiddenMm2,
    List<Integer> patches,
    List<Double> areaMm2) {

  public SeamMeasures {
    patches = List.copyOf(patches);
    areaMm2 = List.copyOf(areaMm2);
  }

  static SeamMeasures of(FacetFacts facts, SurfaceEdges edges, byte[] label, double firstLengthMm) {
    Lengths l = new Lengths();
    for (int e = 0; e < edges.count(); e++) {
      int f = edges.left[e];
      int g = edges.right[e];
      if (label[f] != label[g]) {
        double half = edges.length(facts.mesh(), e) / 2;
        l.all += 2 * half;
        l.hide += (facts.hide[f] ? half : 0) + (facts.hide[g] ? half : 0);
        l.show += (facts.show[f] ? half : 0) + (facts.show[g] ? half : 0);
        l.none += facts.noSeam[f] && facts.noSeam[g] ? 2 * half : 0;
      }
    }
    int k = facts.pieces;
    double caught = 0;
    double missed = 0;
    double hidden = 0;
    for (int f = 0; f < label.length; f++) {
      double a = facts.mesh().areaVector(f).length();
      caught += a * (1 - facts.share[f * k + label[f]]);
      missed += facts.wished[f] >= 0 && facts.wished[f] != label[f] ? a : 0;
      hidden += a * (1 - facts.best(f));
    }
    double share = l.all > 0 ? l.show / l.all : 0;
    Patches patches = new Patches(facts.mesh(), edges, label);
    return new SeamMeasures(
        l.all,
        firstLengthMm,
        l.all - l.hide,
        l.show,
        share,
        l.none,
        caught,
        missed,
        hidden,
        patches.counts(k, label),
        patches.areas(k, label));
  }

  /** Sums of seam lengths, mm. */
  private static final class Lengths {
    double all;
    double hide;
    double show;
    double none;
  }
}
