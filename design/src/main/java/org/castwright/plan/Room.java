package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/**
 * Free ground between the casting's shadow, the outside of the block and what has been placed
 * already. Answers how far a point is from each and lists free places on a grid.
 */
final class Room {

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private final Ground ground;
  private final Polygon outline;
  private final IndexedPointInAreaLocator inside;
  private final IndexedFacetDistance rim;
  private final List<Disc> taken = new ArrayList<>();

  /** A round place, mm. */
  record Disc(double x, double y, double radius) {}

  Room(Ground ground, Polygon outline) {
    this.ground = ground;
    this.outline = outline;
    inside = new IndexedPointInAreaLocator(outline);
    rim = new IndexedFacetDistance(outline.getBoundary());
  }

  Polygon outline() {
    return outline;
  }

  Ground ground() {
    return ground;
  }

  /** Marks a round place as used. */
  void take(double x, double y, double radius) {
    taken.add(new Disc(x, y, radius));
  }

  /** Distance to the outside of the block, mm; below zero outside it. */
  double toOutside(double x, double y) {
    Coordinate c = new Coordinate(x, y);
    double d = rim.distance(FACTORY.createPoint(c));
    return inside.locate(c) == Location.EXTERIOR ? -d : d;
  }

  /** Distance to the nearest used place's rim, mm. */
  double toTaken(double x, double y) {
    double d = Double.POSITIVE_INFINITY;
    for (Disc t : taken) {
      d = Math.min(d, Math.hypot(x - t.x, y - t.y) - t.radius);
    }
    return d;
  }

  /** Free places for a disc of {@code radius} with {@code gap} all round, on a grid, by rows. */
  List<double[]> places(double radius, double gap, double step) {
    Geometry box = outline.getEnvelope();
    double x0 = box.getEnvelopeInternal().getMinX();
    double y0 = box.getEnvelopeInternal().getMinY();
    double x1 = box.getEnvelopeInternal().getMaxX();
    double y1 = box.getEnvelopeInternal().getMaxY();
    double need = radius + gap;
    List<double[]> places = new ArrayList<>();
    for (double y = y0 + need; y <= y1 - need + 1e-9; y += step) {
      for (double x = x0 + need; x <= x1 - need + 1e-9; x += step) {
        if (ground.shadowDistance(x, y) >= need
            && toTaken(x, y) >= need
            && toOutside(x, y) >= need - 1e-9) {
          places.add(new double[] {x, y});
        }
      }
    }
    return places;
  }
}
