package org.castwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

class SurveyTest {

  // fewer directions and coarser pictures than by default, enough for shapes this plain
  private static final SurveyOptions QUICK =
      new SurveyOptions(160, 120, 200, 800, 5, 6, 5, 0.05, 60, 200_000, 2);

  private static SurveyResult survey(TriMesh mesh) {
    return Survey.of(mesh, QUICK, Progress.NONE);
  }

  /** Two rigid pieces do: common practice, no source. */
  @Test
  void shapesThatTwoPiecesOpen() {
    assertTrue(survey(Shapes.cube(60)).best().free());
    assertTrue(survey(Shapes.cone(30, 60, 48)).best().free());
    assertTrue(survey(Shapes.cylinder(20, 70, 48)).best().free());
    assertTrue(survey(Shapes.sphere(30, 48)).best().free());
    assertTrue(survey(tetrahedron()).best().free());
    SurveyResult hourglass = survey(Shapes.hourglass(30, 12, 80, 64));
    assertTrue(hourglass.best().free());
    // through the axis, not square to it
    assertEquals(90, Turned.degrees(hourglass.best().direction(), Vec3.Z), 1);
  }

  /** More than two rigid pieces are needed: common practice, no source. */
  @Test
  void aKnotDoesNotOpen() {
    SurveyResult r = survey(Shapes.trefoil(15, 7, 160, 24));
    assertFalse(r.best().free());
    assertTrue(r.best().caughtWidth() > 1);
    assertTrue(r.best().trappedVolume() > 1000);
    assertFalse(r.caught().places().isEmpty());
    for (Opening o : r.ranked()) {
      assertFalse(o.free());
    }
  }

  /**
   * A smooth body of genus g opens along a line with g + 1 silhouette loops free of cusps (Elber,
   * Chen, Cohen, JCISE 5(2), 2005): two for a torus along its axis, wherever the axis points.
   */
  @Test
  void tiltedTorus() {
    for (long seed = 1; seed <= 3; seed++) {
      Frame f = Turned.frame(seed);
      SurveyResult r = survey(Turned.by(Shapes.torus(30, 12, 90, 45), f));
      assertEquals(0, Turned.degrees(r.best().direction(), f.w()), 0.06, "seed " + seed);
      assertTrue(r.best().free());
      assertEquals(2, r.best().silhouetteLoops());
      assertTrue(r.best().flatness() < 1);
    }
  }

  /**
   * How far off its axis a torus still opens. A silhouette has a cusp where the pull is an
   * asymptotic direction. At tube angle t, c = -cos t, curvatures 1/r along the tube's circle and
   * -c/(R - r c) across, that direction makes cos² = r c³ / R with the axis; the steepest is on the
   * inner equator, c = 1. So a torus opens up to acos(sqrt(r / R)) off its axis: 50.77° for 12 /
   * 30.
   */
  @Test
  void torusOffItsAxis() {
    TriMesh torus = Shapes.torus(30, 12, 360, 180);
    for (double off : new double[] {5, 25, 45, 48, 54, 60, 75, 90}) {
      double a = Math.toRadians(off);
      Vec3 d = new Vec3(Math.sin(a), 0, Math.cos(a));
      Opening o = Survey.along(torus, d, QUICK, Progress.NONE).best();
      assertEquals(off < 50.77, o.free(), off + " degrees off: width " + o.caughtWidth());
    }
  }

  /** The clean axis wins over any tilt of it, although a tilt loses almost nothing. */
  @Test
  void cleanAxesWin() {
    TriMesh disc = Primitives.frustum(50, 0, 48, 10, 96);
    assertEquals(0, Turned.degrees(survey(disc).best().direction(), Vec3.Z));
    for (long seed = 1; seed <= 2; seed++) {
      Frame f = Turned.frame(seed);
      Vec3 d = survey(Turned.by(disc, f)).best().direction();
      assertEquals(0, Turned.degrees(d, f.w()), 1e-6, "seed " + seed);
    }
    Vec3 cube = survey(Shapes.cube(50)).best().direction();
    assertEquals(new Vec3(0, 0, 1), cube);
  }

