package org.castwright.repair;

/**
 * Short segments and nearest distances against the triangles of a tree. Not for several threads.
 */
final class SurfaceQueries {

  private final TriangleTree tree;
  private final int[] stack;
  private final double[] box = new double[6];

  SurfaceQueries(TriangleTree tree) {
    this.tree = tree;
    this.stack = new int[4 * (tree.depth() + 2)];
  }

  /**
   * Where a segment meets the triangles, as shares of its length.
   *
   * @param hits receives the first of them, unsorted
   * @return how many there are, also beyond the room in {@code hits}
   */
  int hits(double[] p, double[] q, double[] hits) {
    for (int k = 0; k < 3; k++) {
      box[k] = Math.min(p[k], q[k]);
      box[3 + k] = Math.max(p[k], q[k]);
    }
    int n = 0;
    int depth = push(0, 0, 0, tree.size(), 0);
    while (depth > 0) {
      int level = stack[--depth];
      int to = stack[--depth];
      int from = stack[--depth];
      int node = stack[--depth];
      if (!tree.overlaps(node, box)) {
        continue;
      }
      if (!tree.isLeaf(level)) {
        int cut = TriangleTree.cut(from, to);
        depth = push(depth, 2 * node + 2, cut, to, level + 1);
        depth = push(depth, 2 * node + 1, from, cut, level + 1);
        continue;
      }
      for (int i = from; i < to; i++) {
        double t = hit(tree.order[i], p, q);
        if (t >= 0) {
          if (n < hits.length) {
            hits[n] = t;
          }
          n++;
        }
      }
    }
    return n;
  }

  /** T. Möller, B. Trumbore, Fast, minimum storage ray-triangle intersection, 1997; -1 if none. */
  private double hit(int f, double[] p, double[] q) {
    double[] x = tree.xyz;
    int a = 3 * tree.tri[3 * f];
    int b = 3 * tree.tri[3 * f + 1];
    int c = 3 * tree.tri[3 * f + 2];
    double ux = x[b] - x[a];
    double uy = x[b + 1] - x[a + 1];
    double uz = x[b + 2] - x[a + 2];
    double vx = x[c] - x[a];
    double vy = x[c + 1] - x[a + 1];
    double vz = x[c + 2] - x[a + 2];
    double dx = q[0] - p[0];
    double dy = q[1] - p[1];
    double dz = q[2] - p[2];
    double hx = dy * vz - dz * vy;
    double hy = dz * vx - dx * vz;
    double hz = dx * vy - dy * vx;
    double det = ux * hx + uy * hy + uz * hz;
    if (det == 0) {
      return -1;
    }
    double sx = p[0] - x[a];
    double sy = p[1] - x[a + 1];
    double sz = p[2] - x[a + 2];
    double u = (sx * hx + sy * hy + sz * hz) / det;
    double gx = sy * uz - sz * uy;
    double gy = sz * ux - sx * uz;
    double gz = sx * uy - sy * ux;
    double v = (dx * gx + dy * gy + dz * gz) / det;
    double t = (vx * gx + vy * gy + vz * gz) / det;
    return u >= 0 && v >= 0 && u + v <= 1 && t >= 0 && t <= 1 ? t : -1;
  }

  /** The distance from a point to the nearest triangle, or {@code limit} if none is nearer. */
  double distance(double x, double y, double z, double limit) {
    double best = limit * limit;
    int depth = push(0, 0, 0, tree.size(), 0);
    while (depth > 0) {
      int level = stack[--depth];
      int to = stack[--depth];
      int from = stack[--depth];
      int node = stack[--depth];
      if (tree.squareDistance(node, x, y, z) >= best) {
        continue;
      }
      if (!tree.isLeaf(level)) {
        int cut = TriangleTree.cut(from, to);
        int left = 2 * node + 1;
        boolean leftFirst =
            tree.squareDistance(left, x, y, z) <= tree.squareDistance(left + 1, x, y, z);
        if (leftFirst) {
          depth = push(depth, left + 1, cut, to, level + 1);
          depth = push(depth, left, from, cut, level + 1);
        } else {
          depth = push(depth, left, from, cut, level + 1);
          depth = push(depth, left + 1, cut, to, level + 1);
        }
        continue;
      }
      for (int i = from; i < to; i++) {
        best = Math.min(best, squareToTriangle(tree.order[i], x, y, z));
      }
    }
    return Math.sqrt(best);
  }

  private double squareToTriangle(int f, double px, double py, double pz) {
    double[] x = tree.xyz;
    int a = 3 * tree.tri[3 * f];
    int b = 3 * tree.tri[3 * f + 1];
    int c = 3 * tree.tri[3 * f + 2];
    double ux = x[b] - x[a];
    double uy = x[b + 1] - x[a + 1];
    double uz = x[b + 2] - x[a + 2];
    double vx = x[c] - x[a];
    double vy = x[c + 1] - x[a + 1];
    double vz = x[c + 2] - x[a + 2];
    double wx = px - x[a];
    double wy = py - x[a + 1];
    double wz = pz - x[a + 2];
    double uu = ux * ux + uy * uy + uz * uz;
    double uv = ux * vx + uy * vy + uz * vz;
    double vv = vx * vx + vy * vy + vz * vz;
    double wu = wx * ux + wy * uy + wz * uz;
    double wv = wx * vx + wy * vy + wz * vz;
    double det = uu * vv - uv * uv;
    double s = vv * wu - uv * wv;
    double t = uu * wv - uv * wu;
    if (det > 0 && s >= 0 && t >= 0 && s + t <= det) {
      double rx = wx - (s * ux + t * vx) / det;
      double ry = wy - (s * uy + t * vy) / det;
      double rz = wz - (s * uz + t * vz) / det;
      return rx * rx + ry * ry + rz * rz;
    }
    return Math.min(
        squareToSide(a, b, px, py, pz),
        Math.min(squareToSide(b, c, px, py, pz), squareToSide(c, a, px, py, pz)));
  }

  private double squareToSide(int a, int b, double px, double py, double pz) {
    double[] x = tree.xyz;
    double ux = x[b] - x[a];
    double uy = x[b + 1] - x[a + 1];
    double uz = x[b + 2] - x[a + 2];
    double wx = px - x[a];
    double wy = py - x[a + 1];
    double wz = pz - x[a + 2];
    double uu = ux * ux + uy * uy + uz * uz;
    double along = wx * ux + wy * uy + wz * uz;
    double t = uu > 0 ? Math.max(0, Math.min(1, along / uu)) : 0;
    double rx = wx - t * ux;
    double ry = wy - t * uy;
    double rz = wz - t * uz;
    return rx * rx + ry * ry + rz * rz;
  }

  private int push(int depth, int node, int from, int to, int level) {
    stack[depth] = node;
    stack[depth + 1] = from;
    stack[depth + 2] = to;
    stack[depth + 3] = level;
    return depth + 4;
  }
}
