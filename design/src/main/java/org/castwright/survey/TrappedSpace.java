package org.castwright.survey;

import java.util.Arrays;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
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
    return between(new ColumnRuns(casting, raster, wanted), release);
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

  /** Some points in a frame, packed x y z, mm. */
  public double[] points(int[] which, Frame frame) {
    double[] out = new double[3 * which.length];
    int n = 0;
    for (int i : which) {
      Vec3 q = frame.toLocal(new Vec3(x(i), y(i), z(i)));
      out[n++] = q.x();
      out[n++] = q.y();
      out[n++] = q.z();
    }
    return out;
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

  private static TrappedSpace between(ColumnRuns runs, double release) {
    Raster raster = runs.raster();
    int[] column = new int[256];
    double[] z = new double[256];
    int n = 0;
    double cell = raster.pixel();
    for (int o = 0; o < raster.columns(); o++) {
      for (int k = 1; k < runs.count(o); k++) {
        double low = runs.top(o, k - 1);
        double gap = runs.bottom(o, k) - low;
        if (gap <= release) {
          continue;
        }
        int pieces = Math.max(1, (int) Math.round(gap / cell));
        while (n + pieces > z.length) {
          z = Arrays.copyOf(z, 2 * z.length);
          column = Arrays.copyOf(column, z.length);
        }
        for (int i = 0; i < pieces; i++) {
          column[n] = o;
          z[n++] = low + (i + 0.5) * gap / pieces;
        }
      }
    }
    return new TrappedSpace(raster, Arrays.copyOf(column, n), Arrays.copyOf(z, n));
  }
}
