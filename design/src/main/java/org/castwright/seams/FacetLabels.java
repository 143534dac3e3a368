package org.castwright.seams;

import org.castwright.progress.Progress;

/** Gives every facet to a piece that may take it, by minimum cuts, and tidies small patches. */
final class FacetLabels {

  /** Rounds of merging small patches; each leaves fewer. */
  private static final int MERGE_ROUNDS = 6;

  private FacetLabels() {}

  static byte[] of(FacetFacts facts, SurfaceEdges edges, SeamOptions options, Progress progress) {
    PottsProblem problem = SeamEnergy.of(facts, edges, options);
    byte[] label =
        AlphaExpansion.run(
            problem,
            cheapest(problem),
            round -> progress.at("seams: labels", 1 - 1.0 / (1 + round)));
    PatchMerge.run(facts, edges, label, options, MERGE_ROUNDS);
    return label;
  }

  private static byte[] cheapest(PottsProblem problem) {
    int k = problem.labels;
    byte[] label = new byte[problem.sites()];
    for (int s = 0; s < label.length; s++) {
      for (byte l = 1; l < k; l++) {
        if (problem.unary[s * k + l] < problem.unary[s * k + label[s]]) {
          label[s] = l;
        }
      }
    }
    return label;
  }
}
