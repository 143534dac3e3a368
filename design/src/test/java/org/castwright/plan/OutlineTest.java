package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.mesh.Shapes;
import org.castwright.parting.BlockBox;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

class OutlineTest {

  private static final BlockBox BOX = new BlockBox(-35, -35, 35, 35, -10, 10);

  @Test
  void contourKeepsItsDistanceAndSavesMaterial() {
    ShadowMap map = ShadowMap.of(Shapes.cylinder(25, 5, 128), 15, 0.25);
    Polygon p = Outline.of(BlockShape.CONTOUR, BOX, Outline.shadow(map), 10);
    Geometry disc = new GeometryFactory().createPoint(new Coordinate(0, 0)).buffer(25, 64);
    assertTrue(p.contains(disc));
    // within one cell of the raster and the thinning
    assertTrue(p.getExteriorRing().distance(disc) >= 10 - 0.6);
    assertEquals(4300, p.getArea(), 400);
    assertTrue(Outline.rectangle(-35, -35, 35, 35).contains(p));
    // it stands on a straight foot
    assertTrue(
        p.getExteriorRing()
            .contains(
                new GeometryFactory()
                    .createLineString(
                        new Coordinate[] {new Coordinate(-15, -35), new Coordinate(15, -35)})));
  }

  @Test
  void roundedCornersTakeAwayTheirClosedForm() {
    // a square of side a with corners of radius r: a² - (4 - p) r², p the area of the unit circle's
    // polygon of 48 sides, 24 sin 7.5°
    double r = 0.12 * 70;
    Polygon p = Outline.of(BlockShape.ROUNDED, BOX, null, 10);
    // corners are moved to a grid of 1/1024 mm along 53 mm of arcs
    double polygon = 24 * Math.sin(Math.toRadians(7.5));
    assertEquals(4900 - (4 - polygon) * r * r, p.getArea(), 0.05);
  }
}
