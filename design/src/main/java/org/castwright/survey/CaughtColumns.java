package org.castwright.survey;

import java.util.Arrays;

/**
 * The columns of a depth image that shut in more space along the pull than the release tolerance,
 * gathered into areas that touch, each with its width. The width of an area is the diameter of the
 * largest disc that fits in it, in the plane across the pull: a strip as long as the model but as
 * thin as a hair is thin. It is read from the exact distance of each column to the nearest column
 * that is not caught (Felzenszwalb, Huttenlocher, "Distance transforms of sampled functions", 2012)
 * as {@code (2 distance - 1) pixel}, right to about one pixel either way.
 */
final class CaughtColumns {

  private final Raster raster;
  private final int i0;
  private final int j0;
  private final int w;
  private final int h;
  private final int[] area;
  private final int[] squared;
  private int areas;
  private int[] widest = {0};
  private boolean[] wide = {false};

  /**
   * @param deeper columns shutting in no more than this are not caught, mm
   */
  CaughtColumns(DepthImage image, double deeper) {
    raster = image.raster();
    int[] box = box(image, deeper);
    i0 = box[0] - 1;
    j0 = box[1] - 1;
    w = Math.max(0, box[2] - box[0] + 3);
    h = Math.max(0, box[3] - box[1] + 3);
    area = new int[w * h];
    squared = new int[w * h];
    if (w * h > 0) {
      for (int j = 1; j + 1 < h; j++) {
        for (int i = 1; i + 1 < w; i++) {
          int c = column(i, j);
          area[j * w + i] = image.hit(c) && image.gap(c) > deeper ? -1 : 0;
        }
      }
      distances();
      label();
    }
  }

  private static int[] box(DepthImage image, double deeper) {
    Raster r = image.raster();
    int[] box = {r.nx(), r.ny(), -1, -1};
    for (int j = 0; j < r.ny(); j++) {
      for (int i = 0; i < r.nx(); i++) {
        int o = j * r.nx() + i;
        if (image.hit(o) && image.gap(o) > deeper) {
          box[0] = Math.min(box[0], i);
          box[1] = Math.min(box[1], j);
          box[2] = Math.max(box[2], i);
          box[3] = Math.max(box[3], j);
        }
      }
    }
    return box[2] < 0 ? new int[] {0, 0, -3, -3} : box;
  }

  private int column(int i, int j) {
    return (j + j0) * raster.nx() + i + i0;
  }

  /** The place of a raster column in this object's arrays, or -1. */
  private int own(int column) {
    int i = column % raster.nx() - i0;
    int j = column / raster.nx() - j0;
    return i < 0 || j < 0 || i >= w || j >= h ? -1 : j * w + i;
  }

  private void distances() {
    int far = w + h;
    int[] down = new int[w * h];
    for (int i = 0; i < w; i++) {
      int d = 0;
      for (int j = 0; j < h; j++) {
        d = area[j * w + i] == 0 ? 0 : Math.min(far, d + 1);
        down[j * w + i] = d;
      }
      for (int j = h - 1; j >= 0; j--) {
        d = area[j * w + i] == 0 ? 0 : Math.min(far, d + 1);
        down[j * w + i] = Math.min(d, down[j * w + i]);
      }
    }
    int[] at = new int[w];
    double[] from = new double[w + 1];
    for (int j = 0; j < h; j++) {
      row(down, j * w, at, from);
    }
  }

  /** The lower envelope of one parabola a column. */
  private void row(int[] down, int o, int[] at, double[] from) {
    int top = 0;
    at[0] = 0;
    from[0] = Double.NEGATIVE_INFINITY;
    from[1] = Double.POSITIVE_INFINITY;
    for (int q = 1; q < w; q++) {
      double fq = (double) down[o + q] * down[o + q] + (double) q * q;
      double s = meet(down, o, at[top], q, fq);
      while (s <= from[top]) {
        top--;
        s = meet(down, o, at[top], q, fq);
      }
      top++;
      at[top] = q;
      from[top] = s;
      from[top + 1] = Double.POSITIVE_INFINITY;
    }
    int k = 0;
    for (int q = 0; q < w; q++) {
      while (from[k + 1] < q) {
        k++;
      }
      int d = down[o + at[k]];
      squared[o + q] = (q - at[k]) * (q - at[k]) + d * d;
    }
  }

  private static double meet(int[] down, int o, int p, int q, double fq) {
    double fp = (double) down[o + p] * down[o + p] + (double) p * p;
    return (fq - fp) / (2.0 * (q - p));
  }

  private void label() {
    int[] stack = new int[64];
    for (int s = 0; s < area.length; s++) {
      if (area[s] != -1) {
        continue;
      }
      areas++;
      if (areas >= widest.length) {
        widest = Arrays.copyOf(widest, 2 * areas);
        wide = Arrays.copyOf(wide, 2 * areas);
      }
      int n = 0;
      stack[n++] = s;
      area[s] = areas;
      while (n > 0) {
        int c = stack[--n];
        widest[areas] = Math.max(widest[areas], squared[c]);
        for (int k = 0; k < 9; k++) {
          int o = c + (k / 3 - 1) * w + k % 3 - 1;
          if (area[o] == -1) {
            area[o] = areas;
            if (n == stack.length) {
              stack = Arrays.copyOf(stack, 2 * n);
            }
            stack[n++] = o;
          }
        }
      }
    }
  }

  Raster raster() {
    return raster;
  }

  boolean isEmpty() {
    return areas == 0;
  }

  /** The width of the widest area, mm. */
  double width() {
    int most = 0;
    for (int k = 1; k <= areas; k++) {
      most = Math.max(most, widest[k]);
    }
    return width(most);
  }

  /** The diameter of the largest disc about a column at this squared distance in pixels, mm. */
  double width(int squaredDistance) {
    return squaredDistance == 0 ? 0 : (2 * Math.sqrt(squaredDistance) - 1) * raster.pixel();
  }

  /** Takes as places all areas wider than the tolerance. */
  void keepWiderThan(double mm) {
    for (int k = 1; k <= areas; k++) {
      wide[k] = width(widest[k]) > mm;
    }
  }

  /** Takes as places the areas that hold one of these columns or a neighbor of one. */
  void keepAt(int[] columns) {
    for (int c : columns) {
      for (int k = 0; k < 9; k++) {
        int o = own(c + (k / 3 - 1) * raster.nx() + k % 3 - 1);
        if (o >= 0 && area[o] > 0) {
          wide[area[o]] = true;
        }
      }
    }
  }

  boolean anyKept() {
    for (boolean b : wide) {
      if (b) {
        return true;
      }
    }
    return false;
  }

  /** Whether the column is caught at all. */
  boolean caught(int column) {
    int o = own(column);
    return o >= 0 && area[o] > 0;
  }

  /** Whether the column lies in an area kept as a place. */
  boolean kept(int column) {
    int o = own(column);
    return o >= 0 && wide[area[o]];
  }

  /** The squared distance to the nearest column that is not caught, pixels. */
  int squared(int column) {
    int o = own(column);
    return o < 0 ? 0 : squared[o];
  }
}
