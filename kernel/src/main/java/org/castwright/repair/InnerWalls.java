package org.castwright.repair;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.castwright.mesh.TriMesh;

/**
 * Drops sheets of no thickness that hang on a body: a wall inside it, a fin outside. Such a sheet
 * meets the rest in edges with an odd number of triangles, three or more, which no closed body has.
 * Of the pieces whose every edge is such an edge or an open one, the smallest go first, since the
 * wall inside a body is smaller than what lies to either side.
 */
final class InnerWalls {

  /** How often to look again; each look drops every sheet that does not touch another. */
  private static final int LOOKS = 50;

  private InnerWalls() {}

  static void apply(Draft draft) {
    int triangles = 0;
    int sheets = 0;
    TriMesh mesh = draft.mesh();
    for (int look = 0; look < LOOKS; look++) {
      EdgeTable edges = new EdgeTable(mesh.tri(), mesh.vertexCount());
      Patches patches = Patches.of(mesh, edges);
      boolean[] drop = choose(mesh, edges, patches);
      if (drop == null) {
        break;
      }
      boolean[] kept = new boolean[mesh.triangleCount()];
      for (int f = 0; f < kept.length; f++) {
        kept[f] = !drop[patches.patchOf(f)];
        triangles += kept[f] ? 0 : 1;
      }
      for (boolean d : drop) {
        sheets += d ? 1 : 0;
      }
      mesh = Draft.keep(mesh, kept);
    }
    if (sheets > 0) {
      String words =
          Draft.many(sheets, "wall or fin", "walls or fins")
              + " of no thickness dropped, "
              + Draft.many(triangles, "triangle", "triangles");
      draft.replace(mesh, new HealingStep("drop-walls", words, sheets, 0));
    }
  }

  /** The patches to drop now; null if there is none. */
  private static boolean[] choose(TriMesh mesh, EdgeTable edges, Patches patches) {
    boolean[] oddEdge = new boolean[edges.count()];
    boolean[] touchesOdd = new boolean[patches.count()];
    boolean[] barred = new boolean[patches.count()];
    boolean any = false;
    for (int e = 0; e < edges.count(); e++) {
      int size = edges.size(e);
      oddEdge[e] = size > 2 && size % 2 == 1;
      any |= oddEdge[e];
      for (int i = 0; i < size && size > 2; i++) {
        int p = patches.patchOf(edges.half(e, i) / 3);
        touchesOdd[p] |= oddEdge[e];
        barred[p] |= !oddEdge[e];
      }
    }
    if (!any) {
      return null;
    }
    double[] area = new double[patches.count()];
    for (int f = 0; f < mesh.triangleCount(); f++) {
      area[patches.patchOf(f)] += mesh.areaVector(f).length();
    }
    int[] order =
        IntStream.range(0, area.length)
            .filter(p -> touchesOdd[p] && !barred[p])
            .boxed()
            .sorted((p, q) -> Double.compare(area[p], area[q]))
            .mapToInt(p -> p)
            .toArray();
    return pick(edges, patches, oddEdge, order);
  }

  /** Takes patches in order, each only if no patch taken before shares an odd edge with it. */
  private static boolean[] pick(EdgeTable edges, Patches patches, boolean[] oddEdge, int[] order) {
    int[] rank = new int[patches.count()];
    Arrays.fill(rank, Integer.MAX_VALUE);
    for (int i = 0; i < order.length; i++) {
      rank[order[i]] = i;
    }
    boolean[] beaten = new boolean[patches.count()];
    for (int e = 0; e < oddEdge.length; e++) {
      if (!oddEdge[e]) {
        continue;
      }
      int first = patches.patchOf(edges.half(e, 0) / 3);
      for (int i = 1; i < edges.size(e); i++) {
        int p = patches.patchOf(edges.half(e, i) / 3);
        boolean wins = rank[p] < rank[first];
        beaten[wins ? first : p] |= p != first;
        first = wins ? p : first;
      }
    }
    boolean[] drop = new boolean[patches.count()];
    boolean any = false;
    for (int p : order) {
      drop[p] = !beaten[p];
      any |= drop[p];
    }
    return any ? drop : null;
  }
}
