package org.castwright.cover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.survey.VoxelShape;
import org.junit.jupiter.api.Test;

/** Shapes whose least number of pulls is known by argument; the argument stands with each. */
class LeastPullsTest {

  private static final CoverOptions QUICK = CoverOptions.DEFAULT.withSpread(60).withCells(40);

  private static CoverResult look(TriMesh mesh) {
    return Cover.of(mesh, QUICK, Progress.NONE);
  }

  private static CoverResult expect(int pulls, TriMesh mesh) {
    CoverResult r = look(mesh);
    assertEquals(pulls, r.certificate().least(), () -> r.curve().toString());
    assertEquals(pulls, r.pulls().size());
    assertTrue(r.certificate().proven());
    assertTrue(r.opens());
    assertTrue(r.pieces() >= pulls);
    assertTrue(r.curve().get(pulls - 1).opens() && !r.curve().get(pulls - 2).opens());
    return r;
  }

  /** A block of unit cells, ten millimeters each, bored along lines through its middle. */
  private static TriMesh bored(int n, int depth, String sides) {
    VoxelShape s = new VoxelShape(n);
    int mid = n / 2;
    for (int c = 0; c < n * n * n; c++) {
      int[] at = {c % n, c / n % n, c / (n * n)};
      boolean hole = false;
      for (int axis = 0; axis < 3; axis++) {
        boolean onLine = at[(axis + 1) % 3] == mid && at[(axis + 2) % 3] == mid;
        boolean low = sides.indexOf("xyz".charAt(axis)) >= 0 && at[axis] < depth;
        boolean high = sides.indexOf("XYZ".charAt(axis)) >= 0 && at[axis] >= n - depth;
        hole |= onLine && (low || high);
      }
      if (!hole) {
        s.set(at[0], at[1], at[2]);
      }
    }
    return s.mesh().scaled(new Vec3(10, 10, 10));
  }

  @Test
  void convexBodiesOpenInTwo() {
    // any two opposite pulls: every column of a convex body is one run (Ahn et al., "Separating an
    // object from its cast", CAD 34(8), 2002); one pull never frees the far side of a closed body
    expect(2, Shapes.ellipsoid(24, 17, 11, 32));
    CoverResult cube = expect(2, Shapes.cube(40));
    assertTrue(isOpposite(cube), "a pair of opposite pulls is preferred");
    assertEquals(2, cube.pieces());
    assertTrue(cube.turns().holds(), "a cube opens along every axis, turned or not");
  }

  private static boolean isOpposite(CoverResult r) {
    return r.pulls().get(0).direction().plus(r.pulls().get(1).direction()).length() < 1e-12;
  }

  @Test
  void aTorusOpensInTwo() {
    // along its axis every column is one run
    expect(2, Shapes.torus(30, 10, 48, 24));
  }

  @Test
  void anHourglassOpensInTwoAcrossItsAxis() {
    // across the axis every column is one run: each slice across the axis is a disc
    CoverResult r = expect(2, Shapes.hourglass(20, 10, 40, 48));
    assertTrue(Math.abs(r.pulls().get(0).direction().z()) < 0.5);
  }

  @Test
  void aVaseWithARecessedFootNeedsThree() {
    // The foot's recess needs a pull that points down. The flare of the foot, facing up and out all
    // round under the wider rim, is freed over less than half its round by a pull that points down,
    // and over less than half by one that points up, which must get past the rim: not by two. Three
    // do: down, and two opposite ones across (a core for the foot; common practice, no source).
    double[] profile = {0, 8, 9, 8, 9.5, 0, 15, 0, 9, 20, 20, 60};
    CoverResult r = expect(3, Primitives.revolve(profile, 48));
    assertTrue(r.pulls().stream().anyMatch(p -> p.direction().z() < -0.5));
  }

  @Test
  void aDrilledBlockNeedsAPullForEachHole() {
    // A hole five times as long as wide lets go of a core only nearly along itself, so each hole
    // needs a pull of its own; and the pulls +x, +y (+z) free each outer face, either because it
    // faces one of them or because it is a wall along one.
    assertEquals(2, expect(2, bored(5, 5, "x")).pulls().size());
    CoverResult two = expect(2, bored(5, 5, "xy"));
    assertFalse(two.turns().holds(), "it hangs on walls without draft");
    expect(3, bored(5, 5, "xyz"));
  }

  @Test
  void blindHolesInAllSixFacesNeedSix() {
    // The bottom of a hole two deep and one wide is freed only by pulls within 36° of the hole's
    // axis outward (atan √2/2); these six cones have nothing in common.
    expect(6, bored(7, 2, "xXyYzZ"));
  }

  @Test
  void threeOrthogonalBarsOpenInTwo() {
    // three bars crossing in one point: along z every column is one run, the upright bar's or the
    // lying bars' height
    VoxelShape s = new VoxelShape(5);
    for (int i = 0; i < 5; i++) {
      s.set(i, 2, 2);
      s.set(2, i, 2);
      s.set(2, 2, i);
    }
    expect(2, s.mesh().scaled(new Vec3(8, 8, 8)));
  }

  @Test
  void aTrefoilTubeOpensInMoreThanTwo() {
    // no line of sight runs along a knot: no projection of a trefoil is without a crossing, and a
    // crossing traps space between its strands; but it encloses nothing, so enough pulls free all
    CoverResult r = look(Shapes.trefoil(9, 4, 72, 10));
    assertTrue(r.certificate().least() >= 3, r.certificate().toString());
    assertTrue(r.certificate().lowerBound() >= 3, r.certificate().toString());
    assertEquals(Caught.NOTHING, r.never());
    assertTrue(r.opens());
  }
}
