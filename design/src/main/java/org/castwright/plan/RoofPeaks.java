package org.castwright.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Where air stays when a cavity is filled: the local maxima of its roof in the pour position. By
 * the model of Bose and Toussaint (Geometric and computational aspects of gravity casting, CAD
 * 27(6), 1995) air leaves only upward, so each maximum needs an opening. A maximum of the surface
 * counts when the casting lies below it; its persistence is how far the surface must fall before it
 * joins a higher one (the join tree of Carr, Snoeyink and Axen, CGTA 24, 2003, on the mesh's
 * edges).
 */
final class RoofPeaks {

  /** Air pockets that drain with less fall than this, mm, are shaken out; common practice. */
  private static final double LEAST_PERSISTENCE = 0.5;

  /** The same as a share of the casting's longest side. */
  private static final double SHARE = 0.003;

  private RoofPeaks() {}

  /**
   * @param vertex index in the mesh
   * @param point its place
   * @param persistence mm; infinite for the highest of all
   */
  record Peak(int vertex, Vec3 point, double persistence) {}

  /** Persistence from which a peak of a casting counts, mm: pockets shallower are shaken out. */
  static double least(TriMesh casting) {
    return Math.max(LEAST_PERSISTENCE, SHARE * casting.bounds().longestSide());
  }

  /**
   * The peaks of {@code mesh} along a coordinate axis.
   *
   * @param axis 0, 1 or 2
   * @param sign 1 when up is the axis, -1 when up is against it
   * @param least persistence below which a peak is left out, mm
   * @return highest first
   */
  static List<Peak> of(TriMesh mesh, int axis, int sign, double least) {
    int n = mesh.vertexCount();
    double[] height = new double[n];
    for (int v = 0; v < n; v++) {
      height[v] = sign * mesh.xyz()[3 * v + axis];
    }
    int[] order = descending(height);
    int[] rank = new int[n];
    for (int i = 0; i < n; i++) {
      rank[order[i]] = i;
    }
    int[] start = new int[n + 2];
    int[] near = neighbors(mesh, start);
    int[] parent = new int[n];
    Arrays.fill(parent, -1);
    double[] persistence = new double[n];
    for (int v : order) {
      parent[v] = v;
      for (int k = start[v]; k < start[v + 1]; k++) {
        int w = near[k];
        if (parent[w] < 0) {
          continue;
        }
        join(find(parent, v), find(parent, w), parent, rank, persistence, height, height[v]);
      }
    }
    return collect(mesh, axis, sign, least, order, parent, persistence, start);
  }

  private static void join(
      int a, int b, int[] parent, int[] rank, double[] persistence, double[] height, double at) {
    if (a == b) {
      return;
    }
    int high = rank[a] < rank[b] ? a : b;
    int low = high == a ? b : a;
    parent[low] = high;
    persistence[low] = height[low] - at;
  }

  private static List<Peak> collect(
      TriMesh mesh,
      int axis,
      int sign,
      double least,
      int[] order,
      int[] parent,
      double[] persistence,
      int[] start) {
    double[] facing = facing(mesh, axis, sign);
    List<Peak> peaks = new ArrayList<>();
    for (int v : order) {
      boolean used = start[v + 1] > start[v];
      double p = parent[v] == v ? Double.POSITIVE_INFINITY : persistence[v];
      if (used && p >= least && facing[v] > 0) {
        peaks.add(new Peak(v, mesh.vertex(v), p));
      }
    }
    return peaks;
  }

  /** Sum over the facets at each vertex of the area seen from above minus that seen from below. */
  private static double[] facing(TriMesh mesh, int axis, int sign) {
    double[] sum = new double[mesh.vertexCount()];
    for (int f = 0; f < mesh.triangleCount(); f++) {
      Vec3 a = mesh.areaVector(f);
      double up = sign * (axis == 0 ? a.x() : axis == 1 ? a.y() : a.z());
      for (int k = 0; k < 3; k++) {
        sum[mesh.tri()[3 * f + k]] += up;
      }
    }
    return sum;
  }

  private static int find(int[] parent, int v) {
    int root = v;
    while (parent[root] != root) {
      root = parent[root];
    }
    while (parent[v] != root) {
      int next = parent[v];
      parent[v] = root;
      v = next;
    }
    return root;
  }

  /** Vertex neighbors in compressed rows; a neighbor may stand twice. */
  private static int[] neighbors(TriMesh mesh, int[] start) {
    int[] t = mesh.tri();
    for (int v : t) {
      start[v + 2] += 2;
    }
    for (int v = 2; v < start.length; v++) {
      start[v] += start[v - 1];
    }
    int[] near = new int[2 * t.length];
    for (int f = 0; f < t.length; f += 3) {
      for (int k = 0; k < 3; k++) {
        int v = t[f + k];
        near[start[v + 1]++] = t[f + (k + 1) % 3];
        near[start[v + 1]++] = t[f + (k + 2) % 3];
      }
    }
    return near;
  }

  /** Vertex indices from high to low; equal heights by index. */
  private static int[] descending(double[] height) {
    long[] keys = new long[height.length];
    for (int v = 0; v < height.length; v++) {
      int bits = Float.floatToIntBits((float) -height[v] + 0f);
      int ordered = bits ^ ((bits >> 31) & Integer.MAX_VALUE);
      keys[v] = ((long) ordered << 32) | v;
    }
    Arrays.sort(keys);
    int[] order = new int[keys.length];
    for (int i = 0; i < order.length; i++) {
      order[i] = (int) keys[i];
    }
    return order;
  }
}
