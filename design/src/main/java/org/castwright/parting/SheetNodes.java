package org.castwright.parting;

import org.castwright.mesh.IntList;

/**
 * The points a sheet is triangulated from, with what is known of the height of each, and the edges
 * the triangulation must keep. The block's rectangle and a ring inside it lie at the wall's height;
 * the points of the seam have the casting's heights; the rest is free.
 */
final class SheetNodes {

  /** Height given by the seam. */
  static final byte SEAM = 0;

  /** On the block's wall or on the flat ring along it. */
  static final byte WALL = 1;

  /** Height to be found. */
  static final byte FREE = 2;

  /** No free point lies closer to the shadow than this, mm: no needles beside the seam. */
  private static final double CLEAR_MM = 0.72;

  private static final double FINE_BELOW_MM = 3;
  private static final double MIDDLE_BELOW_MM = 8;
  private static final double FINE_MM = 1;
  private static final double MIDDLE_MM = 2;
  private static final double COARSE_MM = 4;
  private static final double PLANE_MM = 12;

  /** A plane needs no points this close to the shadow, mm. */
  private static final double PLANE_CLEAR_MM = 2.5;

  private final DoubleList xy = new DoubleList();
  private final DoubleList z = new DoubleList();
  private final DoubleList low = new DoubleList();
  private final DoubleList high = new DoubleList();
  private final IntList kind = new IntList();
  private final IntList edges = new IntList();

  /** The nodes on each wall from corner to corner, counter-clockwise from y0; filled by walls. */
  final IntList[] walls = {new IntList(), new IntList(), new IntList(), new IntList()};

  int add(double x, double y, double height, byte what) {
    xy.add(x);
    xy.add(y);
    z.add(height);
    kind.add(what);
    low.add(-Double.MAX_VALUE);
    high.add(Double.MAX_VALUE);
    return kind.size() - 1;
  }

  /** Adds a free node that must stay between two heights; it starts as near to z as they allow. */
  void addBetween(double x, double y, double height, double lo, double hi) {
    int i = add(x, y, Math.max(lo, Math.min(hi, height)), FREE);
    low.set(i, lo);
    high.set(i, hi);
  }

  /** Moves a node up or down. */
  void lift(int node, double height) {
    z.set(node, height);
  }

  /** The least height allowed at each node. */
  double[] lows() {
    return low.toArray();
  }

  /** The greatest height allowed at each node. */
  double[] highs() {
    return high.toArray();
  }

  void edge(int a, int b) {
    edges.add(a);
    edges.add(b);
  }

  int size() {
    return kind.size();
  }

  double[] points() {
    return xy.toArray();
  }

  double[] heights() {
    return z.toArray();
  }

  int[] edges() {
    return edges.toArray();
  }

  byte[] kinds() {
    byte[] k = new byte[kind.size()];
    for (int i = 0; i < k.length; i++) {
      k[i] = (byte) kind.get(i);
    }
    return k;
  }

  /** Adds the block's rectangle and the ring {@code ringMm} inside it, both at one height. */
  void walls(BlockBox box, double ringMm, double height, boolean plane) {
    double spacing = plane ? PLANE_MM : COARSE_MM;
    rectangle(box.x0(), box.y0(), box.x1(), box.y1(), height, spacing, walls);
    IntList[] ring = {new IntList(), new IntList(), new IntList(), new IntList()};
    rectangle(
        (float) (box.x0() + ringMm),
        (float) (box.y0() + ringMm),
        (float) (box.x1() - ringMm),
        (float) (box.y1() - ringMm),
        height,
        spacing,
        ring);
    for (IntList side : ring) {
      for (int i = 0; i + 1 < side.size(); i++) {
        edge(side.get(i), side.get(i + 1));
      }
    }
  }

  private void rectangle(
      double x0, double y0, double x1, double y1, double h, double spacing, IntList[] sides) {
    double[] cx = {x0, x1, x1, x0};
    double[] cy = {y0, y0, y1, y1};
    int first = size();
    for (int k = 0; k < 4; k++) {
      add(cx[k], cy[k], h, WALL);
    }
    for (int k = 0; k < 4; k++) {
      int m = (k + 1) % 4;
      double length = Math.abs(cx[m] - cx[k]) + Math.abs(cy[m] - cy[k]);
      int n = Math.max(1, (int) Math.round(length / spacing));
      sides[k].add(first + k);
      for (int i = 1; i < n; i++) {
        double t = (double) i / n;
        double x = (float) (cx[k] + t * (cx[m] - cx[k]));
        double y = (float) (cy[k] + t * (cy[m] - cy[k]));
        sides[k].add(add(x, y, h, WALL));
      }
      sides[k].add(first + m);
    }
  }

  /** Adds free points beside the shadow, the closer the denser, and leaves the ring empty. */
  void outside(DepthGrid grid, double ringMm, GridSheet start, double wall) {
    int fine = stride(grid, FINE_MM);
    int middle = stride(grid, MIDDLE_MM);
    int coarse = stride(grid, COARSE_MM);
    int plane = stride(grid, PLANE_MM);
    double edge = ringMm + CLEAR_MM;
    int ri = (int) Math.ceil(edge / grid.gx);
    int rj = (int) Math.ceil(edge / grid.gy);
    for (int j = rj; j < grid.ny - rj; j++) {
      for (int i = ri; i < grid.nx - ri; i++) {
        int o = j * grid.nx + i;
        double d = grid.distance[o];
        int s = d < FINE_BELOW_MM ? fine : d < MIDDLE_BELOW_MM ? middle : coarse;
        if (start == null) {
          s = plane;
        }
        if (i % s == 0 && j % s == 0 && d >= (start == null ? PLANE_CLEAR_MM : CLEAR_MM)) {
          double x = (float) grid.x(o);
          double y = (float) grid.y(o);
          double h = start == null ? wall : start.applyAsDouble(x, y);
          addBetween(x, y, h, -Double.MAX_VALUE, grid.ceiling[o]);
        }
      }
    }
  }

  private static int stride(DepthGrid grid, double mm) {
    return Math.max(1, (int) Math.round(mm / Math.max(grid.gx, grid.gy)));
  }
}
