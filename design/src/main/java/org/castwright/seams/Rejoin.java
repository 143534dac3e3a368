package org.castwright.seams;

import java.util.Arrays;
import org.castwright.mesh.IntList;
import org.castwright.mesh.TriMesh;

/**
 * Takes back the splits that served only the search: a facet of the casting that went to one piece
 * becomes whole again, but for points on its border that a divided neighbor needs. Facets that a
 * seam divides stay as they are.
 */
final class Rejoin {

  private final TriMesh casting;
  private final Tiling tiling;
  private final SurfaceEdges edges;
  private final boolean[] divided;
  private final int[] firstChild;
  private final IntList tri = new IntList();
  private final Rows rows;

  private Rejoin(TriMesh casting, Tiling tiling, SurfaceEdges edges) {
    this.casting = casting;
    this.tiling = tiling;
    this.edges = edges;
    divided = new boolean[casting.triangleCount()];
    firstChild = new int[casting.triangleCount()];
    rows = new Rows(tiling.parent.length);
    Arrays.fill(firstChild, -1);
    for (int f = 0; f < tiling.parent.length; f++) {
      int p = tiling.parent[f];
      if (firstChild[p] < 0) {
        firstChild[p] = f;
      }
      divided[p] |= tiling.label[f] != tiling.label[firstChild[p]];
    }
  }

  /** The tiling with all facets rejoined that no seam divides. */
  static Tiling of(TriMesh casting, Tiling tiling, SurfaceEdges edges) {
    Rejoin r = new Rejoin(casting, tiling, edges);
    r.keepDivided();
    int[] side = r.sides();
    for (int p = 0; p < r.divided.length; p++) {
      if (!r.divided[p]) {
        r.whole(p, side);
      }
    }
    return r.compact();
  }

  private void keepDivided() {
    int[] old = tiling.mesh.tri();
    for (int f = 0; f < tiling.parent.length; f++) {
      if (divided[tiling.parent[f]]) {
        add(old[3 * f], old[3 * f + 1], old[3 * f + 2], tiling.parent[f], tiling.label[f]);
      }
    }
  }

  /**
   * For each corner of the casting, as 3 * facet + k, a corner of the tiling at the same vertex
   * from which a side runs along the border of the casting's facet.
   */
  private int[] sides() {
    int[] tris = tiling.mesh.tri();
    int[] side = new int[3 * divided.length];
    for (int c = 0; c < tris.length; c++) {
      int p = tiling.parent[c / 3];
      if (!border(c)) {
        continue;
      }
      for (int k = 0; k < 3; k++) {
        if (casting.tri()[3 * p + k] == tris[c]) {
          side[3 * p + k] = c;
        }
      }
    }
    return side;
  }

  private boolean border(int corner) {
    int across = edges.across(edges.of[corner], corner / 3);
    return tiling.parent[across] != tiling.parent[corner / 3];
  }

  private void whole(int p, int[] side) {
    int[][] on = new int[3][];
    for (int k = 0; k < 3; k++) {
      on[k] = between(side[3 * p + k], casting.tri()[3 * p + (k + 1) % 3]);
    }
    int turn = 0;
    for (int k = 1; k < 3; k++) {
      turn = on[k].length > on[turn].length ? k : turn;
    }
    int a = casting.tri()[3 * p + turn];
    int b = casting.tri()[3 * p + (turn + 1) % 3];
    int c = casting.tri()[3 * p + (turn + 2) % 3];
    int[] ab = on[turn];
    int[] bc = on[(turn + 1) % 3];
    int[] ca = on[(turn + 2) % 3];
    byte label = tiling.label[firstChild[p]];
    if (ab.length == 0) {
      add(a, b, c, p, label);
      return;
    }
    int last = ab[ab.length - 1];
    fan(ab[0], c, ca, a, p, label);
    for (int i = 1; i < ab.length; i++) {
      add(ab[i - 1], ab[i], c, p, label);
    }
    fan(last, b, bc, c, p, label);
  }

  /** Triangles from an apex to each part of the side from one point over others to another. */
  private void fan(int apex, int from, int[] over, int to, int p, byte label) {
    int at = from;
    for (int v : over) {
      add(apex, at, v, p, label);
      at = v;
    }
    add(apex, at, to, p, label);
  }

  /**
   * The points a divided neighbor needs on a side of a facet, from its first corner to its next.
   */
  private int[] between(int first, int end) {
    int[] tris = tiling.mesh.tri();
    IntList found = new IntList();
    int c = first;
    while (tris[SurfaceEdges.next(c)] != end) {
      int v = tris[SurfaceEdges.next(c)];
      int across = edges.across(edges.of[c], c / 3);
      if (divided[tiling.parent[across]]) {
        found.add(v);
      }
      c = SurfaceEdges.next(c);
      while (!border(c)) {
        c = around(c);
      }
    }
    return found.toArray();
  }

  /** From a side that starts at a vertex to the next such side, turning about the vertex. */
  private int around(int c) {
    int v = tiling.mesh.tri()[c];
    int g = edges.across(edges.of[c], c / 3);
    int d = 3 * g;
    while (tiling.mesh.tri()[d] != v) {
      d++;
    }
    return d;
  }

  private void add(int a, int b, int c, int p, byte label) {
    tri.add(a);
    tri.add(b);
    tri.add(c);
    rows.add(p, label);
  }

  private Tiling compact() {
    int[] corners = tri.toArray();
    int[] number = new int[tiling.mesh.vertexCount()];
    for (int v : corners) {
      number[v] = 1;
    }
    double[] old = tiling.mesh.xyz();
    double[] xyz = new double[old.length];
    int n = 0;
    for (int v = 0; v < number.length; v++) {
      if (number[v] == 1) {
        System.arraycopy(old, 3 * v, xyz, 3 * n, 3);
        number[v] = n++;
      }
    }
    for (int i = 0; i < corners.length; i++) {
      corners[i] = number[corners[i]];
    }
    return new Tiling(
        new TriMesh(Arrays.copyOf(xyz, 3 * n), corners), rows.parents(), rows.labels());
  }
}