  @Test
  void theWiderEndLiesBelow() {
    TriMesh pot = Primitives.frustum(20, 0, 30, 15, 64);
    assertEquals(Vec3.Z.negate().z(), survey(pot).best().direction().z());
    TriMesh turned = Primitives.frustum(30, 0, 20, 15, 64);
    assertEquals(1, survey(turned).best().direction().z());
  }

  @Test
  void sameForAnyNumberOfThreadsAndEveryTime() {
    TriMesh mesh = Turned.by(Shapes.hourglass(30, 12, 80, 40), Turned.frame(5));
    SurveyResult one = Survey.of(mesh, QUICK.withThreads(1), Progress.NONE);
    for (int threads : new int[] {1, 2, 5}) {
      SurveyResult r = Survey.of(mesh, QUICK.withThreads(threads), Progress.NONE);
      assertEquals(one.ranked(), r.ranked());
      assertEquals(one.directionsTried(), r.directionsTried());
      assertEquals(one.caught().places(), r.caught().places());
    }
  }

  @Test
  void rankedDirectionsStandApart() {
    SurveyResult r = survey(Shapes.torus(30, 12, 60, 30));
    List<Opening> all = r.ranked();
    assertEquals(6, all.size());
    for (int i = 0; i < all.size(); i++) {
      for (int k = 0; k < i; k++) {
        double apart = Turned.degrees(all.get(i).direction(), all.get(k).direction());
        assertTrue(apart >= 5, i + " and " + k + " stand " + apart + " degrees apart");
      }
    }
    assertTrue(r.directionsTried() >= 160);
    assertFalse(r.simplified());
  }

  /** The bound holds for every vertex, and the answer is that of the full mesh. */
  @Test
  void largeModelsAreSearchedOnACopy() {
    TriMesh torus = Turned.by(Shapes.torus(30, 12, 200, 100), Turned.frame(9));
    Vec3 axis = Turned.frame(9).w();
    SurveyResult r = Survey.of(torus, QUICK.withSimplifyAbove(20_000), Progress.NONE);
    assertTrue(r.simplified());
    assertTrue(r.simplifyBound() > 0 && r.simplifyBound() < 5);
    assertEquals(0, Turned.degrees(r.best().direction(), axis), 0.06);
    assertTrue(r.best().free());
    Clustering copy = Clustering.to(torus, torus.area(), 10_000);
    assertTrue(copy.mesh().triangleCount() < 15_000 && copy.mesh().triangleCount() > 5_000);
    assertEquals(torus.volume(), copy.mesh().volume(), 0.03 * torus.volume());
    for (int v = 0; v < torus.vertexCount(); v++) {
      double nearest = Double.POSITIVE_INFINITY;
      for (int k = 0; k < copy.mesh().vertexCount(); k++) {
        Vec3 p = copy.mesh().vertex(k);
        nearest = Math.min(nearest, p.minus(torus.vertex(v)).length());
      }
      assertTrue(nearest <= copy.bound());
    }
  }

  @Test
  void stopsWhenAsked() {
    Progress stop =
        (stage, share) -> {
          if (share > 0.1) {
            throw new Progress.CancelledException();
          }
        };
    assertThrows(Progress.CancelledException.class, () -> Survey.of(Shapes.cube(20), QUICK, stop));
  }

  /** A regular tetrahedron on alternate corners of a cube. */
  private static TriMesh tetrahedron() {
    double[] xyz = {30, 30, 30, 30, -30, -30, -30, 30, -30, -30, -30, 30};
    return new TriMesh(xyz, new int[] {0, 1, 2, 0, 3, 1, 0, 2, 3, 1, 3, 2});
  }
}
