package org.castwright.proof;

import static org.castwright.proof.BallMold.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Three pieces whose pulls are not opposite, and an order that matters. */
class ManyPiecesTest {

  private static ManifoldKernel kernel;
  private static ProofInput cross;
  private static ProofInput core;

  @BeforeAll
  static void buildMolds() {
    kernel = new ManifoldKernel();
    cross = new ManyPieces(kernel).cross();
    core = new ManyPieces(kernel).sideCore();
  }

  @AfterAll
  static void closeKernel() {
    kernel.close();
  }

  private static Proof prove(ProofInput in) {
    return Proof.of(in, kernel, Progress.NONE);
  }

  @Test
  void threePiecesLeaveAlongPullsOfTheirOwn() {
    Proof proof = prove(cross);
    assertEquals(List.of(), proof.failures());
    // each piece is judged against the casting and every piece that is still there
    for (String move :
        List.of(
            "right past casting",
            "right past left",
            "right past back",
            "left past casting",
            "left past back",
            "back past casting",
            "casting off back")) {
      assertTrue(check(proof, "opening: " + move + ", way").passed());
    }
    assertTrue(proof.checks().stream().noneMatch(c -> c.name().contains("left past right")));
  }

  @Test
  void aSideCoreLeavesFirst() {
    assertEquals(List.of(), prove(core).failures());
  }

  @Test
  void wrongOrderFails() {
    Proof proof = prove(ManyPieces.ordered(core, 1, 0, 2));
    ProofCheck way = check(proof, "opening: upper past core, way");
    assertFalse(way.passed(), way.toString());
    assertFalse(check(proof, "opening: upper past core, overlap").passed());
    // nothing else is wrong with the mold
    assertTrue(
        proof.failures().stream().allMatch(c -> c.name().startsWith("opening: upper past core")),
        proof.failures().toString());
  }

  @Test
  void wrongOrderFailsByItsKey() {
    // the key leans 90° from the pull of the left piece, which would now leave first
    Proof proof = prove(ManyPieces.ordered(cross, 1, 0, 2));
    ProofCheck key = check(proof, "key: key 1 along the pull");
    assertFalse(key.passed(), key.toString());
    assertEquals(90, key.value(), 1e-6);
    assertFalse(check(proof, "opening: left past right, way").passed());
  }

  @Test
  void caughtPieceFails() {
    Proof proof = prove(Change.pull(cross, 0, new Vec3(1, -1, 0)));
    assertFalse(check(proof, "opening: right past casting, way").passed());
    Proof side = prove(Change.pull(core, 0, new Vec3(1, 0, 0.2)));
    assertFalse(check(side, "opening: core past casting, lip").passed());
    assertFalse(check(side, "opening: core past upper, lip").passed());
  }

  @Test
  void lastPieceThatHoldsTheCastingFails() {
    // the core last: it still sits in the casting, and the casting comes off it only along the hole
    ProofInput last = ManyPieces.ordered(core, 1, 2, 0);
    Proof proof = prove(Change.pull(last, 2, Vec3.Y));
    assertFalse(check(proof, "opening: casting off core, way").passed());
  }

  @Test
  void anyTwoOfThreePiecesThatShareVolumeFail() {
    Proof proof =
        prove(
            Change.piece(cross, 2, cross.pieces().get(2).mesh().translated(new Vec3(0, 0.02, 0))));
    ProofCheck c = check(proof, "bodies disjoint");
    assertFalse(c.passed(), c.toString());
    assertTrue(c.words().contains("right and back"), c.words());
    assertTrue(c.words().contains("left and back"), c.words());
  }

  @Test
  void pieceInTwoPartsFails() {
    TriMesh mesh = cross.pieces().get(1).mesh();
    TriMesh crumb = BallMold.file(Primitives.sphere(1, 12));
    Proof proof =
        prove(Change.piece(cross, 1, Shapes.joined(mesh, crumb.translated(new Vec3(0, 60, 0)))));
    assertFalse(check(proof, "body: left in one part").passed());
    assertFalse(check(proof, "volume balance").passed());
  }
}
