package org.castwright.proof;

import static org.castwright.proof.BallMold.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A good mold passes everything; each way of spoiling it fails the check that is there for it. */
class ProofTest {

  private static ManifoldKernel kernel;
  private static ProofInput good;

  @BeforeAll
  static void buildMold() {
    kernel = new ManifoldKernel();
    good = new BallMold(kernel).input();
  }

  @AfterAll
  static void closeKernel() {
    kernel.close();
  }

  private static Proof prove(ProofInput in) {
    return Proof.of(in, kernel, Progress.NONE);
  }

  /** The proof fails, and the named check is among the reasons. */
  private static ProofCheck assertFails(ProofInput in, String name) {
    Proof proof = prove(in);
    ProofCheck c = check(proof, name);
    assertFalse(c.passed(), c.toString());
    assertFalse(proof.passed());
    assertTrue(c.words().endsWith("."), c.words());
    return c;
  }

  @Test
  void goodMoldPasses() {
    Proof proof = prove(good);
    assertEquals(List.of(), proof.failures());
    assertTrue(proof.passed());
    // a good mold has no catch at all, only the noise of its files
    for (ProofCheck c : proof.checks()) {
      if (c.name().startsWith("opening: ") && c.name().endsWith(", overlap")) {
        assertTrue(c.value() < 0.1 * c.limit(), c.toString());
      }
    }
  }

  @Test
  void sameInputSameProof() {
    assertEquals(prove(good), prove(good));
  }

  @Test
  void openBodyFails() {
    TriMesh upper = good.pieces().get(0).mesh();
    assertFails(Change.piece(good, 0, Change.without(upper, 7)), "body: upper closed");
  }

  @Test
  void insideOutBodyFails() {
    assertFails(Change.casting(good, good.casting().reversed()), "body: casting closed");
  }

  @Test
  void twoComponentsFail() {
    TriMesh crumb = Primitives.sphere(1, 12).translated(new Vec3(0, 0, 30));
    TriMesh both = Shapes.joined(good.pieces().get(0).mesh(), crumb);
    assertFails(Change.piece(good, 0, both), "body: upper in one part");
  }

  @Test
  void surfaceThroughItselfFails() {
    TriMesh cube = Shapes.cube(10);
    double[] xyz = cube.xyz().clone();
    // the corner at (-5, -5, -5) pushed out through the face at z = 5
    xyz[0] = -1;
    xyz[1] = -2;
    xyz[2] = 7;
    assertFails(
        Change.casting(good, new TriMesh(xyz, cube.tri())), "body: casting free of crossings");
  }

  @Test
  void overlappingPiecesFail() {
    TriMesh lower = good.pieces().get(1).mesh();
    ProofCheck c =
        assertFails(
            Change.piece(good, 1, lower.translated(new Vec3(0, 0, 0.01))), "bodies disjoint");
    // the flat seam is 40 mm square less ball and sockets: about 1250 mm², 0.01 mm thick
    assertEquals(12.5, c.value() * 64000, 1.5);
  }

  @Test
  void wrongDeclaredVolumeFails() {
    double right = good.taken().get(0).volume();
    ProofInput in = Change.taken(good, List.of(new ProofInput.Taken("clearance", right + 0.1)));
    ProofCheck c = assertFails(in, "volume balance");
    assertEquals(0.1 / 64000, c.value(), 1e-7);
  }

  @Test
  void lipFailsByItsWidth() {
    // closed form: a cap plane z below the equator of a ball of radius r leaves a ring r - √(r² -
    // z²)
    double z = Math.sqrt(100 - 9.8 * 9.8);
    ProofInput in = new BallMold(kernel, -z, 0, true, 96).input();
    Proof proof = prove(in);
    ProofCheck c = check(proof, "opening: upper past casting, lip");
    assertFalse(c.passed(), c.toString());
    assertEquals(0.2, c.value(), 0.02);
    assertTrue(check(proof, "opening: lower past casting, lip").passed());
  }

  @Test
  void thinLipPasses() {
    double z = Math.sqrt(100 - 9.97 * 9.97);
    ProofInput in = new BallMold(kernel, -z, 0, true, 96).input();
    Proof proof = prove(in);
    ProofCheck c = check(proof, "opening: upper past casting, lip");
    assertEquals(0.03, c.value(), 0.01);
    assertEquals(List.of(), proof.failures());
  }

