package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.side.Drilled;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

/** Pulls that the maker fixes for single pieces. */
class FixedPullsTest {

  private static MoldOptions options(int pieces, PiecePull... pulls) {
    return MoldOptions.DEFAULT.with().pieces(pieces).pulls(List.of(pulls)).build();
  }

  private static String refused(int pieces, PiecePull... pulls) {
    return assertThrows(IllegalArgumentException.class, () -> options(pieces, pulls)).getMessage();
  }

  private static PiecePull pull(int piece, double x, double y, double z) {
    return new PiecePull(piece, new Vec3(x, y, z));
  }

  @Test
  void whatCannotBeMeantIsRefusedInOneSentence() {
    assertTrue(
        refused(3, pull(4, 0, 0, 1)).contains("for piece 4, but the mold may have at most 3"));
    assertTrue(refused(8, pull(2, 0, 0, 1), pull(2, 1, 0, 0)).contains("piece 2 is given twice"));
    assertTrue(refused(8, pull(2, 0, 0, 1), pull(3, 0, 0, 2)).contains("given the same pull"));
    assertTrue(refused(2, pull(1, 0, 0, 1), pull(2, 1, 0, 0)).contains("opposite directions"));
    IllegalArgumentException zero =
        assertThrows(IllegalArgumentException.class, () -> pull(2, 0, 0, 0));
    assertEquals("the pull of piece 2 has no length", zero.getMessage());
    assertThrows(
        IllegalArgumentException.class,
        () -> MoldOptions.DEFAULT.with().pull(Vec3.X).pulls(List.of(pull(1, 0, 0, 1))).build());
  }

  @Test
  void twoOppositePiecesHaveOnePull() {
    assertEquals(Vec3.Z, options(2, pull(1, 0, 0, 1)).pullOfFirst());
    assertEquals(new Vec3(0, 0, -1), options(2, pull(2, 0, 0, 1)).pullOfFirst().plus(Vec3.ZERO));
    assertEquals(Vec3.Z, options(2, pull(2, 0, 0, -1), pull(1, 0, 0, 1)).pullOfFirst());
    assertNull(options(8, pull(3, 0, 0, 1)).pullOfFirst());
    assertNull(options(8, pull(1, 0, 0, 1), pull(2, 1, 0, 0)).pullOfFirst());
    assertEquals(Vec3.X, MoldOptions.DEFAULT.with().pull(Vec3.X).build().pullOfFirst());
  }

  /** The ball's three ways out, in another order than the planner's own. */
  @Test
  void piecesLeaveInTheOrderOfTheirNumbers() {
    try (SolidKernel kernel = new ManifoldKernel()) {
      TriMesh ball = Drilled.threeWayBall(kernel);
      List<Vec3> ways = Drilled.threeWays();
      List<PiecePull> free = order(MoldPlan.of(ball, options(8), kernel, Progress.NONE));
      int last = nearest(ways, free.get(2).direction());
      int first = nearest(ways, free.get(0).direction());
      MoldOptions turned =
          options(8, new PiecePull(1, ways.get(last)), new PiecePull(3, ways.get(first)));
      List<PiecePull> got = order(MoldPlan.of(ball, turned, kernel, Progress.NONE));
      assertEquals(3, got.size());
      assertEquals(0, got.get(0).direction().minus(ways.get(last)).length(), 1e-9);
      assertEquals(0, got.get(2).direction().minus(ways.get(first)).length(), 1e-9);
    }
  }

  @Test
  void aPieceBeyondTheFewestIsRefused() {
    try (SolidKernel kernel = new ManifoldKernel()) {
      TriMesh ball = Drilled.threeWayBall(kernel);
      MoldOptions five = options(8, new PiecePull(5, Drilled.threeWays().get(0)));
      IllegalArgumentException e =
          assertThrows(
              IllegalArgumentException.class, () -> MoldPlan.of(ball, five, kernel, Progress.NONE));
      assertTrue(e.getMessage().contains("given for piece 5, but 3 pulls"), e.getMessage());
    }
  }

  /** Pulls in the order of leaving, in the model's frame. */
  private static List<PiecePull> order(MoldPlan plan) {
    List<PiecePull> out = new java.util.ArrayList<>();
    for (RawPiece p : plan.pieces()) {
      out.add(new PiecePull(out.size() + 1, plan.frame().directionToModel(p.pull())));
    }
    return out;
  }

  private static int nearest(List<Vec3> ways, Vec3 d) {
    int best = 0;
    for (int i = 0; i < ways.size(); i++) {
      best = ways.get(i).dot(d) > ways.get(best).dot(d) ? i : best;
    }
    return best;
  }
}
