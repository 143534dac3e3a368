package org.castwright.parting;

import java.util.ArrayList;
import java.util.List;
import org.castwright.mesh.IntList;
import org.tinfour.common.IConstraint;
import org.tinfour.common.LinearConstraint;
import org.tinfour.common.Vertex;
import org.tinfour.common.VertexMergerGroup;
import org.tinfour.standard.IncrementalTin;
import org.tinfour.utils.TriangleCollector;

/**
 * A constrained Delaunay triangulation of points in the plane that keeps given edges. It is {@link
 * #complete} when every edge is there and no point was added or merged; only then may its triangles
 * be joined to anything by index.
 */
final class Triangulation {

  /** Edges in one constraint at most: short chains keep the insertion local. */
  private static final int CHAIN_EDGES = 400;

  /** Nominal distance of points, mm; the library derives its tolerances from it. */
  private static final double SPACING_MM = 1;

  /** Packed x y. */
  final double[] xy;

  /** Corners, counter-clockwise. */
  final int[] tri;

  /** For each corner the triangle across the edge to the next corner, or -1 at the hull. */
  final int[] across;

  private final EdgeMap corners;
  private final boolean whole;
  private int lost;

  /**
   * @param xy packed x y
   * @param edges pairs of point indices; each edge once
   */
  Triangulation(double[] xy, int[] edges) {
    this.xy = xy;
    IntList out = new IntList();
    whole = triangulate(xy, edges, out);
    tri = out.toArray();
    corners = new EdgeMap(tri.length);
    for (int c = 0; c < tri.length; c++) {
      corners.put(EdgeMap.directed(tri[c], tri[Neighbors.next(c)]), c);
    }
    across = new int[tri.length];
    for (int c = 0; c < tri.length; c++) {
      int mate = corners.get(EdgeMap.directed(tri[Neighbors.next(c)], tri[c]));
      across[c] = mate < 0 ? -1 : mate / 3;
    }
    for (int e = 0; e < edges.length; e += 2) {
      if (cornerOf(edges[e], edges[e + 1]) < 0 && cornerOf(edges[e + 1], edges[e]) < 0) {
        lost++;
      }
    }
  }

  /** Fills the corners of all triangles; false if points were added, merged or refused. */
  private static boolean triangulate(double[] xy, int[] edges, IntList out) {
    IncrementalTin tin = new IncrementalTin(SPACING_MM);
    List<Vertex> vertices = new ArrayList<>();
    for (int i = 0; i < xy.length / 2; i++) {
      vertices.add(new Vertex(xy[2 * i], xy[2 * i + 1], 0, i));
    }
    tin.add(new ArrayList<>(vertices), null);
    try {
      tin.addConstraints(chains(vertices, edges), false);
    } catch (RuntimeException e) {
      return false; // the library found no way to insert an edge and is no longer usable
    }
    boolean[] own = {true};
    TriangleCollector.visitTriangles(
        tin,
        t -> {
          int a = index(t[0]);
          int b = index(t[1]);
          int c = index(t[2]);
          if (a < 0 || b < 0 || c < 0) {
            own[0] = false;
            return;
          }
          boolean turned = Crossings.turn(xy, a, b, c) < 0;
          out.add(a);
          out.add(turned ? c : b);
          out.add(turned ? b : c);
        });
    tin.dispose();
    return own[0];
  }

  private static int index(Vertex v) {
    if (v instanceof VertexMergerGroup || v.isSynthetic()) {
      return -1;
    }
    return v.getIndex();
  }

  /** Whether every point is its own, none was added, and every edge asked for is there. */
  boolean complete() {
    return whole && lost == 0;
  }

  /** Whether every point is its own and none was added. */
  boolean whole() {
    return whole;
  }

  /** Edges asked for that are not there. */
  int lost() {
    return lost;
  }

  /** The corner at which a triangle runs from point a to point b, or -1. */
  int cornerOf(int a, int b) {
    return corners.get(EdgeMap.directed(a, b));
  }

  /** Joins edges to chains end to end. */
  private static List<IConstraint> chains(List<Vertex> vertices, int[] edges) {
    int n = vertices.size();
    int[] start = new int[n + 1];
    for (int p : edges) {
      start[p + 1]++;
    }
    for (int i = 0; i < n; i++) {
      start[i + 1] += start[i];
    }
    int[] next = start.clone();
    int[] edgeAt = new int[edges.length];
    for (int k = 0; k < edges.length; k++) {
      edgeAt[next[edges[k]]++] = k / 2;
    }
    boolean[] used = new boolean[edges.length / 2];
    List<IConstraint> out = new ArrayList<>();
    for (int e = 0; e < used.length; e++) {
      if (used[e]) {
        continue;
      }
      List<Vertex> chain = new ArrayList<>();
      chain.add(vertices.get(edges[2 * e]));
      int at = edges[2 * e];
      int step = e;
      while (step >= 0) {
        used[step] = true;
        at = edges[2 * step] == at ? edges[2 * step + 1] : edges[2 * step];
        chain.add(vertices.get(at));
        step =
            chain.size() > CHAIN_EDGES || at == edges[2 * e] ? -1 : unused(start, edgeAt, used, at);
      }
      LinearConstraint constraint = new LinearConstraint(chain);
      constraint.complete();
      out.add(constraint);
    }
    return out;
  }

  private static int unused(int[] start, int[] edgeAt, boolean[] used, int p) {
    for (int k = start[p]; k < start[p + 1]; k++) {
      if (!used[edgeAt[k]]) {
        return edgeAt[k];
      }
    }
    return -1;
  }
}
