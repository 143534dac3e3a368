package org.castwright.plan;

import java.util.HashMap;
import java.util.Map;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.triangulate.polygon.ConstrainedDelaunayTriangulator;

/** Closed prisms over polygons with or without holes. */
public final class Prism {

  private Prism() {}

  /** The prism over {@code base} from {@code z0} up to {@code z1}, outward-oriented. */
  public static TriMesh of(Polygon base, double z0, double z1) {
    Polygon oriented = (Polygon) base.norm();
    MeshBuilder m = new MeshBuilder();
    Map<Coordinate, Integer> low = new HashMap<>();
    Geometry triangles = new ConstrainedDelaunayTriangulator(oriented).getResult();
    for (int i = 0; i < triangles.getNumGeometries(); i++) {
      Coordinate[] c = triangles.getGeometryN(i).getCoordinates();
      int[] v = new int[3];
      for (int k = 0; k < 3; k++) {
        v[k] = vertex(m, low, c[k], z0, z1);
      }
      boolean counterclockwise = cross(c[0], c[1], c[2]) > 0;
      int b = counterclockwise ? v[1] : v[2];
      int d = counterclockwise ? v[2] : v[1];
      m.triangle(v[0] + 1, b + 1, d + 1);
      m.triangle(v[0], d, b);
    }
    // normal form: shells run clockwise, holes counter-clockwise: material on the right hand
    walls(m, low, oriented.getExteriorRing());
    for (int i = 0; i < oriented.getNumInteriorRing(); i++) {
      walls(m, low, oriented.getInteriorRingN(i));
    }
    return m.build();
  }

  /** The low vertex of a corner; the high one has the next index. */
  private static int vertex(
      MeshBuilder m, Map<Coordinate, Integer> low, Coordinate c, double z0, double z1) {
    return low.computeIfAbsent(
        new Coordinate(c.x, c.y),
        k -> {
          int v = m.vertex(k.x, k.y, z0);
          m.vertex(k.x, k.y, z1);
          return v;
        });
  }

  private static void walls(MeshBuilder m, Map<Coordinate, Integer> low, LineString ring) {
    Coordinate[] c = ring.getCoordinates();
    for (int i = 0; i + 1 < c.length; i++) {
      int a = low.get(new Coordinate(c[i].x, c[i].y));
      int b = low.get(new Coordinate(c[i + 1].x, c[i + 1].y));
      m.triangle(a, b + 1, b);
      m.triangle(a, a + 1, b + 1);
    }
  }

  private static double cross(Coordinate a, Coordinate b, Coordinate c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  }
}
