package org.castwright.survey;

import java.util.Arrays;

/**
 * Measures catches too narrow for one picture of the whole model: the model is cut into tiles, and
 * each tile in which the whole picture shows a caught column is drawn again with columns a quarter
 * of the release tolerance apart.
 */
final class NarrowLook {

  /** Columns stand this share of the release tolerance apart, so a width is right to a quarter. */
  static final double SHARE = 0.25;

  // a whole picture finer than this across would cost more than it tells
  private static final int MOST_PIXELS = 16_384;
  private static final int TILE = 512;
  // widths up to twice this many pixels come out whole at a tile's rim
  private static final int MARGIN = 32;

  private final double[] points;
  private final int[] tri;
  private final CaughtColumns coarse;
  private final double release;
  private final double pixel;
  private final int tilesX;
  private final int tilesY;
  private double width;
  private int[] columns = new int[0];

  /**
   * @param points vertices, z along the pull
   * @param coarse what the whole picture shows
   */
  NarrowLook(double[] points, int[] tri, CaughtColumns coarse, double release) {
    this.points = points;
    this.tri = tri;
    this.coarse = coarse;
    this.release = release;
    Raster r = coarse.raster();
    double side = r.pixel() * Math.max(r.nx(), r.ny());
    pixel = Math.max(release * SHARE, side / MOST_PIXELS);
    tilesX = (int) Math.ceil(r.nx() * r.pixel() / (TILE * pixel));
    tilesY = (int) Math.ceil(r.ny() * r.pixel() / (TILE * pixel));
  }

  /** The pixel a narrow look would have, mm. */
  double pixel() {
    return pixel;
  }

  /** The width of the widest catch, mm. */
  double width() {
    return width;
  }

  /** The columns of the whole picture that hold catches wider than the tolerance, ascending. */
  int[] columns() {
    return columns;
  }

  void run(int threads) {
    boolean[] busy = busyTiles();
    int[] tiles = new int[busy.length];
    int[] rank = new int[busy.length];
    int n = 0;
    for (int t = 0; t < busy.length; t++) {
      rank[t] = busy[t] ? n : -1;
      if (busy[t]) {
        tiles[n++] = t;
      }
    }
    int[] start = new int[n + 1];
    int[] facets = bin(rank, n, start);
    double[] widths = new double[n];
    int[][] found = new int[n][];
    Lanes.run(
        n,
        threads,
        DepthImage::new,
        (image, k) -> {
          image.draw(points, tri, tile(tiles[k]), facets, start[k], start[k + 1]);
          measure(image, k, widths, found);
        });
    int total = 0;
    for (int k = 0; k < n; k++) {
      width = Math.max(width, widths[k]);
      columns = Arrays.copyOf(columns, total + found[k].length);
      System.arraycopy(found[k], 0, columns, total, found[k].length);
      total += found[k].length;
    }
    columns = Arrays.stream(columns).sorted().distinct().toArray();
  }

  private Raster tile(int t) {
    Raster r = coarse.raster();
    int n = TILE + 2 * MARGIN;
    int i = t % tilesX;
    int j = t / tilesX;
    double step = TILE * pixel;
    return new Raster(
        r.x0() + i * step - MARGIN * pixel, r.y0() + j * step - MARGIN * pixel, pixel, n, n);
  }

  private boolean[] busyTiles() {
    Raster r = coarse.raster();
    boolean[] busy = new boolean[tilesX * tilesY];
    double ratio = r.pixel() / (TILE * pixel);
    for (int j = 0; j < r.ny(); j++) {
      for (int i = 0; i < r.nx(); i++) {
        if (coarse.caught(j * r.nx() + i)) {
          int y1 = Math.min(tilesY - 1, (int) ((j + 1) * ratio));
          int x1 = Math.min(tilesX - 1, (int) ((i + 1) * ratio));
          for (int y = (int) (Math.max(0, j - 1) * ratio); y <= y1; y++) {
            for (int x = (int) (Math.max(0, i - 1) * ratio); x <= x1; x++) {
              busy[y * tilesX + x] = true;
            }
          }
        }
      }
    }
    return busy;
  }

  /** Facets by busy tile, packed; fills {@code start} with each tile's first place. */
  private int[] bin(int[] rank, int n, int[] start) {
    int[] count = new int[n];
    visit(rank, (k, f) -> count[k]++);
    for (int k = 0; k < n; k++) {
      start[k + 1] = start[k] + count[k];
    }
    int[] facets = new int[start[n]];
    int[] fill = Arrays.copyOf(start, n);
    visit(rank, (k, f) -> facets[fill[k]++] = f);
    return facets;
  }

  private interface Visitor {
    void at(int rank, int facet);
  }

  private void visit(int[] rank, Visitor visitor) {
    Raster r = coarse.raster();
    double step = TILE * pixel;
    double margin = (MARGIN + 1) * pixel;
    for (int f = 0; f < tri.length / 3; f++) {
      int a = 3 * tri[3 * f];
      int b = 3 * tri[3 * f + 1];
      int c = 3 * tri[3 * f + 2];
      int x1 = index(max(a, b, c) - r.x0() + margin, step, tilesX);
      int y1 = index(max(a + 1, b + 1, c + 1) - r.y0() + margin, step, tilesY);
      int x0 = index(min(a, b, c) - r.x0() - margin, step, tilesX);
      for (int y = index(min(a + 1, b + 1, c + 1) - r.y0() - margin, step, tilesY); y <= y1; y++) {
        for (int x = x0; x <= x1; x++) {
          int k = rank[y * tilesX + x];
          if (k >= 0) {
            visitor.at(k, f);
          }
        }
      }
    }
  }

  private static int index(double distance, double step, int tiles) {
    return Math.max(0, Math.min(tiles - 1, (int) Math.floor(distance / step)));
  }

  private double max(int a, int b, int c) {
    return Math.max(points[a], Math.max(points[b], points[c]));
  }

  private double min(int a, int b, int c) {
    return Math.min(points[a], Math.min(points[b], points[c]));
  }

  private void measure(DepthImage image, int k, double[] widths, int[][] found) {
    CaughtColumns narrow = new CaughtColumns(image, release);
    Raster r = image.raster();
    int[] out = new int[0];
    int n = 0;
    int last = -1;
    for (int j = MARGIN; j < MARGIN + TILE && !narrow.isEmpty(); j++) {
      for (int i = MARGIN; i < MARGIN + TILE; i++) {
        double d = narrow.width(narrow.squared(j * r.nx() + i));
        widths[k] = Math.max(widths[k], d);
        if (d > release) {
          int c = coarse.raster().nearest(r.x0() + i * r.pixel(), r.y0() + j * r.pixel());
          if (c != last) {
            out = n == out.length ? Arrays.copyOf(out, 2 * n + 8) : out;
            out[n++] = c;
            last = c;
          }
        }
      }
    }
    found[k] = Arrays.copyOf(out, n);
  }
}
