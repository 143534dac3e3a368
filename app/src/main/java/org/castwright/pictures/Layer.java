package org.castwright.pictures;

import java.util.Arrays;

/** The nearest surface at every sample of a strip of the sheet: depth, triangle and ink. */
final class Layer {

  static final int NOTHING = -1;

  final int width;
  final int rows;
  final float[] depth;
  final int[] triangle;
  final float[] ink;

  /** Row of the sheet at the top of the strip. */
  private int top;

  Layer(int width, int rows) {
    this.width = width;
    this.rows = rows;
    depth = new float[width * rows];
    triangle = new int[width * rows];
    ink = new float[width * rows];
  }

  void clear(int newTop) {
    top = newTop;
    Arrays.fill(depth, Float.POSITIVE_INFINITY);
    Arrays.fill(triangle, NOTHING);
    Arrays.fill(ink, 0);
  }

  int top() {
    return top;
  }

  /** Draws those triangles of one item that reach the strip. */
  void draw(Stage stage, int item) {
    int end = stage.firstTriangle[item + 1];
    for (int t = stage.firstTriangle[item]; t < end; t++) {
      if (stage.bottom[t] > top && stage.top[t] < top + rows) {
        fill(stage, t);
      }
    }
  }

  /**
   * Fills a triangle by half-open scanlines through sample centers. The crossing of an edge is
   * computed from its upper end to its lower end whichever triangle asks, so neighbors neither
   * overlap nor leave a gap.
   */
  private void fill(Stage s, int t) {
    int a = s.tri[3 * t];
    int b = s.tri[3 * t + 1];
    int c = s.tri[3 * t + 2];
    int swap;
    if (s.y[b] < s.y[a]) {
      swap = a;
      a = b;
      b = swap;
    }
    if (s.y[c] < s.y[a]) {
      swap = a;
      a = c;
      c = swap;
    }
    if (s.y[c] < s.y[b]) {
      swap = b;
      b = c;
      c = swap;
    }
    int from = Math.max((int) Math.ceil(s.y[a] - 0.5), top);
    int to = Math.min((int) Math.ceil(s.y[c] - 0.5), top + rows);
    for (int row = from; row < to; row++) {
      double yc = row + 0.5;
      double p = crossing(s, a, c, yc);
      double q = yc < s.y[b] ? crossing(s, a, b, yc) : crossing(s, b, c, yc);
      int left = Math.max(0, (int) Math.ceil(Math.min(p, q) - 0.5));
      int right = Math.min(width, (int) Math.ceil(Math.max(p, q) - 0.5));
      if (left < right) {
        span(s, t, row, left, right);
      }
    }
  }

  private static double crossing(Stage s, int upper, int lower, double yc) {
    return s.x[upper] + (yc - s.y[upper]) * ((s.x[lower] - s.x[upper]) / (s.y[lower] - s.y[upper]));
  }

  private void span(Stage s, int t, int row, int left, int right) {
    int a = s.tri[3 * t];
    double za = s.z[a];
    double zb = s.z[s.tri[3 * t + 1]];
    double zc = s.z[s.tri[3 * t + 2]];
    // a sliver seen edge-on has a wild slope: no sample may leave the triangle's own depths
    float nearest = (float) Math.min(za, Math.min(zb, zc));
    float farthest = (float) Math.max(za, Math.max(zb, zc));
    double z0 = za + (row + 0.5 - s.y[a]) * s.slopeY[t] + (0.5 - s.x[a]) * s.slopeX[t];
    int base = (row - top) * width;
    for (int i = left; i < right; i++) {
      float z = Math.min(farthest, Math.max(nearest, (float) (z0 + i * (double) s.slopeX[t])));
      if (z < depth[base + i]) {
        depth[base + i] = z;
        triangle[base + i] = t;
      }
    }
  }
}
