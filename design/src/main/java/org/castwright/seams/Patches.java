package org.castwright.seams;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/** The connected parts of a labelling of facets; facets touch across edges. */
final class Patches {

  final int[] of;
  final int count;
  private final double[] area;

  Patches(TriMesh mesh, SurfaceEdges edges, byte[] label) {
    int n = label.length;
    of = new int[n];
    Arrays.fill(of, -1);
    double[] areas = new double[n];
    IntQueue queue = new IntQueue(64);
    int patches = 0;
    for (int seed = 0; seed < n; seed++) {
      if (of[seed] >= 0) {
        continue;
      }
      of[seed] = patches;
      queue.add(seed);
      while (!queue.isEmpty()) {
        int f = queue.take();
        areas[patches] += mesh.areaVector(f).length();
        for (int k = 0; k < 3; k++) {
          int g = edges.across(edges.of[3 * f + k], f);
          if (of[g] < 0 && label[g] == label[f]) {
            of[g] = patches;
            queue.add(g);
          }
        }
      }
      patches++;
    }
    count = patches;
    area = Arrays.copyOf(areas, patches);
  }

  double areaMm2(int patch) {
    return area[patch];
  }

  /**
   * Gives patches below an area to the neighbor with the longest common border among those that may
   * take all of it; one round. Patches that the wishes fix are left.
   *
   * @return whether any was given away
   */
  static boolean merge(FacetFacts facts, SurfaceEdges edges, byte[] label, SeamOptions options) {
    TriMesh mesh = facts.mesh();
    Patches p = new Patches(mesh, edges, label);
    int k = facts.pieces;
    int[] small = new int[p.count];
    int smalls = 0;
    for (int i = 0; i < p.count; i++) {
      small[i] = p.area[i] < options.patchMm2() ? smalls++ : -1;
    }
    double[] border = new double[smalls * k];
    int[] may = new int[smalls];
    Arrays.fill(may, -1);
    byte[] has = new byte[smalls];
    for (int f = 0; f < label.length; f++) {
      int s = small[p.of[f]];
      if (s >= 0) {
        may[s] &= allowed(facts, f, label[f], p.area[p.of[f]] < options.creaseMm2());
        has[s] = label[f];
      }
    }
    for (int e = 0; e < edges.count(); e++) {
      int f = edges.left[e];
      int g = edges.right[e];
      if (label[f] != label[g]) {
        double l = edges.length(mesh, e);
        share(border, small[p.of[f]], k, label[g], l);
        share(border, small[p.of[g]], k, label[f], l);
      }
    }
    byte[] to = new byte[smalls];
    boolean any = false;
    for (int s = 0; s < smalls; s++) {
      to[s] = best(border, may[s], s, k, has[s]);
      any |= to[s] != has[s];
    }
    for (int f = 0; f < label.length; f++) {
      int s = small[p.of[f]];
      if (s >= 0) {
        label[f] = to[s];
      }
    }
    return any;
  }

  /** Pieces that may have a facet of a small patch: no worse off than with the piece it has. */
  private static int allowed(FacetFacts facts, int f, byte has, boolean crease) {
    if (crease && facts.wished[f] < 0) {
      return -1;
    }
    if (facts.wished[f] >= 0) {
      return 1 << has;
    }
    int mask = 0;
    for (int i = 0; i < facts.pieces; i++) {
      boolean as = facts.share[f * facts.pieces + i] >= facts.share[f * facts.pieces + has];
      mask |= as ? 1 << i : 0;
    }
    return mask;
  }

  private static void share(double[] border, int patch, int k, byte to, double length) {
    if (patch >= 0) {
      border[patch * k + to] += length;
    }
  }

  private static byte best(double[] border, int may, int s, int k, byte has) {
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