  @Test
  void lipOnTheLastPieceHoldsTheCasting() {
    double z = Math.sqrt(100 - 9.8 * 9.8);
    ProofInput in = new BallMold(kernel, z, 0, true, 96).input();
    assertFails(in, "opening: casting off lower, lip");
  }

  @Test
  void columnsAndKernelMeasureTheSameCatch() {
    // lowering the seam by 6 catches a ring of width 2 under the upper piece
    ProofInput in = new BallMold(kernel, -6, 0, true, 48).input();
    Body casting = Body.read("casting", in.casting());
    Body upper = Body.read("upper", in.pieces().get(0).mesh());
    PullView view = new PullView(Vec3.Z, Body.read("block", in.block()), List.of(casting, upper));
    Catch c =
        Catch.of(
            view.columns(1), view.columns(0), view.grid(), 1, view.steps(), ProofLimits.DEFAULT);
    Solid a = kernel.solid("upper", upper.mesh());
    Solid b = kernel.solid("casting", casting.mesh());
    for (Catch.Step s : c.steps()) {
      double exact = kernel.overlap(a, new Vec3(0, 0, s.distance()), b);
      assertEquals(exact, s.shared(), 0.01 * exact + 0.02, "after " + s.distance());
    }
  }

  @Test
  void halfTorusIsCaughtAndMayBeForgiven() {
    Solid ring = kernel.solid("ring", Shapes.torus(12, 4, 64, 32));
    Vec3 lo = new Vec3(-20, -20, -10);
    Vec3 hi = new Vec3(20, 20, 10);
    Solid right = kernel.solid("r", Primitives.box(new Vec3(0, -20, -10), hi));
    Solid left = kernel.solid("l", Primitives.box(lo, new Vec3(0, 20, 10)));
    ProofInput in =
        new ProofInput(
            BallMold.file(Primitives.box(lo, hi)),
            BallMold.file(ring.mesh()),
            new MeshBuilder().build(),
            List.of(
                BallMold.piece("right", kernel.difference("r", right, List.of(ring)), Vec3.X),
                BallMold.piece(
                    "left", kernel.difference("l", left, List.of(ring)), Vec3.X.negate())),
            List.of(),
            List.of(),
            List.of(),
            ProofLimits.DEFAULT);
    Proof caught = prove(in);
    for (String what : List.of("way", "overlap", "lip")) {
      assertFalse(check(caught, "opening: right past casting, " + what).passed());
      assertFalse(check(caught, "opening: casting off left, " + what).passed());
    }
    Proof forgiven = prove(Change.limits(in, ProofLimits.DEFAULT.withAllowCaught(true)));
    assertEquals(List.of(), forgiven.failures());
    double most = check(forgiven, "opening: right past casting, overlap").value();
    assertTrue(most > 10);
    // as a crease it passes only while the limit is above what any step shares
    String[] judged = {"way", "overlap", "lip"};
    Proof wide = prove(Change.limits(in, ProofLimits.DEFAULT.withCrease(1e6)));
    Proof narrow = prove(Change.limits(in, ProofLimits.DEFAULT.withCrease(most / 2)));
    for (String what : judged) {
      assertTrue(check(wide, "opening: right past casting, " + what).passed(), what);
      assertFalse(check(narrow, "opening: right past casting, " + what).passed(), what);
    }
  }

  @Test
  void aMoldWithoutEnoughGatesFails() {
    Proof one = prove(Change.limits(good, ProofLimits.DEFAULT.withGates(1)));
    assertTrue(check(one, "gate: one at least").passed());
    Proof two = prove(Change.limits(good, ProofLimits.DEFAULT.withGates(2)));
    assertFalse(check(two, "gate: one at least").passed());
    assertEquals(1, two.failures().size());
  }

  @Test
  void pullAcrossIsCaughtByPiecesAndChannels() {
    Proof proof = prove(Change.pull(good, 0, Vec3.X));
    assertFalse(check(proof, "opening: upper past casting, way").passed());
    assertFalse(check(proof, "opening: upper past channels, way").passed());
    assertFalse(check(proof, "opening: upper past lower, way").passed());
  }

