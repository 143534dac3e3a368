package org.castwright.side;

import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.algorithm.MinimumDiameter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/**
 * The plug round the pockets one pull frees, in the frame of its pull: a convex outline across the
 * pull, drafted so that it widens outward from its floor.
 *
 * @param outline at the floor
 * @param floor height of the floor, mm
 */
record Footprint(Polygon outline, double floor) {

  /** Draft of the flanks, degrees; 3° to 7° is common practice for loose pieces, no source. */
  static final double DRAFT_DEG = 5;

  /** Plug beyond the pocket on all sides and below it, mm. */
  static final double MARGIN = 1.2;

  /** A plug thinner than this breaks or gets lost, mm; common practice, no source. */
  private static final double LEAST_WIDTH = 6;

  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** Segments of a quarter circle at the corners. */
  private static final int QUARTER = 3;

  /**
   * The plug that holds all points.
   *
   * @param points packed x y z in the frame of the pull
   */
  static Footprint of(double[] points) {
    Coordinate[] c = new Coordinate[points.length / 3];
    double low = Double.MAX_VALUE;
    for (int i = 0; i < c.length; i++) {
      c[i] = new Coordinate(points[3 * i], points[3 * i + 1]);
      low = Math.min(low, points[3 * i + 2]);
    }
    Geometry hull = new ConvexHull(c, FACTORY).getConvexHull();
    return new Footprint(grown(hull), low - MARGIN);
  }

  private static Polygon grown(Geometry hull) {
    double width = hull.getArea() > 0 ? new MinimumDiameter(hull).getLength() : 0;
    double by = Math.max(MARGIN, (LEAST_WIDTH - width) / 2);
    Geometry grown = hull.buffer(by, QUARTER);
    return (Polygon) new ConvexHull(grown).getConvexHull();
  }

  /** The plug's body from its floor to {@code top}, closed, oriented outward. */
  TriMesh body(double top) {
    double wider = (top - floor) * Math.tan(Math.toRadians(DRAFT_DEG));
    Coordinate[] c = ((Polygon) outline.norm()).getExteriorRing().reverse().getCoordinates();
    int n = c.length - 1;
    MeshBuilder m = new MeshBuilder();
    for (int i = 0; i < n; i++) {
      Coordinate out = moved(c[(i + n - 1) % n], c[i], c[i + 1], wider);
      m.vertex(c[i].x, c[i].y, floor);
      m.vertex(out.x, out.y, top);
    }
    for (int i = 0; i < n; i++) {
      int a = 2 * i;
      int b = 2 * ((i + 1) % n);
      m.triangle(a, b, b + 1);
      m.triangle(a, b + 1, a + 1);
      if (i > 0 && i + 1 < n) {
        m.triangle(0, b, a);
        m.triangle(1, a + 1, b + 1);
      }
    }
    return m.build();
  }

  /**
   * Where the corner goes when both its edges move outward, the outline running counter-clockwise.
   */
  private static Coordinate moved(Coordinate before, Coordinate at, Coordinate after, double by) {
    double[] p = outward(before, at);
    double[] q = outward(at, after);
    double s = by / (1 + p[0] * q[0] + p[1] * q[1]);
    return new Coordinate(at.x + s * (p[0] + q[0]), at.y + s * (p[1] + q[1]));
  }

  private static double[] outward(Coordinate a, Coordinate b) {
    double l = Math.hypot(b.x - a.x, b.y - a.y);
    return new double[] {(b.y - a.y) / l, (a.x - b.x) / l};
  }
}
