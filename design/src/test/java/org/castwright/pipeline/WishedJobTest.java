package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.StlWriter;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.PiecePull;
import org.castwright.progress.Progress;
import org.castwright.seams.Wishes;
import org.castwright.side.Drilled;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A whole job with wishes: the ball drilled three ways, whose seams run from pole to pole. */
class WishedJobTest {

  @TempDir private Path temp;

  private static final String TEXT =
      """
      {"version": 1, "wishes": [
        {"mark": "hide", "box": {"min": [-20, -20, -20], "max": [20, 20, 0]}},
        {"mark": "show", "box": {"min": [-20, -20, 8], "max": [20, 20, 20]}},
        {"mark": "piece", "piece": 1, "sphere": {"center": [17, 3, 0], "radius": 8}}
      ]}
      """;

  private Report run(SolidKernel kernel, Wishes wishes, String name) throws IOException {
    List<Vec3> ways = Drilled.threeWays();
    TriMesh ball = Drilled.threeWayBall(kernel);
    Path file = temp.resolve("ball.stl");
    StlWriter.write(file, ball, "ball");
    MoldOptions asked =
        MoldOptions.DEFAULT
            .with()
            .pieces(8)
            .pulls(List.of(new PiecePull(2, ways.get(1)), new PiecePull(3, ways.get(2))))
            .wishes(wishes)
            .build();
    JobOptions options = new JobOptions(ModelOptions.DEFAULT, asked, JobOptions.DEFAULT.bed());
    return new MoldJob(options, kernel, Artist.NONE, Progress.NONE)
        .run(file, temp.resolve(name))
        .report();
  }

  @Test
  void theReportTellsWhatIsInSight() throws IOException {
    try (SolidKernel kernel = new ManifoldKernel()) {
      Report r = run(kernel, WishesFile.parse(TEXT, "test"), "wished");
      Report.PartingInfo p = r.parting();
      assertEquals(3, r.pieces().size());
      // the lower half of the ball is hidden
      assertTrue(p.visibleSeamMm() > 0.3 * p.seamLengthMm(), p.toString());
      assertTrue(p.visibleSeamMm() < 0.7 * p.seamLengthMm(), p.toString());
      assertTrue(p.showSeamMm() > 0 && p.showSeamMm() < p.visibleSeamMm(), p.toString());
      assertEquals(p.showSeamMm() / p.seamLengthMm(), p.showShare(), 1e-3);
      // round the hole that opens along the first pull nothing else may form it
      assertEquals(0, p.wishMissedMm2(), 0.5);
      String sheet = Files.readString(temp.resolve("wished").resolve("sheet.txt"));
      assertTrue(sheet.contains("mm are in sight"), sheet);
      assertEquals(
          WishesFile.parse(TEXT, "test"),
          JobFile.read(temp.resolve("wished").resolve("job.json")).options().mold().wishes());
      assertEquals(
          WishesFile.parse(TEXT, "test"),
          WishesFile.read(temp.resolve("wished").resolve("wishes.json")));
    }
  }

  @Test
  void aWishForAPieceThereIsNotIsRefused() {
    try (SolidKernel kernel = new ManifoldKernel()) {
      Wishes seventh = WishesFile.parse(TEXT.replace("\"piece\": 1", "\"piece\": 7"), "test");
      MeshException e = assertThrows(MeshException.class, () -> run(kernel, seventh, "seventh"));
      assertTrue(e.getMessage().contains("asks for piece 7 of 3"), e.getMessage());
    }
    assertThrows(
        IllegalArgumentException.class,
        () -> MoldOptions.DEFAULT.with().wishes(WishesFile.parse(TEXT, "test")).build());
  }
}
