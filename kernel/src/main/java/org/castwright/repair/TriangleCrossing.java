package org.castwright.repair;

/**
 * Whether two triangles of a mesh meet other than by sharing corners. Corners in the same place
 * count as shared. Triangles that share an edge meet if one is folded flat onto the other; that
 * share a corner, if the side opposite it of one meets the other; that share nothing, if they have
 * a point in common; in one plane, if their insides overlap. Not safe for several threads.
 */
final class TriangleCrossing {

  private final double[] x;
  private final int[] tri;
  private final int[] a = new int[3];
  private final int[] b = new int[3];

  TriangleCrossing(double[] xyz, int[] tri) {
    this.x = xyz;
    this.tri = tri;
  }

  boolean meet(int f, int g) {
    for (int k = 0; k < 3; k++) {
      a[k] = 3 * tri[3 * f + k];
      b[k] = 3 * tri[3 * g + k];
    }
    int shared = shareFirst();
    if (shared == 3) {
      return true;
    }
    if (shared == 2) {
      return folded();
    }
    int s0 = Sign3.side(x, a[0], a[1], a[2], x, b[0]);
    int s1 = Sign3.side(x, a[0], a[1], a[2], x, b[1]);
    int s2 = Sign3.side(x, a[0], a[1], a[2], x, b[2]);
    if (s0 == 0 && s1 == 0 && s2 == 0) {
      return overlapInPlane();
    }
    if (shared == 1) {
      return segmentMeets(a[1], a[2], b) || segmentMeets(b[1], b[2], a);
    }
    if ((s0 > 0 && s1 > 0 && s2 > 0) || (s0 < 0 && s1 < 0 && s2 < 0)) {
      return false;
    }
    for (int k = 0; k < 3; k++) {
      if (segmentMeets(a[k], a[(k + 1) % 3], b) || segmentMeets(b[k], b[(k + 1) % 3], a)) {
        return true;
      }
    }
    return false;
  }

  /** Turns both triangles so that shared corners come first; returns how many there are. */
  private int shareFirst() {
    int n = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = n; j < 3; j++) {
        if (i >= n && same(a[i], b[j])) {
          swap(a, n, i);
          swap(b, n, j);
          n++;
          break;
        }
      }
    }
    return n;
  }

  private boolean same(int p, int q) {
    return p == q || (x[p] == x[q] && x[p + 1] == x[q + 1] && x[p + 2] == x[q + 2]);
  }

  private static void swap(int[] t, int i, int j) {
    int v = t[i];
    t[i] = t[j];
    t[j] = v;
  }

  private boolean folded() {
    double ex = x[a[1]] - x[a[0]];
    double ey = x[a[1] + 1] - x[a[0] + 1];
    double ez = x[a[1] + 2] - x[a[0] + 2];
    double ux = x[a[2]] - x[a[0]];
    double uy = x[a[2] + 1] - x[a[0] + 1];
    double uz = x[a[2] + 2] - x[a[0] + 2];
    double vx = x[b[2]] - x[a[0]];
    double vy = x[b[2] + 1] - x[a[0] + 1];
    double vz = x[b[2] + 2] - x[a[0] + 2];
    double nx = (ey * uz - ez * uy) * (ey * vz - ez * vy);
    double ny = (ez * ux - ex * uz) * (ez * vx - ex * vz);
    double nz = (ex * uy - ey * ux) * (ex * vy - ey * vx);
    return nx + ny + nz > 0 && Sign3.side(x, a[0], a[1], a[2], x, b[2]) == 0;
  }

  private boolean segmentMeets(int p, int q, int[] t) {
    int sp = Sign3.side(x, t[0], t[1], t[2], x, p);
    int sq = Sign3.side(x, t[0], t[1], t[2], x, q);
    if (sp == 0 && sq == 0) {
      return segmentMeetsInPlane(p, q, t);
    }
    if (sp == sq) {
      return false;
    }
    int r0 = Sign3.side(x, p, q, t[0], x, t[1]);
    int r1 = Sign3.side(x, p, q, t[1], x, t[2]);
    int r2 = Sign3.side(x, p, q, t[2], x, t[0]);
    return (r0 >= 0 && r1 >= 0 && r2 >= 0) || (r0 <= 0 && r1 <= 0 && r2 <= 0);
  }

  private boolean segmentMeetsInPlane(int p, int q, int[] t) {
    int u = dropAxis(t);
    if (u < 0) {
      return false;
    }
    int way = turn(u, t[0], t[1], t[2]);
    for (int k = 0; k < 3; k++) {
      int i = t[k];
      int j = t[(k + 1) % 3];
      if (turn(u, i, j, p) * way < 0 && turn(u, i, j, q) * way < 0) {
        return false;
      }
    }
    int r0 = turn(u, p, q, t[0]);
    int r1 = turn(u, p, q, t[1]);
    int r2 = turn(u, p, q, t[2]);
    return !((r0 > 0 && r1 > 0 && r2 > 0) || (r0 < 0 && r1 < 0 && r2 < 0));
  }

  /** Two convex shapes in a plane are apart exactly if a side of one of them parts them. */
  private boolean overlapInPlane() {
    int u = dropAxis(a);
    return u >= 0 && !sideParts(u, a, b) && !sideParts(u, b, a);
  }

  private boolean sideParts(int u, int[] s, int[] t) {
    int way = turn(u, s[0], s[1], s[2]);
    if (way == 0) {
      return true;
    }
    for (int k = 0; k < 3; k++) {
      int i = s[k];
      int j = s[(k + 1) % 3];
      if (turn(u, i, j, t[0]) * way <= 0
          && turn(u, i, j, t[1]) * way <= 0
          && turn(u, i, j, t[2]) * way <= 0) {
        return true;
      }
    }
    return false;
  }

  /** The axis along which a triangle shows most area; -1 for a triangle without area. */
  private int dropAxis(int[] t) {
    int best = -1;
    double most = 0;
    for (int axis = 0; axis < 3; axis++) {
      int v = (axis + 1) % 3;
      int w = (axis + 2) % 3;
      double area =
          Math.abs(
              (x[t[1] + v] - x[t[0] + v]) * (x[t[2] + w] - x[t[0] + w])
                  - (x[t[1] + w] - x[t[0] + w]) * (x[t[2] + v] - x[t[0] + v]));
      if (area > most) {
        most = area;
        best = axis;
      }
    }
    return best;
  }

  private int turn(int axis, int p, int q, int r) {
    int v = (axis + 1) % 3;
    int w = (axis + 2) % 3;
    return Sign3.turn(x[p + v], x[p + w], x[q + v], x[q + w], x[r + v], x[r + w]);
  }
}
