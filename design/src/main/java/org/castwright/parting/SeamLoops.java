package org.castwright.parting;

import java.util.ArrayList;
import java.util.List;

/** Strings the edges of a seam together to closed lines. */
final class SeamLoops {

  private SeamLoops() {}

  /** Each loop packed xyz, in the order of its lowest edge; the first point is not repeated. */
  static List<double[]> of(Seam seam) {
    int n = seam.casting.mesh().vertexCount();
    int[] start = new int[n + 1];
    for (int p : seam.from) {
      start[p + 1]++;
    }
    for (int i = 0; i < n; i++) {
      start[i + 1] += start[i];
    }
    int[] next = start.clone();
    int[] out = new int[seam.size()];
    for (int e = 0; e < seam.size(); e++) {
      out[next[seam.from[e]]++] = e;
    }
    boolean[] used = new boolean[seam.size()];
    double[] v = seam.casting.mesh().xyz();
    List<double[]> loops = new ArrayList<>();
    for (int first = 0; first < seam.size(); first++) {
      DoubleList loop = new DoubleList();
      int e = first;
      while (e >= 0 && !used[e]) {
        used[e] = true;
        for (int k = 0; k < 3; k++) {
          loop.add(v[3 * seam.from[e] + k]);
        }
        int p = seam.to[e];
        e = -1;
        for (int k = start[p]; k < start[p + 1] && e < 0; k++) {
          e = used[out[k]] ? -1 : out[k];
        }
      }
      if (loop.size() > 0) {
        loops.add(loop.toArray());
      }
    }
    return loops;
  }
}
