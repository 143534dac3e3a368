package org.castwright.survey;

import org.castwright.mesh.TriMesh;

/** The runs of solid along z in some columns of a grid, upward. Runs that touch are one. */
public final class ColumnRuns {

  private final Raster raster;

  /** Where each column's runs begin in the arrays of their ends. */
  private final int[] start;

  private final int[] count;
  private final double[] bottom;
  private final double[] top;

  /**
   * Looks along z.
   *
   * @param mesh closed, oriented, mm
   * @param wanted columns to look at; the others have no runs
   */
  public ColumnRuns(TriMesh mesh, Raster raster, boolean[] wanted) {
    this.raster = raster;
    Crossings c = new Crossings(mesh, raster, wanted);
    start = new int[wanted.length];
    count = new int[wanted.length];
    bottom = new double[c.height.length / 2];
    top = new double[bottom.length];
    int n = 0;
    for (int o = 0; o < wanted.length; o++) {
      start[o] = n;
      int depth = 0;
      for (int i = c.start[o]; i < c.start[o + 1]; i++) {
        int before = depth;
        depth += c.up[i] ? -1 : 1;
        if (depth > 0 && before <= 0) {
          if (count[o] > 0 && top[n - 1] >= c.height[i]) {
            n--;
            count[o]--;
          } else {
            bottom[n] = c.height[i];
          }
        } else if (depth <= 0 && before > 0) {
          top[n++] = c.height[i];
          count[o]++;
        }
      }
    }
  }

  /** The columns. */
  public Raster raster() {
    return raster;
  }

  /** Runs in a column. */
  public int count(int column) {
    return count[column];
  }

  /** Where run {@code k} of a column begins, mm, from 0 upward. */
  public double bottom(int column, int k) {
    return bottom[start[column] + k];
  }

  /** Where it ends. */
  public double top(int column, int k) {
    return top[start[column] + k];
  }

  boolean solidAt(int column, double z) {
    for (int k = 0; k < count[column]; k++) {
      if (bottom(column, k) <= z && top(column, k) > z) {
        return true;
      }
    }
    return false;
  }

  /** Where columns cross the surface, upward. */
  private static final class Crossings implements SpanSink {
    private final Raster raster;
    private final boolean[] wanted;
    private final int[] start;
    private final int[] filled;
    private double[] height = new double[0];
    private boolean[] up = new boolean[0];
    private boolean counted;

    Crossings(TriMesh mesh, Raster raster, boolean[] wanted) {
      this.raster = raster;
      this.wanted = wanted;
      start = new int[wanted.length + 1];
      filled = new int[wanted.length];
      new Scanlines(mesh.xyz(), mesh.tri(), raster, this).all();
      for (int o = 0; o < wanted.length; o++) {
        start[o + 1] += start[o];
      }
      height = new double[start[wanted.length]];
      up = new boolean[height.length];
      counted = true;
      new Scanlines(mesh.xyz(), mesh.tri(), raster, this).all();
      for (int o = 0; o < wanted.length; o++) {
        sort(start[o], start[o + 1]);
      }
    }

    @Override
    public void span(
        int facet, int row, int from, int to, double x, double z, double slope, boolean faceUp) {
      for (int k = from; k < to; k++) {
        int o = row * raster.nx() + k;
        if (wanted[o] && counted) {
          int at = start[o] + filled[o]++;
          height[at] = z + (k - x) * slope;
          up[at] = faceUp;
        } else if (wanted[o]) {
          start[o + 1]++;
        }
      }
    }

    /** By height, upward; of two surfaces at one height the one that enters solid comes first. */
    private void sort(int from, int to) {
      for (int i = from + 1; i < to; i++) {
        double h = height[i];
        boolean u = up[i];
        int j = i;
        while (j > from && (height[j - 1] > h || (height[j - 1] == h && !u && up[j - 1]))) {
          height[j] = height[j - 1];
          up[j] = up[j - 1];
          j--;
        }
        height[j] = h;
        up[j] = u;
      }
    }
  }
}