  @Test
  void leaningKeyFails() {
    ProofInput in = new BallMold(kernel, 0, 25, true, 48).input();
    Proof proof = prove(in);
    ProofCheck c = check(proof, "key: key 1 along the pull");
    assertFalse(c.passed(), c.toString());
    assertEquals(25, c.value(), 1e-9);
    assertFalse(check(proof, "opening: upper past lower, way").passed());
    assertFalse(check(proof, "opening: upper past lower, lip").passed());
  }

  @Test
  void tightKeyFails() {
    ProofInput.Key k = good.keys().get(0);
    ProofInput.Key asked =
        new ProofInput.Key(k.name(), k.center(), k.axis(), k.radius(), k.height(), 0.25, 1, 0);
    ProofCheck c = assertFails(Change.keys(good, List.of(asked)), "key: key 1 clearance");
    assertEquals(0.05, c.value(), 0.01);
  }

  @Test
  void missingKeyFails() {
    ProofInput.Key k = good.keys().get(0);
    ProofInput.Key elsewhere =
        new ProofInput.Key(
            k.name(), new Vec3(14, -14, 0), k.axis(), k.radius(), k.height(), 0.2, 1, 0);
    assertFails(Change.keys(good, List.of(elsewhere)), "key: key 1 clearance");
  }

  @Test
  void pluggedVentFails() {
    ProofInput in = new BallMold(kernel, 0, 0, false, 48).input();
    Proof proof = prove(in);
    ProofCheck c = check(proof, "vent: vent open");
    assertFalse(c.passed(), c.toString());
    assertTrue(c.words().contains("blocked by upper"), c.words());
    assertTrue(check(proof, "gate: gate open").passed());
  }

  @Test
  void channelThatStopsShortFails() {
    Vec3 outer = new Vec3(0, 0, BallMold.HALF);
    assertFails(Change.channel(good, 0, new Vec3(0, 0, 12), outer), "gate: gate joins the cavity");
    assertFails(
        Change.channel(good, 0, new Vec3(0, 0, 9), new Vec3(0, 0, 17)),
        "gate: gate reaches the outside");
  }

  @Test
  void thinWallFails() {
    // the ball's sides are 20 - 10 mm from the cube's
    ProofInput in = Change.limits(good, ProofLimits.DEFAULT.withMinimumWall(10.5));
    ProofCheck c = assertFails(in, "wall");
    assertEquals(10, c.value(), 1e-5);
  }

  @Test
  void pieceLargerThanTheBedFails() {
    ProofInput in = Change.limits(good, ProofLimits.DEFAULT.withBed(new Vec3(35, 35, 35)));
    assertFails(in, "bed: upper");
    // on its side it takes 20 mm by 40 mm
    ProofInput.Piece upper = good.pieces().get(0);
    ProofLimits narrow = ProofLimits.DEFAULT.withBed(new Vec3(25, 41, 41));
    assertTrue(BedCheck.of("upper", upper.print(), upper.mesh(), narrow).passed());
  }

  @Test
  void printFileOfAnotherBodyFails() {
    TriMesh print = good.pieces().get(0).print();
    assertFails(
        Change.print(good, 0, print.scaled(new Vec3(1.0001, 1.0001, 1.0001))),
        "print: upper same body");
    TriMesh other = good.pieces().get(1).print();
    assertFalse(PrintCheck.sameBody("upper", good.pieces().get(0).mesh(), other).passed());
  }

  @Test
  void mirroredPrintFileFails() {
    ProofCheck c =
        assertFails(
            Change.print(good, 0, Change.mirrored(good.pieces().get(0).print())),
            "print: upper same body");
    assertTrue(c.words().contains("mirror"), c.words());
  }

  @Test
  void printOffTheBedFails() {
    TriMesh print = good.pieces().get(1).print();
    assertFails(
        Change.print(good, 1, print.translated(new Vec3(0, 0, 0.5))),
        "print: lower stands on the bed");
    TriMesh sunk = print.translated(new Vec3(0, 0, -0.5));
    assertFalse(PrintCheck.standing("lower", sunk).passed());
  }

  @Test
  void stopsWhenAsked() {
    Progress stop =
        (stage, share) -> {
          if (share > 0.1) {
            throw new Progress.CancelledException();
          }
        };
    assertThrows(Progress.CancelledException.class, () -> Proof.of(good, kernel, stop));
  }
}
