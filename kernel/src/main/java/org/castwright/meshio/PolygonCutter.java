package org.castwright.meshio;

/**
 * Cuts one polygon into triangles: a fan if it is strictly convex, otherwise ear by ear, seen along
 * its own normal. Ear cutting after G. H. Meisters, Polygons have ears, American Mathematical
 * Monthly 82 (1975).
 */
final class PolygonCutter {

  private final double[] xyz;
  private int[] corner = new int[8];
  private int[] next = new int[8];
  private double[] u = new double[8];
  private double[] v = new double[8];
  private int n;

  PolygonCutter(double[] xyz) {
    this.xyz = xyz;
  }

  /**
   * Writes {@code 3 (count - 2)} vertex indices from {@code out[to]} on.
   *
   * @return false if the outline crosses itself or has no area, and was cut as well as could be
   */
  boolean cut(int[] face, int from, int count, int[] out, int to) {
    load(face, from, count);
    boolean flat = flatten();
    if (flat && isStrictlyConvex()) {
      fan(0, n, out, to);
      return true;
    }
    return clip(out, to) && flat;
  }

  private void load(int[] face, int from, int count) {
    n = count;
    if (corner.length < n) {
      corner = new int[2 * n];
      next = new int[2 * n];
      u = new double[2 * n];
      v = new double[2 * n];
    }
    System.arraycopy(face, from, corner, 0, n);
  }

  /** Projects along the largest part of the normal (Newell's sum); false if it has none. */
  private boolean flatten() {
    double[] normal = new double[3];
    int o = 3 * corner[0];
    for (int i = 0; i < n; i++) {
      int a = 3 * corner[i];
      int b = 3 * corner[(i + 1) % n];
      for (int k = 0; k < 3; k++) {
        int p = (k + 1) % 3;
        int q = (k + 2) % 3;
        normal[k] +=
            (xyz[a + p] - xyz[o + p]) * (xyz[b + q] - xyz[o + q])
                - (xyz[a + q] - xyz[o + q]) * (xyz[b + p] - xyz[o + p]);
      }
    }
    int axis = 2;
    for (int k = 0; k < 2; k++) {
      if (Math.abs(normal[k]) > Math.abs(normal[axis])) {
        axis = k;
      }
    }
    int p = normal[axis] < 0 ? (axis + 2) % 3 : (axis + 1) % 3;
    int q = normal[axis] < 0 ? (axis + 1) % 3 : (axis + 2) % 3;
    for (int i = 0; i < n; i++) {
      u[i] = xyz[3 * corner[i] + p];
      v[i] = xyz[3 * corner[i] + q];
    }
    return normal[axis] != 0;
  }

  /** Every turn is to the left, and the turns go round once. */
  private boolean isStrictlyConvex() {
    int rises = 0;
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      int k = (i + 2) % n;
      if (turn(i, j, k) <= 0) {
        return false;
      }
      if (v[j] > v[i] && v[k] <= v[j]) {
        rises++;
      }
    }
    return rises == 1;
  }

  private double turn(int a, int b, int c) {
    return (u[b] - u[a]) * (v[c] - v[a]) - (v[b] - v[a]) * (u[c] - u[a]);
  }

  private void fan(int from, int count, int[] out, int to) {
    int o = to;
    for (int i = from + 1; i + 1 < from + count; i++) {
      o = put(out, o, from, i, i + 1);
    }
  }

  private int put(int[] out, int to, int a, int b, int c) {
    out[to] = corner[a];
    out[to + 1] = corner[b];
    out[to + 2] = corner[c];
    return to + 3;
  }

  private boolean clip(int[] out, int to) {
    for (int i = 0; i < n; i++) {
      next[i] = (i + 1) % n;
    }
    boolean clean = true;
    int o = to;
    int before = n - 1;
    for (int left = n; left > 3; left--) {
      int a = ear(before, left);
      if (a < 0) {
        clean = false;
        a = before;
      }
      int b = next[a];
      o = put(out, o, a, b, next[b]);
      next[a] = next[b];
      before = next[a];
    }
    int b = next[before];
    put(out, o, before, b, next[b]);
    // what is left of a crossed outline lies on its face
    return clean && turn(before, b, next[b]) >= 0;
  }

  /** The corner before the next ear, or -1 if none is left. */
  private int ear(int start, int left) {
    int a = start;
    for (int tries = 0; tries < left; tries++) {
      int b = next[a];
      int c = next[b];
      if (turn(a, b, c) > 0 && isEmpty(a, b, c)) {
        return a;
      }
      a = b;
    }
    return -1;
  }

  private boolean isEmpty(int a, int b, int c) {
    for (int p = next[c]; p != a; p = next[p]) {
      boolean inside = turn(a, b, p) >= 0 && turn(b, c, p) >= 0 && turn(c, a, p) >= 0;
      if (inside && !same(p, a) && !same(p, b) && !same(p, c)) {
        return false;
      }
    }
    return true;
  }

  private boolean same(int p, int q) {
    return u[p] == u[q] && v[p] == v[q];
  }
}
