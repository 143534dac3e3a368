package org.castwright.cover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

class CoverTest {

  private static final CoverOptions QUICK = CoverOptions.DEFAULT.withSpread(40).withCells(40);
  private static final CoverOptions ROUGH = CoverOptions.DEFAULT.withSpread(24).withCells(30);

  private static CoverResult look(TriMesh mesh, CoverOptions options) {
    return Cover.of(mesh, options, Progress.NONE);
  }

  /** A spool: two wide rims and a waist. */
  private static TriMesh spool() {
    return Primitives.revolve(new double[] {20, -20, 20, -14, 10, -12, 10, 12, 20, 14, 20, 20}, 40);
  }

  private static TriMesh both(TriMesh a, TriMesh b) {
    MeshBuilder m = new MeshBuilder();
    for (TriMesh mesh : List.of(a, b)) {
      int first = m.vertexCount();
      for (int v = 0; v < mesh.vertexCount(); v++) {
        m.vertex(mesh.vertex(v).x(), mesh.vertex(v).y(), mesh.vertex(v).z());
      }
      for (int i = 0; i < mesh.tri().length; i += 3) {
        m.triangle(first + mesh.tri()[i], first + mesh.tri()[i + 1], first + mesh.tri()[i + 2]);
      }
    }
    return m.build();
  }

  @Test
  void theSameForAnyNumberOfThreads() {
    TriMesh knot = Shapes.trefoil(9, 4, 48, 8);
    CoverResult one = look(knot, ROUGH.withThreads(1));
    CoverResult three = look(knot, ROUGH.withThreads(3));
    assertEquals(one, three);
    assertTrue(one.regions().size() + one.curve().size() > 2);
  }

  @Test
  void aGivenPullIsAmongThem() {
    // along z the spool's waist is caught, so two more pulls are needed beside that one
    CoverResult r = look(spool(), QUICK.withFixed(List.of(new Vec3(0, 0, 3))));
    assertEquals(3, r.pulls().size());
    assertTrue(r.certificate().proven());
    Pull given = r.pulls().stream().filter(Pull::fixed).findFirst().orElseThrow();
    assertEquals(Vec3.Z, given.direction());
    assertEquals(2, look(spool(), QUICK).pulls().size());
    assertEquals(1, r.curve().get(0).pulls());
  }

  @Test
  void aGivenPullIsAtItsPlace() {
    for (int place = 1; place <= 3; place++) {
      CoverResult r = look(spool(), QUICK.withFixed(List.of(Vec3.Z), List.of(place)));
      assertEquals(3, r.pulls().size());
      assertEquals(Vec3.Z, r.pulls().get(place - 1).direction());
      assertTrue(r.pulls().get(place - 1).fixed());
    }
    IllegalArgumentException beyond =
        assertThrows(
            IllegalArgumentException.class,
            () -> look(spool(), QUICK.withFixed(List.of(Vec3.Z), List.of(4))));
    assertTrue(beyond.getMessage().contains("piece 4, but 3 pulls"), beyond.getMessage());
    List<Vec3> two = List.of(Vec3.Z, Vec3.X);
    assertThrows(IllegalArgumentException.class, () -> QUICK.withFixed(two, List.of(1, 1)));
  }

  @Test
  void asManyPullsAsAskedFor() {
    CoverResult four = look(spool(), QUICK.withPieces(4));
    assertEquals(4, four.pulls().size());
    assertEquals(2, four.certificate().least());
    assertTrue(four.opens());
    CoverResult one = look(spool(), QUICK.withPieces(1));
    assertEquals(1, one.pulls().size());
    assertFalse(one.opens());
    assertTrue(one.left().areaMm2() > 100 && one.left().widthMm() > 5, one.left().toString());
    assertFalse(one.regions().isEmpty());
  }

  @Test
  void anEnclosedHollowIsFreedByNothing() {
    TriMesh hollow = both(Shapes.cube(40), Shapes.sphere(8, 32).reversed());
    CoverResult r = look(hollow, QUICK);
    assertFalse(r.opens());
    assertEquals(2, r.certificate().least(), "what can be freed is");
    double ball = 4.0 / 3 * Math.PI * 512;
    assertEquals(ball, r.never().volumeMm3(), 0.1 * ball);
    assertEquals(1, r.neverRegions().size());
    CaughtRegion place = r.neverRegions().get(0);
    assertEquals(0, place.center().length(), 0.5);
    // 12 facets of the cube stand first; all of the place's are the hollow's
    assertTrue(place.facets().stream().allMatch(f -> f >= 12));
    assertTrue(place.caught().widthMm() > 9, place.caught().toString());
  }

