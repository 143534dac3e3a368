package org.castwright.repair;

import java.util.concurrent.RecursiveAction;
import org.castwright.mesh.TriMesh;

/**
 * A tree of boxes over the triangles of a mesh, halved at the median along the longest side. Nodes
 * are numbered so that node {@code i} has children {@code 2i+1} and {@code 2i+2}; the triangles of
 * a node are a run of {@link #order}. Built on all cores, always the same way.
 */
final class TriangleTree {

  private static final int LEAF = 4;

  /** Runs of fewer triangles are not worth a task of their own. */
  private static final int TASK = 20_000;

  final double[] xyz;
  final int[] tri;

  /** Triangles in the order of the leaves. */
  final int[] order;

  private final double[] centers;
  private final double[] boxes;
  private final int depth;

  TriangleTree(TriMesh mesh) {
    xyz = mesh.xyz();
    tri = mesh.tri();
    int n = mesh.triangleCount();
    order = new int[n];
    centers = new double[3 * n];
    for (int f = 0; f < n; f++) {
      order[f] = f;
      for (int k = 0; k < 3; k++) {
        centers[3 * f + k] = middle(f, k);
      }
    }
    int levels = 0;
    while ((long) LEAF << levels < n) {
      levels++;
    }
    depth = levels;
    boxes = new double[6 * nodeCount()];
    new Build(0, 0, n, 0).invoke();
  }

  int nodeCount() {
    return (1 << (depth + 1)) - 1;
  }

  int size() {
    return order.length;
  }

  /** Whether a node at the given level has no children. */
  boolean isLeaf(int level) {
    return level == depth;
  }

  int depth() {
    return depth;
  }

  /** Where the run of a node is cut between its children. */
  static int cut(int from, int to) {
    return (from + to + 1) >>> 1;
  }

  /** The low (k 0..2) or high (k 3..5) bound of a node's box. */
  double bound(int node, int k) {
    return boxes[6 * node + k];
  }

  boolean overlaps(int node, double[] box) {
    int b = 6 * node;
    return boxes[b] <= box[3]
        && boxes[b + 3] >= box[0]
        && boxes[b + 1] <= box[4]
        && boxes[b + 4] >= box[1]
        && boxes[b + 2] <= box[5]
        && boxes[b + 5] >= box[2];
  }

  /** The square of the distance from a point to a node's box, mm². */
  double squareDistance(int node, double x, double y, double z) {
    double dx = outside(x, boxes[6 * node], boxes[6 * node + 3]);
    double dy = outside(y, boxes[6 * node + 1], boxes[6 * node + 4]);
    double dz = outside(z, boxes[6 * node + 2], boxes[6 * node + 5]);
    return dx * dx + dy * dy + dz * dz;
  }

  private static double outside(double v, double lo, double hi) {
    return v < lo ? lo - v : v > hi ? v - hi : 0;
  }

  private double middle(int f, int k) {
    double a = xyz[3 * tri[3 * f] + k];
    double b = xyz[3 * tri[3 * f + 1] + k];
    double c = xyz[3 * tri[3 * f + 2] + k];
    return (Math.min(a, Math.min(b, c)) + Math.max(a, Math.max(b, c))) / 2;
  }

  /** Writes the box of triangle {@code f}. */
  void boxOf(int f, double[] box) {
    for (int k = 0; k < 3; k++) {
      double a = xyz[3 * tri[3 * f] + k];
      double b = xyz[3 * tri[3 * f + 1] + k];
      double c = xyz[3 * tri[3 * f + 2] + k];
      box[k] = Math.min(a, Math.min(b, c));
      box[3 + k] = Math.max(a, Math.max(b, c));
    }
  }

  /** Builds the subtree of one node over its run of triangles. */
  private final class Build extends RecursiveAction {

    private static final long serialVersionUID = 1;

    private final int node;
    private final int from;
    private final int to;
    private final int level;

    Build(int node, int from, int to, int level) {
      this.node = node;
      this.from = from;
      this.to = to;
      this.level = level;
    }

    @Override
    protected void compute() {
      if (isLeaf(level)) {
        leafBox();
        return;
      }
      int mid = cut(from, to);
      if (to - from > 1) {
        select(longestAxis(), from, to - 1, mid);
      }
      Build left = new Build(2 * node + 1, from, mid, level + 1);
      Build right = new Build(2 * node + 2, mid, to, level + 1);
      if (to - from > TASK) {
        invokeAll(left, right);
      } else {
        left.compute();
        right.compute();
      }
      for (int k = 0; k < 3; k++) {
        int a = 6 * left.node + k;
        int b = 6 * right.node + k;
        boxes[6 * node + k] = Math.min(boxes[a], boxes[b]);
        boxes[6 * node + 3 + k] = Math.max(boxes[a + 3], boxes[b + 3]);
      }
    }

    private void leafBox() {
      double[] box = new double[6];
      for (int k = 0; k < 3; k++) {
        boxes[6 * node + k] = Double.POSITIVE_INFINITY;
        boxes[6 * node + 3 + k] = Double.NEGATIVE_INFINITY;
      }
      for (int i = from; i < to; i++) {
        boxOf(order[i], box);
        for (int k = 0; k < 3; k++) {
          boxes[6 * node + k] = Math.min(boxes[6 * node + k], box[k]);
          boxes[6 * node + 3 + k] = Math.max(boxes[6 * node + 3 + k], box[3 + k]);
        }
      }
    }

    private int longestAxis() {
      int axis = 0;
      double longest = -1;
      for (int k = 0; k < 3; k++) {
        double lo = Double.POSITIVE_INFINITY;
        double hi = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
          double c = centers[3 * order[i] + k];
          lo = Math.min(lo, c);
          hi = Math.max(hi, c);
        }
        if (hi - lo > longest) {
          longest = hi - lo;
          axis = k;
        }
      }
      return axis;
    }

    /** Hoare's selection: puts the run so that what is before {@code mid} is not larger. */
    private void select(int axis, int first, int last, int mid) {
      int lo = first;
      int hi = last;
      while (lo < hi) {
        double pivot = centers[3 * order[(lo + hi) >>> 1] + axis];
        int i = lo;
        int j = hi;
        while (i <= j) {
          while (centers[3 * order[i] + axis] < pivot) {
            i++;
          }
          while (centers[3 * order[j] + axis] > pivot) {
            j--;
          }
          if (i <= j) {
            int t = order[i];
            order[i++] = order[j];
            order[j--] = t;
          }
        }
        if (mid <= j) {
          hi = j;
        } else if (mid >= i) {
          lo = i;
        } else {
          return;
        }
      }
    }
  }
}
