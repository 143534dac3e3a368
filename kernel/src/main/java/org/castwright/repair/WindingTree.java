package org.castwright.repair;

import org.castwright.mesh.TriMesh;

/**
 * The generalized winding number of a mesh about any point: 1 inside a closed surface, 0 outside,
 * in between near holes (A. Jacobson, L. Kavan, O. Sorkine-Hornung, Robust inside-outside
 * segmentation using generalized winding numbers, 2013). Near triangles count by their solid angle
 * (A. van Oosterom, J. Strackee, 1983), far groups as one dipole (G. Barill et al., Fast winding
 * numbers for soups and clouds, 2018). Safe for several threads.
 */
final class WindingTree {

  /** A group farther off than this many of its radii is far; the value of Barill et al. */
  private static final double FAR = 2;

  private final TriangleTree tree;

  /** Of each node: the sum of area vectors, then the center of area, then the radius squared. */
  private final double[] moments;

  private static final int STRIDE = 7;

  WindingTree(TriMesh mesh) {
    this(new TriangleTree(mesh));
  }

  WindingTree(TriangleTree tree) {
    this.tree = tree;
    this.moments = new double[STRIDE * tree.nodeCount()];
    gather(0, 0, tree.size(), 0);
  }

  /** Fills the moments of a node; returns its area. */
  private double gather(int node, int from, int to, int level) {
    int m = STRIDE * node;
    double area = 0;
    if (tree.isLeaf(level)) {
      for (int i = from; i < to; i++) {
        area += addTriangle(m, tree.order[i]);
      }
    } else {
      int cut = TriangleTree.cut(from, to);
      double left = gather(2 * node + 1, from, cut, level + 1);
      double right = gather(2 * node + 2, cut, to, level + 1);
      area = left + right;
      for (int k = 0; k < 3; k++) {
        int a = STRIDE * (2 * node + 1) + k;
        int b = STRIDE * (2 * node + 2) + k;
        moments[m + k] = moments[a] + moments[b];
        moments[m + 3 + k] = left * moments[a + 3] + right * moments[b + 3];
      }
    }
    double square = 0;
    for (int k = 0; k < 3; k++) {
      double lo = tree.bound(node, k);
      double hi = tree.bound(node, 3 + k);
      double c = area > 0 ? moments[m + 3 + k] / area : (lo + hi) / 2;
      moments[m + 3 + k] = c;
      double reach = Math.max(c - lo, hi - c);
      square += reach * reach;
    }
    moments[m + 6] = square;
    return area;
  }

  private double addTriangle(int m, int f) {
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
    double nx = (uy * vz - uz * vy) / 2;
    double ny = (uz * vx - ux * vz) / 2;
    double nz = (ux * vy - uy * vx) / 2;
    double area = Math.sqrt(nx * nx + ny * ny + nz * nz);
    moments[m] += nx;
    moments[m + 1] += ny;
    moments[m + 2] += nz;
    for (int k = 0; k < 3; k++) {
      moments[m + 3 + k] += area * (x[a + k] + x[b + k] + x[c + k]) / 3;
    }
    return area;
  }

  double at(double x, double y, double z) {
    return sum(x, y, z, 0, 0, tree.size(), 0) / (4 * Math.PI);
  }

  private double sum(double x, double y, double z, int node, int from, int to, int level) {
    int m = STRIDE * node;
    double dx = moments[m + 3] - x;
    double dy = moments[m + 4] - y;
    double dz = moments[m + 5] - z;
    double square = dx * dx + dy * dy + dz * dz;
    if (square > FAR * FAR * moments[m + 6]) {
      double dot = moments[m] * dx + moments[m + 1] * dy + moments[m + 2] * dz;
      return dot / (square * Math.sqrt(square));
    }
    if (!tree.isLeaf(level)) {
      int cut = TriangleTree.cut(from, to);
      return sum(x, y, z, 2 * node + 1, from, cut, level + 1)
          + sum(x, y, z, 2 * node + 2, cut, to, level + 1);
    }
    double angle = 0;
    for (int i = from; i < to; i++) {
      angle += solidAngle(tree.order[i], x, y, z);
    }
    return angle;
  }

  private double solidAngle(int f, double px, double py, double pz) {
    double[] x = tree.xyz;
    int a = 3 * tree.tri[3 * f];
    int b = 3 * tree.tri[3 * f + 1];
    int c = 3 * tree.tri[3 * f + 2];
    double ax = x[a] - px;
    double ay = x[a + 1] - py;
    double az = x[a + 2] - pz;
    double bx = x[b] - px;
    double by = x[b + 1] - py;
    double bz = x[b + 2] - pz;
    double cx = x[c] - px;
    double cy = x[c + 1] - py;
    double cz = x[c + 2] - pz;
    double la = Math.sqrt(ax * ax + ay * ay + az * az);
    double lb = Math.sqrt(bx * bx + by * by + bz * bz);
    double lc = Math.sqrt(cx * cx + cy * cy + cz * cz);
    double det = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    double down =
        la * lb * lc
            + (ax * bx + ay * by + az * bz) * lc
            + (bx * cx + by * cy + bz * cz) * la
            + (cx * ax + cy * ay + cz * az) * lb;
    return 2 * StrictMath.atan2(det, down);
  }
}
