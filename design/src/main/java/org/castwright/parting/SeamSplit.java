package org.castwright.parting;

import org.castwright.mesh.TriMesh;

/** Splits long seam edges, in the facets on both sides, so the sheet beside them can be fine. */
final class SeamSplit {

  private final TriMesh mesh;
  private final EdgeMap pieces;
  private final EdgeMap firstPoint;
  private final DoubleList added = new DoubleList();

  private SeamSplit(Seam seam, double longestMm) {
    mesh = seam.casting.mesh();
    pieces = new EdgeMap(seam.size());
    firstPoint = new EdgeMap(seam.size());
    double[] v = mesh.xyz();
    for (int e = 0; e < seam.size(); e++) {
      int a = Math.min(seam.from[e], seam.to[e]);
      int b = Math.max(seam.from[e], seam.to[e]);
      double l = Math.hypot(v[3 * a] - v[3 * b], v[3 * a + 1] - v[3 * b + 1]);
      int n = (int) Math.ceil(l / longestMm);
      if (n < 2) {
        continue;
      }
      pieces.put(EdgeMap.directed(a, b), n);
      firstPoint.put(EdgeMap.directed(a, b), mesh.vertexCount() + added.size() / 3);
      for (int i = 1; i < n; i++) {
        for (int k = 0; k < 3; k++) {
          added.add((float) (v[3 * a + k] + (v[3 * b + k] - v[3 * a + k]) * i / n));
        }
      }
    }
  }

  /** The seam with no edge longer in plan than given; the same seam if none is. */
  static Seam of(Seam seam, double longestMm) {
    SeamSplit split = new SeamSplit(seam, longestMm);
    return split.added.size() == 0 ? seam : Seam.of(split.apply(seam.casting.side()));
  }

  private Labeled apply(byte[] side) {
    MeshEdit edit = new MeshEdit(mesh, added);
    int[] tri = mesh.tri();
    for (int f = 0; f < side.length; f++) {
      facet(edit, tri[3 * f], tri[3 * f + 1], tri[3 * f + 2], side[f]);
    }
    return edit.result();
  }

  /** Fans the facet from the corner opposite to its first split edge, and so on within the fan. */
  private void facet(MeshEdit edit, int a, int b, int c, byte side) {
    if (pieces.has(EdgeMap.both(a, b))) {
      fan(edit, a, b, c, side);
    } else if (pieces.has(EdgeMap.both(b, c))) {
      fan(edit, b, c, a, side);
    } else if (pieces.has(EdgeMap.both(c, a))) {
      fan(edit, c, a, b, side);
    } else {
      edit.facet(a, b, c, side);
    }
  }

  private void fan(MeshEdit edit, int a, int b, int apex, byte side) {
    long key = EdgeMap.both(a, b);
    int n = pieces.get(key);
    int first = firstPoint.get(key);
    int last = a;
    for (int i = 1; i <= n; i++) {
      int p = i == n ? b : a < b ? first + i - 1 : first + n - 1 - i;
      facet(edit, last, p, apex, side);
      last = p;
    }
  }
}
