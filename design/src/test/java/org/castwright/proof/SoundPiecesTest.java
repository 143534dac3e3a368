package org.castwright.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.progress.Progress;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Unsteady hands, feather edges and thin places, each against a closed form. */
class SoundPiecesTest {

  private static ManifoldKernel kernel;
  private static ManyPieces molds;

  @BeforeAll
  static void startKernel() {
    kernel = new ManifoldKernel();
    molds = new ManyPieces(kernel);
  }

  @AfterAll
  static void closeKernel() {
    kernel.close();
  }

  /** Shake, wedge, wall and web of one piece, without the rest of the proof. */
  private static ProofCheck check(ProofInput in, String name) {
    List<Body> bodies = new ArrayList<>(List.of(Body.read("casting", in.casting())));
    in.pieces().forEach(p -> bodies.add(Body.read(p.name(), p.mesh())));
    List<Bvh> trees = bodies.stream().map(b -> new Bvh(b.mesh())).toList();
    Body block = Body.read("block", in.block());
    String piece = name.split(" ", -1)[1];
    int i = 1;
    while (!bodies.get(i).name().equals(piece)) {
      i++;
    }
    Body body = bodies.get(i);
    Vec3 pull = in.pieces().get(i - 1).pull();
    if (name.startsWith("shake")) {
      return new ShakeCheck(block, bodies, in.limits()).of(i, pull, Views.left(bodies, 1, i));
    }
    List<Bvh> others = new ArrayList<>(trees.subList(1, trees.size()));
    others.remove(trees.get(i));
    Faces faces = new Faces(body.mesh(), new Bvh(block.mesh()), trees.get(0), null, others);
    if (name.startsWith("wedge")) {
      Columns seen = new PullView(pull, block, bodies).columns(i);
      return WedgeCheck.of(body, faces, seen, in.limits());
    }
    ProofCheck[] thin = ThinCheck.of(body, faces, trees.get(i), in.limits());
    return name.endsWith("wall") ? thin[0] : thin[1];
  }

  @Test
  void theProofHoldsEveryPieceToThem() {
    ProofInput in = Change.limits(molds.fin(0.7), ProofLimits.DEFAULT.withWedge(91));
    Proof proof = Proof.of(in, kernel, Progress.NONE);
    assertEquals(
        List.of("wedge: upper", "thin: upper web", "wedge: lower"),
        proof.failures().stream().map(ProofCheck::name).toList());
    assertTrue(proof.checks().stream().anyMatch(c -> c.name().equals("shake: lower")));
  }

  @Test
  void draftLetsACoreShake() {
    // least draft: atan(0.4 / 10) = 2.3 degrees in the hole
    ProofCheck c = check(molds.sideCore(), "shake: core");
    assertEquals(1, c.value(), c.toString());
  }

  @Test
  void littleDraftLetsACoreShakeLittle() {
    // atan(0.26 / 10) = 1.5 degrees: all four directions 1 degree off work, none of those at 2
    ProofCheck c = check(molds.sideCore(2.74, 3, 4), "shake: core");
    assertEquals(0.5, c.value(), c.toString());
    assertTrue(c.words().contains("4 of 4 directions 1°"), c.words());
    assertTrue(c.words().contains("0 of 4 directions 2°"), c.words());
  }

  @Test
  void straightWallsFailToShakeWhenAsked() {
    ProofInput in = molds.sideCore(3, 3, 4);
    ProofCheck c = check(in, "shake: core");
    assertEquals(0, c.value());
    assertTrue(c.passed(), "by default no share is asked");
    assertTrue(c.words().contains("caught by casting"), c.words());
    ProofInput asked = Change.limits(in, ProofLimits.DEFAULT.withShakeShare(0.5));
    assertFalse(check(asked, "shake: core").passed());
  }

  @Test
  void featherEdgeFails() {
    // a flat seam at height z on a ball of radius r: the lower piece ends in a wedge of 90 degrees
    // less asin(z / r), the upper one has so much more
    double z = 9.2;
    double slope = Math.toDegrees(Math.asin(z / BallMold.BALL));
    ProofInput in = new BallMold(kernel, z, 0, true, 96).input();
    ProofCheck lower = check(in, "wedge: lower");
    assertEquals(90 - slope, lower.value(), 1.5);
    assertFalse(lower.passed(), lower.toString());
    assertTrue(lower.words().contains("by the cavity"), lower.words());
    ProofCheck upper = check(in, "wedge: upper");
    assertTrue(upper.passed(), upper.toString());
    assertTrue(
        check(Change.limits(in, ProofLimits.DEFAULT.withWedge(20)), "wedge: lower").passed());
  }

  @Test
  void allowedCatchesForgiveFeathersAndWebsButNoWall() {
    ProofLimits allowing = ProofLimits.DEFAULT.withAllowCaught(true).withMinimumWall(25);
    ProofInput fin = Change.limits(molds.fin(0.7), allowing.withWedge(91));
    for (String what : List.of("wedge: upper", "thin: upper web")) {
      ProofCheck c = check(fin, what);
      assertTrue(c.passed() && c.value() < c.limit(), c.toString());
      assertTrue(c.words().endsWith("; recorded only, since catches are allowed."), c.words());
    }
    assertFalse(check(fin, "thin: upper wall").passed());
  }

  @Test
  void squareSeamIsNoFeatherEdge() {
    // the seam is on a corner of the ball's 48-gon, which falls back half a side's turn
    ProofCheck c = check(new BallMold(kernel).input(), "wedge: lower");
    assertEquals(90 + 180.0 / 48, c.value(), 0.5);
  }

  @Test
  void wedgeBetweenShutOffFacesIsSeen() {
    // pieces 1 and 2 of the cross meet on x = 0, pieces 2 and 3 on y = 0: 90 degrees
    ProofCheck c = check(molds.cross(), "wedge: left");
    assertEquals(90, c.value(), 1.5, c.toString());
  }

  @Test
  void thinFinFails() {
    ProofCheck c = check(molds.fin(0.7), "thin: upper web");
    assertEquals(0.7, c.value(), 1e-5);
    assertFalse(c.passed(), c.toString());
    assertTrue(check(molds.fin(0.9), "thin: upper web").passed());
  }

  @Test
  void thinWallFails() {
    // the ball's sides are 20 - 10 mm from the cube's
    ProofInput ball = new BallMold(kernel).input();
    ProofInput in = Change.limits(ball, ProofLimits.DEFAULT.withMinimumWall(10.5));
    ProofCheck c = check(in, "thin: lower wall");
    assertEquals(10, c.value(), 0.05);
    assertFalse(c.passed(), c.toString());
    assertTrue(check(ball, "thin: lower wall").passed());
  }
}
