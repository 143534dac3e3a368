package org.castwright.cover;

import java.util.Arrays;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.survey.EndsImage;
import org.castwright.survey.Raster;

/**
 * What a casting hides from the two ends of an axis. A point is caught along the axis when the
 * casting stands above it in its own column and in all columns of the square window round it: so a
 * point from which the open is reached by moving sideways no farther than the window counts as
 * free, a wall along the axis is free, and rounding to the nearest column cannot make a slope hide
 * its own surface. Belongs to one thread; the arrays are used again from one axis to the next.
 */
final class Shade {

  private static final int FEWEST_PIXELS = 200;
  private static final int MOST_PIXELS = 1000;

  private final TriMesh mesh;
  private final double pixel;
  private final int reach;
  private final EndsImage image = new EndsImage();
  private Frame frame = Frame.WORLD;
  private Raster raster = new Raster(0, 0, 1, 1, 1);
  private float[] above = new float[0];
  private float[] below = new float[0];
  private float[] row = new float[0];

  /**
   * @param widthMm of a crease, mm; the window reaches so far to each side, but a column at least
   */
  Shade(TriMesh mesh, double widthMm) {
    this.mesh = mesh;
    pixel = pixelFor(mesh.bounds(), widthMm);
    reach = Math.max(1, (int) Math.rint(widthMm / pixel));
  }

  private static double pixelFor(Box3 box, double widthMm) {
    double side = box.longestSide();
    return Math.max(side / MOST_PIXELS, Math.min(side / FEWEST_PIXELS, widthMm));
  }

  /** The distance between columns, mm. */
  double pixel() {
    return pixel;
  }

  /** How far the window reaches to each side, mm: catches narrower than this are free. */
  double width() {
    return reach * pixel;
  }

  /** Looks along an axis; the positive end is {@code axis}. */
  void look(Vec3 axis) {
    frame = Frame.along(axis);
    image.look(mesh, frame, pixel);
    raster = image.raster();
    above = image.high();
    below = image.low();
    for (int k = 0; k < reach; k++) {
      widen();
    }
  }

  /** Makes the window one column wider on every side. */
  void widen() {
    int nx = raster.nx();
    int ny = raster.ny();
    if (row.length < nx * ny) {
      row = new float[nx * ny];
    }
    least(above, row, 1, nx * ny);
    least(row, above, nx, nx * ny);
    open(above, nx, ny, Float.NEGATIVE_INFINITY);
    most(below, row, 1, nx * ny);
    most(row, below, nx, nx * ny);
    open(below, nx, ny, Float.POSITIVE_INFINITY);
  }

  /** The least of each of {@code n} numbers and the two so far from it, but at the ends. */
  private static void least(float[] of, float[] to, int apart, int n) {
    for (int o = apart; o < n - apart; o++) {
      to[o] = Math.min(Math.min(of[o - apart], of[o]), of[o + apart]);
    }
  }

  /** As {@link #least}, the most: spelled out, for this is the inner loop of the search. */
  private static void most(float[] of, float[] to, int apart, int n) {
    for (int o = apart; o < n - apart; o++) {
      to[o] = Math.max(Math.max(of[o - apart], of[o]), of[o + apart]);
    }
  }

  /** Columns of the rim see past the casting. */
  private static void open(float[] a, int nx, int ny, float out) {
    Arrays.fill(a, 0, nx, out);
    Arrays.fill(a, (ny - 1) * nx, ny * nx, out);
    for (int j = 0; j < ny; j++) {
      a[j * nx] = out;
      a[j * nx + nx - 1] = out;
    }
  }

  /** The column of a point, or -1. */
  int column(double x, double y, double z) {
    double p = frame.u().x() * x + frame.u().y() * y + frame.u().z() * z;
    double q = frame.v().x() * x + frame.v().y() * y + frame.v().z() * z;
    long i = (long) Math.floor((p - raster.x0()) / raster.pixel() + 0.5);
    long j = (long) Math.floor((q - raster.y0()) / raster.pixel() + 0.5);
    return i < 0 || j < 0 || i >= raster.nx() || j >= raster.ny()
        ? -1
        : (int) (j * raster.nx() + i);
  }

  /** The height of a point along the axis, mm. */
  double height(double x, double y, double z) {
    return frame.w().x() * x + frame.w().y() * y + frame.w().z() * z;
  }

  /** Whether a point of a column at a height is caught when pulled along the axis. */
  boolean caughtUp(int column, double height) {
    return height < above[column];
  }

  /** Whether a point of a column at a height is caught when pulled against the axis. */
  boolean caughtDown(int column, double height) {
    return height > below[column];
  }
}
