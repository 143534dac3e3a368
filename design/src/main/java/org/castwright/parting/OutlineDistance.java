package org.castwright.parting;

import org.castwright.mesh.IntList;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/** Distance in plan to the seam's image. Safe for many threads. */
final class OutlineDistance {

  private final GeometryFactory factory = new GeometryFactory();
  private final IndexedFacetDistance index;

  OutlineDistance(Seam seam) {
    IntList edges = new IntList();
    for (int e = 0; e < seam.size(); e++) {
      if (!seam.vertical(e)) {
        edges.add(e);
      }
    }
    LineString[] lines = new LineString[edges.size()];
    for (int i = 0; i < lines.length; i++) {
      int e = edges.get(i);
      lines[i] =
          factory.createLineString(
              new Coordinate[] {point(seam, seam.planFrom(e)), point(seam, seam.planTo(e))});
    }
    index = new IndexedFacetDistance(factory.createMultiLineString(lines));
  }

  private static Coordinate point(Seam seam, int p) {
    return new Coordinate(seam.plan[2 * p], seam.plan[2 * p + 1]);
  }

  /** mm. */
  double distance(double x, double y) {
    return index.distance(factory.createPoint(new Coordinate(x, y)));
  }
}
