package org.castwright.survey;

import org.castwright.mesh.TriMesh;

/**
 * Which facets neither side of a pull can see. The mesh is drawn a second time over its finished
 * depth image; a facet is seen in a column where its height is the very number that the image holds
 * as the column's upper or lower surface, so no bias is needed. Facets that pass too few columns,
 * small ones and walls, are judged at points moved off the facet into the open by one and a half
 * pixels. Only columns in kept places count.
 */
final class FacetHits implements SpanSink {

  private static final int ENOUGH = 4;
  private static final double NUDGE_PIXELS = 1.5;
  private static final double POINT_EVERY_PIXELS = 4;
  private static final int MOST_POINTS_A_SIDE = 4;

  private final DepthImage image;
  private final CaughtColumns columns;
  private final int nx;
  private final int[] seen;
  private final int[] hidden;
  private final int[] squared;
  private final float[] deep;

  FacetHits(DepthImage image, CaughtColumns columns, int facets) {
    this.image = image;
    this.columns = columns;
    this.nx = image.raster().nx();
    seen = new int[facets];
    hidden = new int[facets];
    squared = new int[facets];
    deep = new float[facets];
  }

  /** Judges every facet; {@code points} are the vertices the image was drawn from. */
  void run(double[] points, TriMesh mesh) {
    new Scanlines(points, mesh.tri(), image.raster(), this).all();
    double[] corner = new double[9];
    for (int f = 0; f < seen.length; f++) {
      if (seen[f] + hidden[f] < ENOUGH) {
        for (int k = 0; k < 9; k++) {
          corner[k] = points[3 * mesh.tri()[3 * f + k / 3] + k % 3];
        }
        probe(f, corner);
      }
    }
  }

  @Override
  public void span(
      int facet, int row, int from, int to, double x, double z, double slope, boolean up) {
    for (int k = from; k < to; k++) {
      int c = row * nx + k;
      double h = z + (k - x) * slope;
      if ((up ? h < image.upper(c) : h > image.lower(c)) && columns.kept(c)) {
        hide(facet, c);
      } else {
        seen[facet]++;
      }
    }
  }

  private void hide(int facet, int column) {
    hidden[facet]++;
    squared[facet] = Math.max(squared[facet], columns.squared(column));
    deep[facet] = Math.max(deep[facet], (float) image.gap(column));
  }

  /** Judges a facet at the centers of its even subdivision, moved outward. */
  private void probe(int f, double[] p) {
    double ux = p[3] - p[0];
    double uy = p[4] - p[1];
    double uz = p[5] - p[2];
    double vx = p[6] - p[0];
    double vy = p[7] - p[1];
    double vz = p[8] - p[2];
    double ax = uy * vz - uz * vy;
    double ay = uz * vx - ux * vz;
    double az = ux * vy - uy * vx;
    double twice = Math.sqrt(ax * ax + ay * ay + az * az);
    if (twice == 0) {
      return;
    }
    double pixel = image.raster().pixel();
    double off = NUDGE_PIXELS * pixel / twice;
    double sides = Math.ceil(Math.sqrt(twice) / (POINT_EVERY_PIXELS * pixel));
    int n = (int) Math.max(1, Math.min(MOST_POINTS_A_SIDE, sides));
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < 2 * (n - i) - 1; j++) {
        // centers of the upright and the upturned small triangles of one strip
        double third = j % 2 == 0 ? 1 / 3.0 : 2 / 3.0;
        int cell = j / 2;
        double s = (cell + third) / n;
        double t = (i + third) / n;
        point(
            f,
            p[0] + s * ux + t * vx + off * ax,
            p[1] + s * uy + t * vy + off * ay,
            p[2] + s * uz + t * vz + off * az);
      }
    }
  }

  private void point(int f, double x, double y, double z) {
    int c = image.raster().nearest(x, y);
    if (c >= 0 && columns.kept(c) && image.upper(c) > z && image.lower(c) < z) {
      hide(f, c);
    } else {
      seen[f]++;
    }
  }

  /** The share of the facet that neither side sees, 0 to 1. */
  double share(int f) {
    int all = seen[f] + hidden[f];
    return all == 0 ? 0 : (double) hidden[f] / all;
  }

  /** The most space shut in by a column through the facet's hidden part, mm. */
  double depth(int f) {
    return deep[f];
  }

  /** The width of the catch at the facet's hidden part, mm. */
  double width(int f) {
    return columns.width(squared[f]);
  }
}
