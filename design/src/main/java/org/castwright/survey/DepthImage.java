package org.castwright.survey;

import java.util.Arrays;
import org.castwright.geom.Frame;
import org.castwright.mesh.TriMesh;

/**
 * What a mesh looks like along one axis: for each column of a {@link Raster} the highest and the
 * lowest surface and the length of solid in between. The arrays are kept from one picture to the
 * next, so one object serves hundreds of directions; it must stay with one thread.
 *
 * <p>The trapped volume is the integral of upper minus lower minus solid. All three come from the
 * same samples, so the rim of the shadow adds no error, and for a mesh in which every column is a
 * single run of solid the result is exactly zero, not merely small. Sums of crossings assume that
 * shells do not overlap; where they do, a column counts too much solid and its gap is taken as
 * zero.
 */
public final class DepthImage implements SpanSink {

  private static final int STRIDE = 3;
  private static final int UPPER = 0;
  private static final int LOWER = 1;
  private static final int SOLID = 2;

  private Raster raster;
  private double[] cells = new double[0];
  private double[] points = new double[0];

  /** Draws a mesh as it stands, looking along its z axis. */
  public void draw(TriMesh mesh, Raster over) {
    draw(mesh.xyz(), mesh.tri(), over);
  }

  void draw(double[] xyz, int[] tri, Raster over) {
    clear(over);
    new Scanlines(xyz, tri, over, this).all();
  }

  void draw(double[] xyz, int[] tri, Raster over, int[] facets, int from, int to) {
    clear(over);
    new Scanlines(xyz, tri, over, this).some(facets, from, to);
  }

  /**
   * Turns a mesh into a frame and draws it along the frame's third axis.
   *
   * @param pixels columns along the longer side of the shadow
   * @param smallest columns never stand closer than this, mm
   */
  public void look(TriMesh mesh, Frame frame, int pixels, double smallest) {
    int n = mesh.xyz().length;
    if (points.length < n) {
      points = new double[n];
    }
    double[] box = Projection.into(mesh.xyz(), frame, points);
    draw(points, mesh.tri(), Raster.over(box, pixels, smallest));
  }

  /** The vertices of the mesh last looked at, in its frame; longer than needed, not to be kept. */
  double[] points() {
    return points;
  }

  private void clear(Raster over) {
    raster = over;
    int n = STRIDE * over.columns();
    if (cells.length < n) {
      cells = new double[n];
    }
    for (int o = 0; o < n; o += STRIDE) {
      cells[o + UPPER] = Double.NEGATIVE_INFINITY;
      cells[o + LOWER] = Double.POSITIVE_INFINITY;
      cells[o + SOLID] = 0;
    }
  }

  @Override
  public void span(
      int facet, int row, int from, int to, double x, double z, double slope, boolean up) {
    int o = STRIDE * (row * raster.nx() + from);
    for (int k = from; k < to; k++, o += STRIDE) {
      double h = z + (k - x) * slope;
      if (h > cells[o + UPPER]) {
        cells[o + UPPER] = h;
      }
      if (h < cells[o + LOWER]) {
        cells[o + LOWER] = h;
      }
      cells[o + SOLID] += up ? h : -h;
    }
  }

  public Raster raster() {
    return raster;
  }

  /** Whether column {@code i} meets the mesh. */
  public boolean hit(int i) {
    return cells[STRIDE * i + UPPER] > Double.NEGATIVE_INFINITY;
  }

  /** The highest surface of column {@code i}, mm; minus infinity when it misses the mesh. */
  public double upper(int i) {
    return cells[STRIDE * i + UPPER];
  }

  /** The lowest surface of column {@code i}, mm; infinity when it misses the mesh. */
  public double lower(int i) {
    return cells[STRIDE * i + LOWER];
  }

  /** The length of solid in column {@code i}, mm. */
  public double solid(int i) {
    return cells[STRIDE * i + SOLID];
  }

  /** The length of space shut in between surfaces of column {@code i}, mm, never below zero. */
  public double gap(int i) {
    int o = STRIDE * i;
    double g = cells[o + UPPER] - cells[o + LOWER] - cells[o + SOLID];
    return g > 0 ? g : 0;
  }

  /** The trapped volume along the axis, mm³. */
  public double trappedVolume() {
    return Arrays.stream(quarters()).sum();
  }

  /**
   * The trapped volume in four parts, mm³: columns with even and odd place along x and y. The four
   * are pictures of half the sharpness each, so their spread tells the sampling error.
   */
  double[] quarters() {
    double[] sums = new double[4];
    double area = raster.pixel() * raster.pixel();
    for (int j = 0; j < raster.ny(); j++) {
      int o = j * raster.nx();
      double even = 0;
      double odd = 0;
      for (int i = 0; i < raster.nx(); i++) {
        if (hit(o + i)) {
          if ((i & 1) == 0) {
            even += gap(o + i);
          } else {
            odd += gap(o + i);
          }
        }
      }
      sums[2 * (j & 1)] += even * area;
      sums[2 * (j & 1) + 1] += odd * area;
    }
    return sums;
  }

  /** The area of the shadow the mesh casts along the axis, mm². */
  public double shadowArea() {
    int n = 0;
    for (int i = 0; i < raster.columns(); i++) {
      n += hit(i) ? 1 : 0;
    }
    return n * raster.pixel() * raster.pixel();
  }
}
