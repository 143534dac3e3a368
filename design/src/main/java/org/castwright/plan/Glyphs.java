package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.union.CascadedPolygonUnion;

/** Digits and an arrow as polygons, bold enough to print 0.6 mm deep. */
final class Glyphs {

  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** Segments of a digit: top, upper left, upper right, middle, lower left, lower right, bottom. */
  private static final String[] DIGITS = {
    "1110111", "0010010", "1011101", "1011011", "0111010", "1101011", "1101111", "1010010",
    "1111111", "1111011"
  };

  private Glyphs() {}

  /** A digit of the height given, its lower left corner at the origin, half as wide as high. */
  static Geometry digit(int digit, double height) {
    double w = height / 2;
    double s = height / 7;
    double mid = (height - s) / 2;
    double[][] boxes = {
      {0, height - s, w, height},
      {0, mid, s, height},
      {w - s, mid, w, height},
      {0, mid, w, mid + s},
      {0, 0, s, mid + s},
      {w - s, 0, w, mid + s},
      {0, 0, w, s}
    };
    List<Polygon> on = new ArrayList<>();
    for (int i = 0; i < 7; i++) {
      if (DIGITS[digit].charAt(i) == '1') {
        double[] b = boxes[i];
        on.add(Outline.rectangle(b[0], b[1], b[2], b[3]));
      }
    }
    return CascadedPolygonUnion.union(on);
  }

  /** An arrow pointing up, its lower left corner at the origin, half as wide as high. */
  static Polygon arrow(double height) {
    double w = height / 2;
    double shaft = height / 7;
    double neck = 0.55 * height;
    double[] p = {
      w / 2 - shaft / 2,
      0,
      w / 2 + shaft / 2,
      0,
      w / 2 + shaft / 2,
      neck,
      w,
      neck,
      w / 2,
      height,
      0,
      neck,
      w / 2 - shaft / 2,
      neck
    };
    Coordinate[] c = new Coordinate[p.length / 2 + 1];
    for (int i = 0; i < p.length / 2; i++) {
      c[i] = new Coordinate(p[2 * i], p[2 * i + 1]);
    }
    c[c.length - 1] = c[0];
    return FACTORY.createPolygon(c);
  }
}
