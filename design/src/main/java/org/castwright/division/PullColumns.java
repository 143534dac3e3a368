package org.castwright.division;

import java.util.Arrays;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.survey.Raster;
import org.castwright.survey.Scanlines;

/**
 * A casting seen along one pull: for each column across the pull the roof, which is the highest
 * surface, and where the topmost run of solid ends below it.
 */
final class PullColumns {

  // keeps columns off the round numbers models are drawn in
  private static final double OFF_X = 0.3137;
  private static final double OFF_Y = 0.3719;

  /** Columns beyond the block on every side. */
  static final int MARGIN = 4;

  final Frame frame;
  final Raster raster;
  final Box3 block;

  /** Minus infinity where the column misses the casting. */
  final float[] roof;

  /** Plus infinity where the column misses the casting. */
  final float[] under;

  /** Roof of the highest column within the play. */
  final float[] wide;

  /** Lowest roof of the nine columns round, minus infinity when one misses the casting. */
  final float[] narrow;

  /** Heights between which the block lies. */
  final double low;

  final double high;

  /**
   * @param play columns this near, mm, count for {@link #wide}
   */
  PullColumns(TriMesh casting, Box3 block, Vec3 pull, double pixel, double play) {
    frame = Frame.along(pull);
    this.block = block;
    double[] corners = new double[24];
    for (int k = 0; k < 8; k++) {
      Vec3 p =
          frame.toLocal(
              new Vec3(
                  (k & 1) == 0 ? block.min().x() : block.max().x(),
                  (k & 2) == 0 ? block.min().y() : block.max().y(),
                  (k & 4) == 0 ? block.min().z() : block.max().z()));
      corners[3 * k] = p.x();
      corners[3 * k + 1] = p.y();
      corners[3 * k + 2] = p.z();
    }
    Box3 box = Box3.of(corners);
    low = box.min().z();
    high = box.max().z();
    raster =
        new Raster(
            box.min().x() - (MARGIN - OFF_X) * pixel,
            box.min().y() - (MARGIN - OFF_Y) * pixel,
            pixel,
            tiled(box.size().x() / pixel),
            tiled(box.size().y() / pixel));
    int n = raster.nx() * raster.ny();
    roof = new float[n];
    under = new float[n];
    Arrays.fill(roof, Float.NEGATIVE_INFINITY);
    Arrays.fill(under, Float.POSITIVE_INFINITY);
    fill(casting.toLocal(frame));
    wide = extreme((int) Math.ceil(play / pixel), true);
    narrow = extreme(1, false);
  }

  /** How far a point lies past the faces of the block, mm; negative inside. */
  double outside(Vec3 p) {
    Vec3 a = block.min().minus(p);
    Vec3 b = p.minus(block.max());
    return Math.max(
        Math.max(a.x(), b.x()), Math.max(Math.max(a.y(), b.y()), Math.max(a.z(), b.z())));
  }

  private static int tiled(double columns) {
    int least = (int) Math.ceil(columns) + 2 * MARGIN;
    return (least / SheetMesh.TILE + 1) * SheetMesh.TILE + 1;
  }

  private void fill(TriMesh m) {
    int n = roof.length;
    int[] start = new int[n + 1];
    new Scanlines(
            m.xyz(),
            m.tri(),
            raster,
            (f, row, from, to, x, z, slope, up) -> {
              for (int k = from; k < to; k++) {
                start[row * raster.nx() + k + 1]++;
              }
            })
        .all();
    for (int c = 0; c < n; c++) {
      start[c + 1] += start[c];
    }
    double[] at = new double[start[n]];
    boolean[] enters = new boolean[start[n]];
    int[] next = Arrays.copyOf(start, n);
    new Scanlines(
            m.xyz(),
            m.tri(),
            raster,
            (f, row, from, to, x, z, slope, up) -> {
              for (int k = from; k < to; k++) {
                int o = next[row * raster.nx() + k]++;
                double h = z + (k - x) * slope;
                // kept in falling order: columns hold few crossings
                int c = start[row * raster.nx() + k];
                while (o > c && at[o - 1] < h) {
                  at[o] = at[o - 1];
                  enters[o] = enters[o - 1];
                  o--;
                }
                at[o] = h;
                enters[o] = up;
              }
            })
        .all();
    for (int c = 0; c < n; c++) {
      if (start[c + 1] > start[c]) {
        roof[c] = (float) at[start[c]];
        int deep = 0;
        for (int o = start[c]; o < start[c + 1]; o++) {
          deep += enters[o] ? 1 : -1;
          under[c] = (float) at[o];
          if (deep == 0 && o > start[c]) {
            break;
          }
        }
      }
    }
  }

  private float[] extreme(int reach, boolean most) {
    return swept(swept(roof, reach, most, true), reach, most, false);
  }

  private float[] swept(float[] in, int reach, boolean most, boolean alongRows) {
    int nx = raster.nx();
    int ny = raster.ny();
    float[] out = new float[in.length];
    for (int j = 0; j < ny; j++) {
      for (int i = 0; i < nx; i++) {
        int at = alongRows ? i : j;
        int a = Math.max(0, at - reach);
        int b = Math.min((alongRows ? nx : ny) - 1, at + reach);
        float v = most ? Float.NEGATIVE_INFINITY : Float.POSITIVE_INFINITY;
        for (int k = a; k <= b; k++) {
          float w = in[alongRows ? j * nx + k : k * nx + i];
          v = most ? Math.max(v, w) : Math.min(v, w);
        }
        out[j * nx + i] = v;
      }
    }
    return out;
  }

  /** Whether a column meets the casting. */
  boolean hit(int c) {
    return roof[c] > Float.NEGATIVE_INFINITY;
  }

  /** A point of a column, by its height along the pull. */
  Vec3 point(int c, double height) {
    int row = c / raster.nx();
    double x = raster.x0() + c % raster.nx() * raster.pixel();
    return frame.toWorld(new Vec3(x, raster.y0() + row * raster.pixel(), height));
  }

  int column(double x, double y, double z) {
    double px = frame.u().x() * x + frame.u().y() * y + frame.u().z() * z;
    double py = frame.v().x() * x + frame.v().y() * y + frame.v().z() * z;
    int i = (int) Math.rint((px - raster.x0()) / raster.pixel());
    int j = (int) Math.rint((py - raster.y0()) / raster.pixel());
    i = Math.max(0, Math.min(raster.nx() - 1, i));
    j = Math.max(0, Math.min(raster.ny() - 1, j));
    return j * raster.nx() + i;
  }

  double height(double x, double y, double z) {
    return frame.w().x() * x + frame.w().y() * y + frame.w().z() * z;
  }

  /** Free with all columns within the play. */
  boolean widelyFree(double x, double y, double z) {
    return height(x, y, z) >= wide[column(x, y, z)];
  }

  /** Free in some column next to it, up to what a slope gains from one column to the next. */
  boolean free(double x, double y, double z) {
    return height(x, y, z) >= narrow[column(x, y, z)] - raster.pixel();
  }
}
