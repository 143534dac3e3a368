package org.castwright.survey;

/**
 * Finds the columns of a raster that pass through a triangle, looking down the z axis. Rows and
 * columns are half open, and the point where a row crosses an edge is computed from the edge's end
 * below the row to its end above, so both triangles of an edge get the very same number. Hence in a
 * closed mesh the crossings of each column, counted +1 for facing up and -1 for facing down, sum to
 * exactly zero, whatever the rounding.
 */
public final class Scanlines {

  private final Corner first = new Corner();
  private final Corner second = new Corner();
  private final Corner third = new Corner();

  /** From the lowest corner of a triangle to the highest. */
  private final Edge far = new Edge();

  /** Beside it, from one of them to the third. */
  private final Edge near = new Edge();

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
    Corner a = first;
    Corner b = second;
    Corner c = third;
    a.set(3 * tri[3 * f]);
    b.set(3 * tri[3 * f + 1]);
    c.set(3 * tri[3 * f + 2]);
    if ((a.row == b.row && b.row == c.row) || (a.column == b.column && b.column == c.column)) {
      return;
    }
    // sorted by rows; whether the far edge then falls, going round the triangle in its own order
    boolean falls = true;
    if (b.row < a.row) {
      Corner t = a;
      a = b;
      b = t;
      falls = false;
    }
    if (c.row < b.row) {
      Corner t = b;
      b = c;
      c = t;
      falls = !falls;
      if (b.row < a.row) {
        t = a;
        a = b;
        b = t;
        falls = !falls;
      }
    }
    far.set(a, c);
    if (a.row < b.row) {
      near.set(a, b);
      rows(f, a.row, b.row, falls);
    }
    if (b.row < c.row) {
      near.set(b, c);
      rows(f, b.row, c.row, falls);
    }
  }

  private void rows(int f, int low, int high, boolean falls) {
    int end = Math.min(raster.ny(), high);
    for (int row = Math.max(0, low); row < end; row++) {
      double xf = far.x + far.dx * (row - far.y);
      double xn = near.x + near.dx * (row - near.y);
      int cf = far.column(xf);
      int cn = near.column(xn);
      int from = Math.max(0, Math.min(cf, cn));
      int to = Math.min(raster.nx(), Math.max(cf, cn));
      if (from < to) {
        boolean begins = cf < cn;
        double zf = far.z + far.dz * (row - far.y);
        double zn = near.z + near.dz * (row - near.y);
        double x = begins ? xf : xn;
        double z = begins ? zf : zn;
        double wide = (begins ? xn : xf) - x;
        double slope = wide > 0 ? ((begins ? zn : zf) - z) / wide : 0;
        sink.span(f, row, from, to, x, z, slope, begins == falls);
      }
    }
  }

  /** A corner of the triangle in hand, in columns and rows of the raster. */
  private final class Corner {
    private double x;
    private double y;
    private double z;

    /** The first column at or right of it, and the first row at or above. */
    private int column;

    private int row;

    void set(int at) {
      x = (xyz[at] - raster.x0()) * scale;
      y = (xyz[at + 1] - raster.y0()) * scale;
      z = xyz[at + 2];
      column = (int) Math.ceil(x);
      row = (int) Math.ceil(y);
    }
  }

  /** An edge that rows cross. */
  private static final class Edge {
    private double x;
    private double y;
    private double z;
    private double dx;
    private double dz;
    private int least;
    private int most;

    void set(Corner low, Corner high) {
      x = low.x;
      y = low.y;
      z = low.z;
      double perRow = 1 / (high.y - low.y);
      dx = (high.x - low.x) * perRow;
      dz = (high.z - low.z) * perRow;
      least = Math.min(low.column, high.column);
      most = Math.max(low.column, high.column);
    }

    /** The first column at or right of a crossing, held between those of the edge's two ends. */
    int column(double crossing) {
      return Math.max(least, Math.min(most, (int) Math.ceil(crossing)));
    }
  }
}
