package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

class PrismTest {

  @Test
  void volumeIsAreaTimesHeightAndSurfaceIsClosed() {
    Polygon plain = Outline.rectangle(0, 0, 10, 4);
    assertEquals(120, Prism.of(plain, 1, 4).volume(), 1e-9);
    Polygon holed =
        (Polygon)
            plain
                .difference(Outline.rectangle(2, 1, 4, 3))
                .difference(Outline.rectangle(6, 1, 8, 3));
    TriMesh m = Prism.of(holed, -1, 1);
    assertEquals(2 * (40 - 8), m.volume(), 1e-9);
    // closed surface: the area vectors sum to zero (divergence theorem)
    double x = 0;
    double y = 0;
    double z = 0;
    for (int f = 0; f < m.triangleCount(); f++) {
      x += m.areaVector(f).x();
      y += m.areaVector(f).y();
      z += m.areaVector(f).z();
    }
    assertEquals(0, Math.abs(x) + Math.abs(y) + Math.abs(z), 1e-9);
    // genus 2: V - E + F = 2 - 2 g with E = 3 F / 2
    assertEquals(-2, m.vertexCount() - m.triangleCount() / 2);
  }

  @Test
  void glyphsHaveArea() {
    for (int d = 0; d <= 9; d++) {
      Geometry g = Glyphs.digit(d, 10);
      assertEquals(1, g.getNumGeometries(), "digit " + d);
      assertEquals(g.getArea() * 0.6, Prism.of((Polygon) g, 0, 0.6).volume(), 1e-9);
    }
    assertEquals(0.5 * 5 * 4.5 + 5.5 * 10 / 7, Glyphs.arrow(10).getArea(), 1e-9);
  }
}
