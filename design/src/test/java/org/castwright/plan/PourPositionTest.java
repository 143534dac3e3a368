package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Which way up a mold is poured. */
class PourPositionTest {

  /** A disk with a bump of 2 mm at each of some places of its rim, degrees from x. */
  private static TriMesh bumpy(int... at) {
    List<Coordinate> rim = new ArrayList<>();
    for (int d = 0; d < 360; d++) {
      double r = 50;
      for (int a : at) {
        double off = Math.abs(Math.floorMod(d - a + 180, 360) - 180);
        r = Math.max(r, 52 - 2 * off / 5);
      }
      double t = Math.toRadians(d);
      rim.add(new Coordinate(r * Math.cos(t), r * Math.sin(t)));
    }
    rim.add(rim.get(0));
    Polygon p = new GeometryFactory().createPolygon(rim.toArray(new Coordinate[0]));
    return FloatGrid.snap(Prism.of(p, -10, 10));
  }

  private static int peaks(TriMesh mesh, Frame frame) {
    TriMesh local = mesh.toLocal(frame);
    return RoofPeaks.of(local, 1, 1, RoofPeaks.least(local)).size();
  }

  @Test
  void aTiltSavesAVent() {
    // two bumps beside the top of every right angle
    TriMesh mesh = bumpy(78, 102, 168, 192, 258, 282, 348, 12);
    assertEquals(2, peaks(mesh, Frame.WORLD));
    Frame f = PourPosition.of(mesh, Frame.WORLD, true, false);
    assertEquals(1, peaks(mesh, f));
    assertEquals(1, f.w().z(), 1e-12);
    assertFalse(Math.abs(f.u().x()) > 0.99 || Math.abs(f.u().y()) > 0.99, f + "");
  }

  @Test
  void noTiltWithoutNeed() {
    TriMesh bar = Primitives.box(new Vec3(-60, -10, -10), new Vec3(60, 10, 10));
    Frame f = PourPosition.of(bar, Frame.WORLD, true, false);
    // lying: lower
    assertEquals(1, Math.abs(f.v().y()), 1e-12);
    // three bumps on top in one position, one in the others
    assertEquals(
        1,
        peaks(bumpy(75, 90, 105), PourPosition.of(bumpy(75, 90, 105), Frame.WORLD, true, false)));
  }

  /** All else alike, the mold is filled through what the model stands on. */
  @Test
  void theFootComesUp() {
    double[] profile = {0, 0, 25, 0, 18, 40, 0, 40};
    TriMesh frustum = FloatGrid.snap(Primitives.revolve(profile, 48));
    Frame along = Frame.along(Vec3.X);
    Frame f = PourPosition.of(frustum, along, true, false);
    Vec3 up = f.v();
    assertTrue(up.z() < -0.99, up + "");
    // where a side piece may take the foot only peaks and height count
    assertEquals(along.quarterTurned(0).v(), PourPosition.of(frustum, along, false, false).v());
  }
}
