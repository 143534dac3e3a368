package org.castwright.survey;

/**
 * Finds the columns of a raster that pass through a triangle, looking down the z axis. Rows and
 * columns are half open, and the point where a row crosses an edge is computed from the edge's end
 * below the row to its end above, so both triangles of an edge get the very same number. Hence in a
 * closed mesh the crossings of each column, counted +1 for facing up and -1 for facing down, sum to
 * exactly zero, whatever the rounding.
 */
public final class Scanlines {

  // For each set of corners on or below a row (bit k for corner k): the corner at the low and at
  // the high end of the edge that rises through the row, and of the edge that falls through it,
  // going round the triangle in its own order. Tables, since the cases come in random order and a
  // mispredicted branch costs more than all the arithmetic of a row.
  private static final int[] RISE_LOW = {0, 0, 1, 1, 2, 0, 2, 0};
  private static final int[] RISE_HIGH = {0, 1, 2, 2, 0, 1, 0, 0};
  private static final int[] FALL_LOW = {0, 0, 1, 0, 2, 2, 1, 0};
  private static final int[] FALL_HIGH = {0, 2, 0, 2, 1, 1, 0, 0};

  private final int[] columns = new int[3];
  private final double[] xs = new double[3];
  private final double[] ys = new double[3];
  private final double[] zs = new double[3];
  private final double[] xyz;
  private final int[] tri;
  private final Raster raster;
  private final double scale;
  private final SpanSink sink;

  /**
   * @param xyz packed coordinates, z along the view
   */
  public Scanlines(double[] xyz, int[] tri, Raster raster, SpanSink sink) {
    this.xyz = xyz;
    this.tri = tri;
    this.raster = raster;
    this.scale = 1 / raster.pixel();
    this.sink = sink;
  }

  /** Scans every triangle in index order. */
  public void all() {
    int n = tri.length / 3;
    for (int f = 0; f < n; f++) {
      triangle(f);
    }
  }

  /** Scans {@code facets[from]} to {@code facets[to - 1]}. */
  void some(int[] facets, int from, int to) {
    for (int i = from; i < to; i++) {
      triangle(facets[i]);
    }
  }

  private void triangle(int f) {
    int a = 3 * tri[3 * f];
    int b = 3 * tri[3 * f + 1];
    int c = 3 * tri[3 * f + 2];
    double y0 = raster.y0();
    double ya = (xyz[a + 1] - y0) * scale;
    double yb = (xyz[b + 1] - y0) * scale;
    double yc = (xyz[c + 1] - y0) * scale;
    int ja = (int) Math.ceil(ya);
    int jb = (int) Math.ceil(yb);
    int jc = (int) Math.ceil(yc);
    int first = Math.max(0, Math.min(ja, Math.min(jb, jc)));
    int last = Math.min(raster.ny(), Math.max(ja, Math.max(jb, jc)));
    if (first >= last) {
      return;
    }
    double x0 = raster.x0();
    double xa = (xyz[a] - x0) * scale;
    double xb = (xyz[b] - x0) * scale;
    double xc = (xyz[c] - x0) * scale;
    int ia = (int) Math.ceil(xa);
    int ib = (int) Math.ceil(xb);
    int ic = (int) Math.ceil(xc);
    int from = Math.max(0, Math.min(ia, Math.min(ib, ic)));
    int to = Math.min(raster.nx(), Math.max(ia, Math.max(ib, ic)));
    if (from >= to) {
      return;
    }
    corner(0, ia, xa, ya, xyz[a + 2]);
    corner(1, ib, xb, yb, xyz[b + 2]);
    corner(2, ic, xc, yc, xyz[c + 2]);
    for (int row = first; row < last; row++) {
      row(f, row, (ja <= row ? 1 : 0) | (jb <= row ? 2 : 0) | (jc <= row ? 4 : 0));
    }
  }

  private void corner(int k, int column, double x, double y, double z) {
    columns[k] = column;
    xs[k] = x;
    ys[k] = y;
    zs[k] = z;
  }

  private void row(int f, int row, int below) {
    int rl = RISE_LOW[below];
    int rh = RISE_HIGH[below];
    int fl = FALL_LOW[below];
    int fh = FALL_HIGH[below];
    double r = (row - ys[rl]) / (ys[rh] - ys[rl]);
    double s = (row - ys[fl]) / (ys[fh] - ys[fl]);
    double xr = xs[rl] + (xs[rh] - xs[rl]) * r;
    double xf = xs[fl] + (xs[fh] - xs[fl]) * s;
    int rise = column(xr, columns[rl], columns[rh]);
    int fall = column(xf, columns[fl], columns[fh]);
    int from = Math.max(0, Math.min(rise, fall));
    int to = Math.min(raster.nx(), Math.max(rise, fall));
    if (from < to) {
      boolean up = fall < rise;
      double zr = zs[rl] + (zs[rh] - zs[rl]) * r;
      double zf = zs[fl] + (zs[fh] - zs[fl]) * s;
      double x = up ? xf : xr;
      double z = up ? zf : zr;
      double wide = (up ? xr : xf) - x;
      double slope = wide > 0 ? ((up ? zr : zf) - z) / wide : 0;
      sink.span(f, row, from, to, x, z, slope, up);
    }
  }

  /** The first column at or right of a crossing, held between those of the edge's two ends. */
  private static int column(double x, int a, int b) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), (int) Math.ceil(x)));
  }
}
