package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.parting.BlockBox;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.operation.union.CascadedPolygonUnion;
import org.locationtech.jts.precision.GeometryPrecisionReducer;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;

/** Block outlines seen along the pull. */
final class Outline {

  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** Segments of a quarter circle; with corners of a few millimeters the chord error is microns. */
  private static final int QUARTER = 12;

  /** Parts of a millimeter that corners lie on. */
  private static final double GRID = 1024;

  /** How far a contour may move when points are thinned out, mm: well under a print line. */
  private static final double THINNING = 0.1;

  private Outline() {}

  /**
   * @param shape asked for
   * @param box round everything
   * @param shadow of the casting as {@link #shadow} gives it; used for a contour
   * @param distance from the casting's shadow to a contour, mm
   */
  static Polygon of(BlockShape shape, BlockBox box, Geometry shadow, double distance) {
    Polygon rectangle = rectangle(box.x0(), box.y0(), box.x1(), box.y1());
    return switch (shape) {
      case BOX -> rectangle;
      case ROUNDED -> onGrid(rounded(rectangle, box));
      case CONTOUR -> onGrid(contour(rectangle, box, shadow, distance));
    };
  }

  /** Corners moved to whole parts of a millimeter, which floats hold; none closer than that. */
  private static Polygon onGrid(Polygon p) {
    return largest(GeometryPrecisionReducer.reduce(p, new PrecisionModel(GRID)));
  }

  static Polygon rectangle(double x0, double y0, double x1, double y1) {
    return FACTORY.createPolygon(
        new Coordinate[] {
          new Coordinate(x0, y0),
          new Coordinate(x1, y0),
          new Coordinate(x1, y1),
          new Coordinate(x0, y1),
          new Coordinate(x0, y0)
        });
  }

  private static Polygon rounded(Polygon rectangle, BlockBox box) {
    double radius = 0.12 * Math.min(box.x1() - box.x0(), box.y1() - box.y0());
    Polygon core =
        rectangle(box.x0() + radius, box.y0() + radius, box.x1() - radius, box.y1() - radius);
    return (Polygon) core.buffer(radius, QUARTER).intersection(rectangle);
  }

  /** The shadow grown by the distance, with a straight foot and a straight head for the funnel. */
  private static Polygon contour(
      Polygon rectangle, BlockBox box, Geometry shadow, double distance) {
    Geometry grown = shadow.buffer(distance, QUARTER);
    double width = box.x1() - box.x0();
    double cx = (box.x0() + box.x1()) / 2;
    Geometry column = rectangle(cx - 0.25 * width, box.y0(), cx + 0.25 * width, box.y1());
    Geometry all = grown.union(column).intersection(rectangle);
    Geometry smooth = all.buffer(distance / 2, QUARTER).buffer(-distance / 2, QUARTER);
    Geometry thin = TopologyPreservingSimplifier.simplify(smooth, THINNING);
    // the column once more: its straight ends must lie on the box exactly
    Geometry whole = thin.union(column).intersection(rectangle);
    return FACTORY.createPolygon(largest(whole).getExteriorRing());
  }

  /** The covered nodes of a shadow as polygons, thinned to a cell. */
  static Geometry shadow(ShadowMap shadow) {
    List<Polygon> runs = new ArrayList<>();
    double h = shadow.cell() / 2 + 1e-6 * shadow.cell();
    for (int j = 0; j < shadow.ny(); j++) {
      int from = -1;
      for (int i = 0; i <= shadow.nx(); i++) {
        boolean in = i < shadow.nx() && shadow.covered(i, j);
        if (in && from < 0) {
          from = i;
        } else if (!in && from >= 0) {
          runs.add(
              rectangle(shadow.x(from) - h, shadow.y(j) - h, shadow.x(i - 1) + h, shadow.y(j) + h));
          from = -1;
        }
      }
    }
    return TopologyPreservingSimplifier.simplify(CascadedPolygonUnion.union(runs), shadow.cell());
  }

  private static Polygon largest(Geometry g) {
    Polygon best = null;
    for (int i = 0; i < g.getNumGeometries(); i++) {
      if (g.getGeometryN(i) instanceof Polygon p
          && (best == null || p.getArea() > best.getArea())) {
        best = p;
      }
    }
    if (best == null) {
      throw new IllegalStateException("an outline without area");
    }
    return best;
  }
}
