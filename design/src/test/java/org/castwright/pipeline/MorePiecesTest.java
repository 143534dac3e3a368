package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.StlWriter;
import org.castwright.mold.Mold;
import org.castwright.mold.Piece;
import org.castwright.plan.CaughtException;
import org.castwright.plan.Channel;
import org.castwright.plan.MoldOptions;
import org.castwright.progress.Progress;
import org.castwright.proof.ProofCheck;
import org.castwright.side.Drilled;
import org.castwright.side.Pots;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** Whole jobs whose number of pieces can be told by argument, proved from their files. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class MorePiecesTest {

  private static final double WEDGE = JobOptions.DEFAULT.wedgeDeg();

  private SolidKernel kernel;

  @TempDir private Path temp;

  @BeforeAll
  void open() {
    kernel = new ManifoldKernel();
  }

  @AfterAll
  void close() {
    kernel.close();
  }

  private List<Piece> proved(String name, TriMesh model, int most, double wedge)
      throws IOException {
    Path file = temp.resolve(name + ".stl");
    StlWriter.write(file, model, name);
    JobOptions options =
        new JobOptions(
            ModelOptions.DEFAULT,
            MoldOptions.DEFAULT.with().pieces(most).build(),
            JobOptions.DEFAULT.bed(),
            wedge);
    Mold[] seen = new Mold[1];
    Artist artist =
        (folder, mold, progress) -> {
          seen[0] = mold;
          Files.writeString(folder.resolve("none.txt"), "no pictures");
        };
    var result =
        new MoldJob(options, kernel, artist, Progress.NONE).run(file, temp.resolve(name + "-mold"));
    List<ProofCheck> failures = result.proof().failures();
    assertEquals(List.of(), failures.stream().map(ProofCheck::words).toList());
    assertTrue(
        seen[0].plan().pour().channels().stream().anyMatch(c -> c.kind() == Channel.Kind.GATE));
    gripped(seen[0]);
    // what two opposite pieces would catch is not told as a catch of this mold
    String sheet = Files.readString(temp.resolve(name + "-mold").resolve("sheet.txt"));
    assertTrue(sheet.contains("WHERE TWO OPPOSITE PIECES WOULD BE CAUGHT"), sheet);
    assertFalse(sheet.contains("CAUGHT PLACES"), sheet);
    return seen[0].pieces();
  }

  /** Every piece but two main ones has a hole to pull by or a slot to pry at. */
  private static void gripped(Mold mold) {
    int n = mold.pieces().size();
    boolean main = !mold.plan().seam().method().equals("division");
    for (int i = 1; i <= (main ? n - 2 : n); i++) {
      String number = Integer.toString(i);
      boolean held =
          mold.plan().features().stream()
              .map(f -> List.of(f.name().split("-")))
              .anyMatch(
                  name ->
                      (name.get(0).equals("grip") || (!main && name.get(0).equals("pry")))
                          && name.subList(1, name.size()).contains(number));
      assertTrue(held, "piece " + i + " has a grip: " + mold.warnings());
    }
  }

  /** Halves to the sides and a plug below: common practice for a hollow foot, no source. */
  @Test
  void aVaseWithAHollowFootTakesThree() throws IOException {
    List<Piece> pieces = proved("vase", Drilled.vase(), 8, WEDGE);
    assertEquals(3, pieces.size());
    assertEquals(0, pieces.get(0).pull().z(), 1e-6, "the plug leaves across the main pull");
    assertEquals(Vec3.Z, pieces.get(1).pull());
  }

  /** A core for the inside and halves through the handle: common practice, no source. */
  @Test
  void aMugTakesThree() throws IOException {
    List<Piece> pieces = proved("mug", Pots.mug(kernel), 8, WEDGE);
    assertEquals(3, pieces.size());
    assertEquals(0, pieces.get(0).pull().z(), 1e-6, "the core leaves across the main pull");
    assertEquals(Vec3.Z, pieces.get(1).pull());
    assertEquals(Vec3.Z.negate(), pieces.get(2).pull());
  }

  /** A core for the inside and halves through both handles: common practice, no source. */
  @Test
  void aVaseWithTwoHandlesTakesThree() throws IOException {
    List<Piece> pieces = proved("amphora", Pots.amphora(kernel), 8, WEDGE);
    assertEquals(3, pieces.size());
    assertEquals(0, pieces.get(0).pull().z(), 1e-6, "the core leaves across the main pull");
  }

  /** Each through hole is open along its own axis only; the main pull takes one of them. */
  @Test
  void aBlockDrilledTwoWaysTakesThree() throws IOException {
    assertEquals(3, proved("two-holes", Drilled.twoHoles(kernel), 8, WEDGE).size());
  }

  /** Its cores graze the plane of the main seam, so no limit is set for wedges here. */
  @Test
  void aBlockDrilledThreeWaysTakesFour() throws IOException {
    assertEquals(4, proved("three-holes", Drilled.threeHoles(kernel), 4, 0).size());
  }

  /** Six blind holes open in six directions, and no direction frees two. */
  @Test
  void sixBlindHolesDoNotOpenInFive() throws IOException {
    Path file = temp.resolve("six.stl");
    StlWriter.write(file, Drilled.sixBlindHoles(kernel), "six");
    JobOptions options =
        new JobOptions(
            ModelOptions.DEFAULT,
            MoldOptions.DEFAULT.with().pieces(5).build(),
            JobOptions.DEFAULT.bed());
    MoldJob job = new MoldJob(options, kernel, (f, m, p) -> {}, Progress.NONE);
    CaughtException e =
        assertThrows(CaughtException.class, () -> job.run(file, temp.resolve("six-mold")));
    assertTrue(
        e.getMessage().contains("the fewest rigid pieces that open are 6, more than the 5"),
        e.getMessage());
  }

  /**
   * Three blind holes in one plane open in three directions of which no two are opposite. The three
   * sheets meet at the poles, where the ball is parallel to all pulls, so no limit is set for
   * wedges here.
   */
  @Test
  void aBallDrilledThreeWaysTakesThreeThatAreNotOpposite() throws IOException {
    List<Piece> pieces = proved("ball", Drilled.threeWayBall(kernel), 8, 0);
    assertEquals(3, pieces.size());
    for (Piece p : pieces) {
      assertEquals(0, p.pull().y(), 0.15, "it stands on a pole");
      for (Piece q : pieces) {
        if (p.order() != q.order()) {
          assertTrue(p.pull().dot(q.pull()) > -0.9, "not opposite");
        }
      }
    }
  }

  @Test
  void sixBlindHolesTakeSix() throws IOException {
    assertEquals(6, proved("six-holes", Drilled.sixBlindHoles(kernel), 8, WEDGE).size());
  }
}
