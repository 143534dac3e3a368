package org.castwright.survey;

/**
 * Finds the columns of a raster that pass through a triangle, looking down the z axis. Rows and
 * columns are half open, and the point where a row crosses an edge is computed from the edge's
 * lower vertex index to its higher, so both triangles of an edge get the very same number. Hence in
 * a closed mesh the crossings of each column, counted +1 for facing up and -1 for facing down, sum
 * to exactly zero, whatever the rounding.
 */
final class Scanlines {

  private final double[] xyz;
  private final int[] tri;
  private final Raster raster;
  private final double scale;
  private final SpanSink sink;

  /**
   * @param xyz packed coordinates, z along the view
   */
  Scanlines(double[] xyz, int[] tri, Raster raster, SpanSink sink) {
    this.xyz = xyz;
    this.tri = tri;
    this.raster = raster;
    this.scale = 1 / raster.pixel();
    this.sink = sink;
  }

  /** Scans every triangle in index order. */
  void all() {
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
    int first = Math.max(0, (int) Math.ceil(Math.min(ya, Math.min(yb, yc))));
    int last = Math.min(raster.ny(), (int) Math.ceil(Math.max(ya, Math.max(yb, yc))));
    if (first >= last) {
      return;
    }
    double x0 = raster.x0();
    double xa = (xyz[a] - x0) * scale;
    double xb = (xyz[b] - x0) * scale;
    double xc = (xyz[c] - x0) * scale;
    if (Math.max(xa, Math.max(xb, xc)) < 0 || Math.min(xa, Math.min(xb, xc)) > raster.nx()) {
      return;
    }
    double za = xyz[a + 2];
    double zb = xyz[b + 2];
    double zc = xyz[c + 2];
    for (int row = first; row < last; row++) {
      boolean sa = ya <= row;
      boolean sb = yb <= row;
      boolean sc = yc <= row;
      // the edge that rises through the row, and the one that falls through it
      double xr = 0;
      double zr = 0;
      double xf = 0;
      double zf = 0;
      if (sa != sb) {
        double t = a < b ? (row - ya) / (yb - ya) : (row - yb) / (ya - yb);
        double x = a < b ? xa + (xb - xa) * t : xb + (xa - xb) * t;
        double z = a < b ? za + (zb - za) * t : zb + (za - zb) * t;
        if (sa) {
          xr = x;
          zr = z;
        } else {
          xf = x;
          zf = z;
        }
      }
      if (sb != sc) {
        double t = b < c ? (row - yb) / (yc - yb) : (row - yc) / (yb - yc);
        double x = b < c ? xb + (xc - xb) * t : xc + (xb - xc) * t;
        double z = b < c ? zb + (zc - zb) * t : zc + (zb - zc) * t;
        if (sb) {
          xr = x;
          zr = z;
        } else {
          xf = x;
          zf = z;
        }
      }
      if (sc != sa) {
        double t = c < a ? (row - yc) / (ya - yc) : (row - ya) / (yc - ya);
        double x = c < a ? xc + (xa - xc) * t : xa + (xc - xa) * t;
        double z = c < a ? zc + (za - zc) * t : za + (zc - za) * t;
        if (sc) {
          xr = x;
          zr = z;
        } else {
          xf = x;
          zf = z;
        }
      }
      emit(f, row, xf, zf, xr, zr);
    }
  }

  private void emit(int f, int row, double xf, double zf, double xr, double zr) {
    boolean up = xf < xr;
    double left = up ? xf : xr;
    double right = up ? xr : xf;
    int from = Math.max(0, (int) Math.ceil(left));
    int to = Math.min(raster.nx(), (int) Math.ceil(right));
    if (from < to) {
      double z = up ? zf : zr;
      double slope = ((up ? zr : zf) - z) / (right - left);
      sink.span(f, row, from, to, left, z, slope, up);
    }
  }
}
