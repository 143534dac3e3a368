package org.castwright.proof;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * A tree of boxes over the triangles of a mesh, for closest points. Split at the median of the
 * longest side of the box of centers. Safe to read from several threads.
 */
final class Bvh {

  private static final int LEAF = 4;
  private static final int DEPTH = 64;

  private final double[] xyz;
  private final int[] tri;
  private final int[] order;
  private final double[] center;

  /** Six numbers a node: min x, y, z, max x, y, z. */
  private final double[] box;

  /** Second child of an inner node (the first follows its parent); zero for a leaf. */
  private final int[] second;

  private final int[] from;
  private final int[] to;
  private int nodes;

  Bvh(TriMesh mesh) {
    xyz = mesh.xyz();
    tri = mesh.tri();
    int n = mesh.triangleCount();
    order = new int[n];
    center = new double[3 * n];
    for (int f = 0; f < n; f++) {
      order[f] = f;
      for (int k = 0; k < 3; k++) {
        center[3 * f + k] = corner(f, 0, k) + corner(f, 1, k) + corner(f, 2, k);
      }
    }
    int most = Math.max(1, n);
    box = new double[6 * 2 * most];
    second = new int[2 * most];
    from = new int[2 * most];
    to = new int[2 * most];
    if (n > 0) {
      build(0, n);
    }
  }

  /** The closest point of a mesh to a point. */
  record Closest(double distance, int face, Vec3 point) {}

  private double corner(int f, int c, int k) {
    return xyz[3 * tri[3 * f + c] + k];
  }

  private int build(int lo, int hi) {
    int node = nodes++;
    from[node] = lo;
    to[node] = hi;
    fit(node, lo, hi);
    if (hi - lo > LEAF) {
      int mid = (lo + hi) >>> 1;
      select(lo, hi - 1, mid, longestAxis(lo, hi));
      build(lo, mid);
      second[node] = build(mid, hi);
    }
    return node;
  }

  private void fit(int node, int lo, int hi) {
    for (int k = 0; k < 3; k++) {
      double min = Double.POSITIVE_INFINITY;
      double max = Double.NEGATIVE_INFINITY;
      for (int i = lo; i < hi; i++) {
        for (int c = 0; c < 3; c++) {
          double x = corner(order[i], c, k);
          min = Math.min(min, x);
          max = Math.max(max, x);
        }
      }
      box[6 * node + k] = min;
      box[6 * node + 3 + k] = max;
    }
  }

  private int longestAxis(int lo, int hi) {
    int best = 0;
    double longest = -1;
    for (int k = 0; k < 3; k++) {
      double min = Double.POSITIVE_INFINITY;
      double max = Double.NEGATIVE_INFINITY;
      for (int i = lo; i < hi; i++) {
        double x = center[3 * order[i] + k];
        min = Math.min(min, x);
        max = Math.max(max, x);
      }
      if (max - min > longest) {
        longest = max - min;
        best = k;
      }
    }
    return best;
  }

  /** Hoare's selection: afterwards nothing before {@code nth} is above it, nothing after below. */
  private void select(int first, int last, int nth, int axis) {
    int lo = first;
    int hi = last;
    while (lo < hi) {
      double pivot = center[3 * order[(lo + hi) >>> 1] + axis];
      int i = lo;
      int j = hi;
      while (i <= j) {
        while (center[3 * order[i] + axis] < pivot) {
          i++;
        }
        while (center[3 * order[j] + axis] > pivot) {
          j--;
        }
        if (i <= j) {
          int t = order[i];
          order[i++] = order[j];
          order[j--] = t;
        }
      }
      if (nth <= j) {
        hi = j;
      } else if (nth >= i) {
        lo = i;
      } else {
        return;
      }
    }
  }

  /** The closest point of the mesh; the mesh has at least one triangle. */
  Closest closest(Vec3 p) {
    ClosestOnTriangle measure = closest(p, Double.POSITIVE_INFINITY);
    return new Closest(Math.sqrt(measure.squared()), measure.face(), measure.point());
  }

  /** Whether the mesh comes closer to a point than {@code distance}. */
  boolean within(Vec3 p, double distance) {
    return nodes > 0 && closest(p, distance * distance).face() >= 0;
  }

  private ClosestOnTriangle closest(Vec3 p, double squaredLimit) {
    ClosestOnTriangle measure = new ClosestOnTriangle(xyz, tri, p, squaredLimit);
    int[] stack = new int[DEPTH];
    int top = 0;
    stack[top++] = 0;
    while (top > 0) {
      int node = stack[--top];
      if (squaredToBox(node, p) >= measure.squared()) {
        continue;
      }
      if (second[node] == 0) {
        for (int i = from[node]; i < to[node]; i++) {
          measure.to(order[i]);
        }
        continue;
      }
      int near = node + 1;
      int far = second[node];
      if (squaredToBox(far, p) < squaredToBox(near, p)) {
        near = second[node];
        far = node + 1;
      }
      stack[top++] = far;
      stack[top++] = near;
    }
    return measure;
  }

  /** The first triangle that a ray meets from behind, where it leaves the body. */
  RayExit exit(Vec3 start, Vec3 direction) {
    RayExit ray = new RayExit(xyz, tri, start, direction);
    int[] stack = new int[DEPTH];
    int top = 0;
    if (nodes > 0) {
      stack[top++] = 0;
    }
    while (top > 0) {
      int node = stack[--top];
      if (ray.misses(box, 6 * node)) {
        continue;
      }
      if (second[node] == 0) {
        for (int i = from[node]; i < to[node]; i++) {
          ray.to(order[i]);
        }
        continue;
      }
      stack[top++] = second[node];
      stack[top++] = node + 1;
    }
    return ray;
  }

  private double squaredToBox(int node, Vec3 p) {
    double dx = outside(box[6 * node], p.x(), box[6 * node + 3]);
    double dy = outside(box[6 * node + 1], p.y(), box[6 * node + 4]);
    double dz = outside(box[6 * node + 2], p.z(), box[6 * node + 5]);
    return dx * dx + dy * dy + dz * dz;
  }

  private static double outside(double min, double x, double max) {
    return x < min ? min - x : x > max ? x - max : 0;
  }
}