  @Test
  void whatIsCaughtIsFoundWhereItIs() {
    // The spool with both pulls along its axis. Caught is a ring round the waist, 24 mm high, and
    // what lies over two slopes of 2 mm, all out to the rims but for a crease of 0.2 mm and half a
    // column, 0.1 mm.
    List<Vec3> axis = List.of(Vec3.Z, Vec3.Z.negate());
    CoverResult r = look(spool(), QUICK.withFixed(axis).withPieces(2));
    double rim = 20 - 0.3;
    double rise = (rim - 10) / 10 * 2;
    double slope = Math.PI * rise * (rim * rim - (rim * rim + rim * 10 + 100) / 3);
    double ring = Math.PI * (rim * rim - 100) * 24 + 2 * slope;
    assertEquals(ring, r.left().volumeMm3(), 0.04 * ring);
    // walls: the waist's cylinder and the two slopes
    double walls = 2 * Math.PI * 10 * 24 + 2 * Math.PI * (10 + rim) * Math.hypot(rim - 10, rise);
    assertEquals(walls, r.left().areaMm2(), 0.04 * walls);
    assertEquals(1, r.regions().size());
    // the largest square about a point of the waist within the rim: (10 + s)² + s² = 20²
    assertEquals((Math.sqrt(2800) - 20) / 4, r.left().widthMm(), 0.4);
    // the waist's round wall needs two more, for one frees no more than half of it
    assertEquals(4, r.certificate().least());
  }

  @Test
  void shortOfNodesItSaysNotProven() {
    TriMesh knot = Shapes.trefoil(9, 4, 48, 8);
    CoverResult r = look(knot, ROUGH.withNodes(1));
    assertFalse(r.certificate().proven());
    assertTrue(r.certificate().least() >= r.certificate().lowerBound());
    assertTrue(look(knot, ROUGH).certificate().least() <= r.certificate().least());
  }

  @Test
  void refiningNeverLeavesMore() {
    TriMesh knot = Shapes.trefoil(9, 4, 48, 8);
    CoverResult plain = look(knot, ROUGH.withRefine(false));
    CoverResult refined = look(knot, ROUGH);
    assertTrue(refined.certificate().least() <= plain.certificate().least());
    assertTrue(refined.certificate().candidates() > plain.certificate().candidates());
  }

  @Test
  void ordersOfThreeAreSix() {
    List<String> orders = new ArrayList<>();
    Bodies.orders(3).forEach(o -> orders.add(o[0] + "" + o[1] + o[2]));
    assertEquals(List.of("012", "021", "102", "120", "201", "210"), orders);
  }

  @Test
  void aPieceInTwoBodiesCountsAsTwo() {
    // two balls side by side: along z the first pull takes all but the two shadows behind them
    TriMesh left = Shapes.sphere(10, 32).translated(new Vec3(-20, 0, 0));
    TriMesh right = Shapes.sphere(10, 32).translated(new Vec3(20, 0, 0));
    List<Vec3> fixed = List.of(Vec3.Z, Vec3.Z.negate());
    CoverResult r = look(both(left, right), QUICK.withFixed(fixed).withPieces(2));
    assertEquals(2, r.pulls().size());
    assertEquals(3, r.pieces());
    assertEquals(1, r.pulls().get(0).bodies());
    // two columns of radius 10 from the middle of the balls to the block's end, 12 % of 60 mm past
    double behind = 2 * (Math.PI * 100 * (10 + 7.2) - 2.0 / 3 * Math.PI * 1000);
    assertEquals(behind, r.pulls().get(1).ownVolumeMm3(), 0.1 * behind);
    assertEquals(r.pieces(), r.pulls().stream().mapToInt(Pull::bodies).sum());
  }

  @Test
  void unusableInputIsRefusedInOneSentence() {
    TriMesh empty = new TriMesh(new double[0], new int[0]);
    assertThrows(MeshException.class, () -> look(empty, QUICK));
    assertThrows(MeshException.class, () -> look(Shapes.cube(10).reversed(), QUICK));
    assertThrows(IllegalArgumentException.class, () -> QUICK.withPieces(9));
    List<Vec3> twice = List.of(Vec3.Z, Vec3.Z.times(2));
    assertThrows(
        IllegalArgumentException.class, () -> look(Shapes.cube(10), QUICK.withFixed(twice)));
  }
}
