package org.castwright.seams;

import java.util.Arrays;

/**
 * Gives small patches to the neighbor with the longest common border among those that may take all
 * of the patch, or, where the patch is no more than a crease, among all. Patches that wishes fix
 * stay.
 */
final class PatchMerge {

  private final FacetFacts facts;
  private final SurfaceEdges edges;
  private final byte[] label;
  private final Patches patches;

  /** Number among the small patches of each patch, or -1. */
  private final int[] small;

  private final int smalls;

  private PatchMerge(FacetFacts facts, SurfaceEdges edges, byte[] label, SeamOptions options) {
    this.facts = facts;
    this.edges = edges;
    this.label = label;
    patches = new Patches(facts.mesh(), edges, label);
    small = new int[patches.count];
    int n = 0;
    for (int i = 0; i < small.length; i++) {
      small[i] = patches.areaMm2(i) < options.patchMm2() ? n++ : -1;
    }
    smalls = n;
  }

  /** Merges, in several rounds as long as something changes; writes into the labels. */
  static void run(
      FacetFacts facts, SurfaceEdges edges, byte[] label, SeamOptions options, int rounds) {
    for (int i = 0; i < rounds; i++) {
      if (!new PatchMerge(facts, edges, label, options).round(options.creaseMm2())) {
        return;
      }
    }
  }

  private boolean round(double creaseMm2) {
    int[] may = may(creaseMm2);
    double[] border = borders();
    boolean any = false;
    for (int f = 0; f < label.length; f++) {
      int s = small[patches.of[f]];
      if (s >= 0) {
        byte to = best(border, may[s], s, label[f]);
        any |= to != label[f];
        label[f] = to;
      }
    }
    return any;
  }

  /** Bits of the pieces each small patch may be given to. */
  private int[] may(double creaseMm2) {
    int[] may = new int[smalls];
    Arrays.fill(may, -1);
    for (int f = 0; f < label.length; f++) {
      int s = small[patches.of[f]];
      if (s >= 0) {
        may[s] &= allowed(f, patches.areaMm2(patches.of[f]) < creaseMm2);
      }
    }
    return may;
  }

  /** Pieces that may have a facet of a small patch: no worse off than with the piece it has. */
  private int allowed(int f, boolean crease) {
    if (facts.wished[f] >= 0) {
      return 1 << label[f];
    }
    int k = facts.pieces;
    int mask = 0;
    for (int i = 0; i < k; i++) {
      boolean asGood = facts.share[f * k + i] >= facts.share[f * k + label[f]];
      mask |= crease || asGood ? 1 << i : 0;
    }
    return mask;
  }

  /** Length of border of each small patch with each piece, mm. */
  private double[] borders() {
    int k = facts.pieces;
    double[] border = new double[smalls * k];
    for (int e = 0; e < edges.count(); e++) {
      int f = edges.left[e];
      int g = edges.right[e];
      if (label[f] != label[g]) {
        double l = edges.length(facts.mesh(), e);
        for (int turn = 0; turn < 2; turn++) {
          int s = small[patches.of[turn == 0 ? f : g]];
          if (s >= 0) {
            border[s * k + label[turn == 0 ? g : f]] += l;
          }
        }
      }
    }
    return border;
  }

  private byte best(double[] border, int may, int s, byte has) {
    int k = facts.pieces;
    byte best = has;
    double most = 0;
    for (byte i = 0; i < k; i++) {
      if (i != has && (may >> i & 1) == 1 && border[s * k + i] > most) {
        most = border[s * k + i];
        best = i;
      }
    }
    return best;
  }
}
