package org.castwright.side;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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
 * @param head height up to which the pocket reaches, mm: within it the plug is nearly straight, so
 *     that a long core does not grow into what lies beside its hole
 */
record Footprint(Polygon outline, double floor, double head) {

  /**
   * Draft of the flanks above the pocket, degrees; 3° to 7° is common practice for loose pieces, no
   * source.
   */
  static final double DRAFT_DEG = 5;

  /** Draft of the flanks along the pocket, degrees; 1° is the least for a core, common practice. */
  static final double CORE_DRAFT_DEG = 1;

  /** Plug beyond the pocket on all sides and below it, mm. */
  static final double MARGIN = 1.2;

  /** A pocket with less than this share of all points gets no plug of its own. */
  private static final double LEAST_SHARE = 0.02;

  /** Plugs closer than this become one: what is left between them would break, mm. */
  private static final double LEAST_BETWEEN = 4;

  /** A plug thinner than this breaks or gets lost, mm; common practice, no source. */
  private static final double LEAST_WIDTH = 6;

  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** Segments of a quarter circle at the corners. */
  private static final int QUARTER = 3;

  /**
   * The plugs that hold all points.
   *
   * @param points packed x y z in the frame of the pull
   * @param shared pockets closer than this across the pull share a plug, mm
   */
  static List<Footprint> of(double[] points, double shared) {
    return of(points, shared, LEAST_SHARE);
  }

  /**
   * As {@link #of(double[], double)}.
   *
   * @param leastShare pockets with less than this share of all points get no plug
   */
  static List<Footprint> of(double[] points, double shared, double leastShare) {
    List<Footprint> out = new ArrayList<>();
    int[] group = groups(points, shared);
    int n = Arrays.stream(group).max().orElse(-1) + 1;
    for (int g = 0; g < n; g++) {
      List<Coordinate> c = new ArrayList<>();
      double low = Double.MAX_VALUE;
      double high = -Double.MAX_VALUE;
      for (int i = 0; i < group.length; i++) {
        if (group[i] == g) {
          c.add(new Coordinate(points[3 * i], points[3 * i + 1]));
          low = Math.min(low, points[3 * i + 2]);
          high = Math.max(high, points[3 * i + 2]);
        }
      }
      if (c.size() < leastShare * points.length / 3) {
        continue; // a sliver beside a wall that another pull takes with the rest of its pocket
      }
      Geometry hull = new ConvexHull(c.toArray(new Coordinate[0]), FACTORY).getConvexHull();
      out.add(new Footprint(grown(hull), low - MARGIN, high));
    }
    return joined(out);
  }

  /** Outlines that meet become one. */
  private static List<Footprint> joined(List<Footprint> in) {
    List<Footprint> out = new ArrayList<>();
    for (Footprint f : in) {
      Footprint now = f;
      int i = 0;
      while (i < out.size()) {
        Footprint o = out.get(i);
        if (o.outline.isWithinDistance(now.outline, LEAST_BETWEEN)) {
          Geometry both = o.outline.union(now.outline);
          Polygon hull = (Polygon) new ConvexHull(both).getConvexHull();
          now = new Footprint(hull, Math.min(o.floor, now.floor), Math.max(o.head, now.head));
          out.remove(i);
          i = 0;
        } else {
          i++;
        }
      }
      out.add(now);
    }
    return out;
  }

  /** Numbers points by groups that lie within a distance of each other across the pull. */
  private static int[] groups(double[] points, double shared) {
    int n = points.length / 3;
    double x0 = Double.MAX_VALUE;
    double y0 = Double.MAX_VALUE;
    double x1 = -Double.MAX_VALUE;
    double y1 = -Double.MAX_VALUE;
    for (int i = 0; i < n; i++) {
      x0 = Math.min(x0, points[3 * i]);
      y0 = Math.min(y0, points[3 * i + 1]);
      x1 = Math.max(x1, points[3 * i]);
      y1 = Math.max(y1, points[3 * i + 1]);
    }
    double cell = shared / 2;
    int nx = (int) ((x1 - x0) / cell) + 1;
    int ny = (int) ((y1 - y0) / cell) + 1;
    int[] label = new int[nx * ny];
    Arrays.fill(label, -2);
    int[] at = new int[n];
    for (int i = 0; i < n; i++) {
      int column = (int) ((points[3 * i] - x0) / cell);
      int row = (int) ((points[3 * i + 1] - y0) / cell);
      at[i] = row * nx + column;
      label[at[i]] = -1;
    }
    int groups = 0;
    int[] stack = new int[nx * ny];
    for (int s = 0; s < label.length; s++) {
      if (label[s] == -1) {
        fill(label, nx, ny, s, groups++, stack);
      }
    }
    int[] out = new int[n];
    for (int i = 0; i < n; i++) {
      out[i] = label[at[i]];
    }
    return out;
  }

  private static void fill(int[] label, int nx, int ny, int seed, int group, int[] stack) {
    int top = 0;
    stack[top++] = seed;
    label[seed] = group;
    while (top > 0) {
      int o = stack[--top];
      for (int k = 0; k < 25; k++) {
        int i = o % nx + k % 5 - 2;
        int j = o / nx + k / 5 - 2;
        if (i >= 0 && j >= 0 && i < nx && j < ny && label[j * nx + i] == -1) {
          label[j * nx + i] = group;
          stack[top++] = j * nx + i;
        }
      }
    }
  }

  private static Polygon grown(Geometry hull) {
    double width = hull.getArea() > 0 ? new MinimumDiameter(hull).getLength() : 0;
    double by = Math.max(MARGIN, (LEAST_WIDTH - width) / 2);
    Geometry grown = hull.buffer(by, QUARTER);
    return (Polygon) new ConvexHull(grown).getConvexHull();
  }

  /** The plug's body from its floor to {@code top}, closed, oriented outward. */
  TriMesh body(double top) {
    double[] height = {floor, Math.min(head, top - MARGIN), top};
    double core = (height[1] - floor) * Math.tan(Math.toRadians(CORE_DRAFT_DEG));
    double[] wider = {0, core, core + (top - height[1]) * Math.tan(Math.toRadians(DRAFT_DEG))};
    Coordinate[] c = ((Polygon) outline.norm()).getExteriorRing().reverse().getCoordinates();
    int n = c.length - 1;
    int levels = height.length;
    MeshBuilder m = new MeshBuilder();
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < levels; k++) {
        Coordinate p = moved(c[(i + n - 1) % n], c[i], c[i + 1], wider[k]);
        m.vertex(p.x, p.y, height[k]);
      }
    }
    for (int i = 0; i < n; i++) {
      int a = levels * i;
      int b = levels * ((i + 1) % n);
      for (int k = 0; k + 1 < levels; k++) {
        m.triangle(a + k, b + k, b + k + 1);
        m.triangle(a + k, b + k + 1, a + k + 1);
      }
      if (i > 0 && i + 1 < n) {
        m.triangle(0, b, a);
        m.triangle(levels - 1, a + levels - 1, b + levels - 1);
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
