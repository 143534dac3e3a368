package org.castwright.survey;

import java.util.Arrays;
import org.castwright.geom.Box3;
import org.castwright.mesh.TriMesh;

/**
 * The space along z that a casting shuts in from above and from below, as points: the middles of
 * equal cells of the gaps between runs of solid, column by column. Columns of areas no wider, and
 * gaps no deeper, than the release tolerance are left out.
 */
public final class TrappedSpace {

  private final Raster raster;
  private final int[] column;
  private final double[] z;

  private TrappedSpace(Raster raster, int[] column, double[] z) {
    this.raster = raster;
    this.column = column;
    this.z = z;
  }

  /**
   * Looks along z.
   *
   * @param casting closed, oriented, mm
   * @param cell distance of columns and of points within a column, mm
   * @param release width and depth up to which a catch counts as free, mm
   */
  public static TrappedSpace of(TriMesh casting, double cell, double release) {
    Box3 b = casting.bounds();
    Raster raster = Raster.over(b.min().x(), b.min().y(), b.max().x(), b.max().y(), cell);
    DepthImage image = new DepthImage();
    image.draw(casting, raster);
    CaughtColumns caught = new CaughtColumns(image, release);
    caught.keepWiderThan(release);
    boolean[] wanted = new boolean[raster.columns()];
    for (int o = 0; o < wanted.length; o++) {
      wanted[o] = caught.kept(o);
    }
    return new ColumnRuns(casting, raster, wanted).trapped(release);
  }

  public int size() {
    return z.length;
  }

  /** Edge of the cube each point stands for, mm; a gap shorter than that has one point. */
  public double cell() {
    return raster.pixel();
  }

  /** Volume a point stands for, mm³. */
  public double pointMm3() {
    return cell() * cell() * cell();
  }

  /** Coordinates of point {@code i}, mm. */
  public double x(int i) {
    return raster.x0() + column[i] % raster.nx() * raster.pixel();
  }

  /** As {@link #x}. */
  public double y(int i) {
    int row = column[i] / raster.nx();
    return raster.y0() + row * raster.pixel();
  }

  /** As {@link #x}. */
  public double z(int i) {
    return z[i];
  }

  /** Which points lie inside a closed body. */
  public boolean[] inside(TriMesh body) {
    boolean[] wanted = new boolean[raster.columns()];
    for (int o : column) {
      wanted[o] = true;
    }
    ColumnRuns runs = new ColumnRuns(body, raster, wanted);
    boolean[] in = new boolean[z.length];
    for (int i = 0; i < in.length; i++) {
      in[i] = runs.solidAt(column[i], z[i]);
    }
    return in;
  }

  /** Crossings of some columns with a mesh, upward. */
  private static final class ColumnRuns implements SpanSink {
    private final Raster raster;
    private final boolean[] wanted;
    private final int[] start;
    private final int[] filled;
    private double[] height = new double[0];
    private boolean[] up = new boolean[0];
    private boolean counted;

    ColumnRuns(TriMesh mesh, Raster raster, boolean[] wanted) {
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

    boolean solidAt(int o, double z) {
      int depth = 0;
      for (int i = start[o]; i < start[o + 1] && height[i] <= z; i++) {
        depth += up[i] ? -1 : 1;
      }
      return depth > 0;
    }

    TrappedSpace trapped(double release) {
      int[] column = new int[256];
      double[] z = new double[256];
      int n = 0;
      double cell = raster.pixel();
      for (int o = 0; o < wanted.length; o++) {
        int depth = 0;
        for (int i = start[o]; i + 1 < start[o + 1]; i++) {
          depth += up[i] ? -1 : 1;
          double gap = height[i + 1] - height[i];
          if (depth > 0 || gap <= release) {
            continue;
          }
          int pieces = Math.max(1, (int) Math.round(gap / cell));
          while (n + pieces > z.length) {
            z = Arrays.copyOf(z, 2 * z.length);
            column = Arrays.copyOf(column, z.length);
          }
          for (int k = 0; k < pieces; k++) {
            column[n] = o;
            z[n++] = height[i] + (k + 0.5) * gap / pieces;
          }
        }
      }
      return new TrappedSpace(raster, Arrays.copyOf(column, n), Arrays.copyOf(z, n));
    }
  }
}
