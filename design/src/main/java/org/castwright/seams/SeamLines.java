package org.castwright.seams;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Strings the edges between pieces together to lines, junction to junction. */
final class SeamLines {

  private final Tiling tiling;
  private final SurfaceEdges edges;
  private final int[] start;
  private final int[] seamAt;
  private final boolean[] used;
  private final List<SeamLine> lines = new ArrayList<>();

  SeamLines(Tiling tiling, SurfaceEdges edges) {
    this.tiling = tiling;
    this.edges = edges;
    int n = tiling.mesh.vertexCount();
    start = new int[n + 1];
    for (int e = 0; e < edges.count(); e++) {
      if (CurveStart.seam(tiling, edges, e)) {
        start[edges.low[e] + 1]++;
        start[edges.high[e] + 1]++;
      }
    }
    for (int v = 0; v < n; v++) {
      start[v + 1] += start[v];
    }
    seamAt = new int[start[n]];
    int[] fill = start.clone();
    for (int e = 0; e < edges.count(); e++) {
      if (CurveStart.seam(tiling, edges, e)) {
        seamAt[fill[edges.low[e]]++] = e;
        seamAt[fill[edges.high[e]]++] = e;
      }
    }
    used = new boolean[edges.count()];
    for (int v = 0; v < n; v++) {
      for (int i = start[v]; i < start[v + 1] && junction(v); i++) {
        walk(v, seamAt[i]);
      }
    }
    for (int v = 0; v < n; v++) {
      if (start[v + 1] > start[v]) {
        walk(v, seamAt[start[v]]);
      }
    }
  }

  /** Whether other than two seam edges end at a vertex. */
  boolean junction(int v) {
    int seams = start[v + 1] - start[v];
    return seams != 0 && seams != 2;
  }

  List<SeamLine> all() {
    return List.copyOf(lines);
  }

  int[] junctions() {
    int n = 0;
    int[] out = new int[start.length - 1];
    for (int v = 0; v < out.length; v++) {
      if (junction(v)) {
        out[n++] = v;
      }
    }
    return Arrays.copyOf(out, n);
  }

  private void walk(int from, int first) {
    if (used[first]) {
      return;
    }
    IntQueue line = new IntQueue(64);
    int at = from;
    int e = first;
    while (e >= 0) {
      used[e] = true;
      line.add(at);
      at = edges.low[e] == at ? edges.high[e] : edges.low[e];
      e =
          at == from || junction(at)
              ? -1
              : seamAt[start[at]] == e ? seamAt[start[at] + 1] : seamAt[start[at]];
    }
    boolean closed = at == from && !junction(from);
    if (!closed) {
      line.add(at);
    }
    int[] vertices = new int[line.size()];
    for (int i = 0; i < vertices.length; i++) {
      vertices[i] = line.take();
    }
    boolean rising = edges.low[first] == from;
    int left = tiling.label[rising ? edges.left[first] : edges.right[first]];
    int right = tiling.label[rising ? edges.right[first] : edges.left[first]];
    lines.add(new SeamLine(vertices, closed, left, right));
  }
}
