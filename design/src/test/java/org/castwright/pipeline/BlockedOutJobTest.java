package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.StlWriter;
import org.castwright.plan.CaughtException;
import org.castwright.plan.MoldOptions;
import org.castwright.progress.Progress;
import org.castwright.proof.Proof;
import org.castwright.proof.ProofCheck;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Jobs on a model that two pieces catch, with what they catch filled. */
class BlockedOutJobTest {

  private static final SolidKernel KERNEL = new ManifoldKernel();

  @TempDir private Path temp;

  /** Three balls in a triangle on a fourth: no axis looks into all the creases between them. */
  private static TriMesh heap() {
    Solid big = KERNEL.solid("big", Shapes.sphere(14, 48));
    Solid a = KERNEL.solid("a", Shapes.sphere(9, 48).translated(new Vec3(13, 0, 9)));
    Solid b = KERNEL.solid("b", Shapes.sphere(8, 48).translated(new Vec3(-8, 11, 10)));
    Solid c = KERNEL.solid("c", Shapes.sphere(8, 48).translated(new Vec3(-7, -12, 8)));
    return FloatGrid.snap(KERNEL.union("heap", List.of(big, a, b, c)).mesh());
  }

  private MoldJob.Result run(String name, MoldOptions.With mold) throws IOException {
    Path file = temp.resolve("heap.stl");
    StlWriter.write(file, heap(), "heap");
    JobOptions options =
        new JobOptions(ModelOptions.DEFAULT, mold.build(), JobOptions.DEFAULT.bed());
    return new MoldJob(options, KERNEL, Artist.NONE, Progress.NONE).run(file, temp.resolve(name));
  }

  @Test
  void twoPiecesOpenWhatIsBlockedOut() throws IOException {
    MoldOptions.With asked = MoldOptions.DEFAULT.with().blockOutMm3(900);
    MoldJob.Result r = run("filled", asked);
    assertEquals(List.of(), r.proof().failures().stream().map(ProofCheck::words).toList());
    assertEquals(2, r.mold().pieces().size());
    assertEquals(0.8, r.report().limits().minimumWebMm(), "beside what is filled it has a limit");
    Report.BlockedOut b = r.report().blockedOut();
    assertTrue(b.caughtMm3() > 10 && b.caughtMm3() <= 900, b.toString());
    assertTrue(b.addedMm3() >= b.caughtMm3(), b.toString());
    String sheet = Files.readString(temp.resolve("filled").resolve("sheet.txt"));
    assertTrue(sheet.contains("BLOCKED OUT"), sheet);
    // the job can be run again, and the proof repeated from the files
    Path job = temp.resolve("filled").resolve("job.json");
    assertEquals(asked.build(), JobFile.read(job).options().mold());
    assertTrue(Proof.of(ProofFolder.read(temp.resolve("filled")), KERNEL, Progress.NONE).passed());
  }

  @Test
  void onlyAsMuchIsFilledAsMayBe() {
    MoldOptions.With little = MoldOptions.DEFAULT.with().blockOutMm3(1);
    assertThrows(CaughtException.class, () -> run("little", little));
    assertThrows(CaughtException.class, () -> run("none", MoldOptions.DEFAULT.with()));
  }

  @Test
  void whatOpensIsNotFilled() throws IOException {
    Path file = temp.resolve("ball.stl");
    StlWriter.write(file, Shapes.sphere(10, 32), "ball");
    MoldOptions mold = MoldOptions.DEFAULT.with().blockOutMm3(100).build();
    JobOptions options = new JobOptions(ModelOptions.DEFAULT, mold, JobOptions.DEFAULT.bed());
    MoldJob job = new MoldJob(options, KERNEL, Artist.NONE, Progress.NONE);
    Report report = job.run(file, temp.resolve("ball")).report();
    assertNull(report.blockedOut());
    assertEquals(0, report.limits().minimumWebMm(), "where the model decides there is none");
  }

  /**
   * A ball with four small blind holes toward the corners of a tetrahedron, none freed by another.
   */
  private static TriMesh pierced() {
    Solid ball = KERNEL.solid("ball", Shapes.sphere(20, 64));
    List<Solid> holes = new ArrayList<>();
    for (Vec3 d :
        List.of(new Vec3(1, 1, 1), new Vec3(1, -1, -1), new Vec3(-1, 1, -1), new Vec3(-1, -1, 1))) {
      Frame along = Frame.along(d);
      TriMesh hole = Shapes.cylinder(2, 12, 32).toLocal(along.inverse());
      holes.add(KERNEL.solid("hole", hole.translated(along.w().times(14))));
    }
    return FloatGrid.snap(KERNEL.difference("pierced", ball, holes).mesh());
  }

  /**
   * Three pieces free three of the holes at most: what is caught is little, and is filled unasked.
   */
  @Test
  void aLittleIsFilledWhereTheMoldAskedForCannotBe() throws IOException {
    Path file = temp.resolve("pierced.stl");
    StlWriter.write(file, pierced(), "pierced");
    MoldOptions.With three = MoldOptions.DEFAULT.with().pieces(3);
    JobOptions auto = new JobOptions(ModelOptions.DEFAULT, three.build(), JobOptions.DEFAULT.bed());
    MoldJob.Result r =
        new MoldJob(auto, KERNEL, Artist.NONE, Progress.NONE).run(file, temp.resolve("auto"));
    assertEquals(List.of(), r.proof().failures().stream().map(ProofCheck::words).toList());
    assertEquals(2, r.mold().pieces().size());
    Report.BlockedOut b = r.report().blockedOut();
    assertTrue(b.addedMm3() < 0.05 * pierced().volume(), b.toString());
    String sheet = Files.readString(temp.resolve("auto").resolve("sheet.txt"));
    assertTrue(sheet.contains("BLOCKED OUT") && sheet.contains("--block-out"), sheet);
    assertTrue(sheet.contains("As the model is, no mold was made of it"), sheet);

    JobOptions never =
        new JobOptions(
            ModelOptions.DEFAULT, three.blockOutMm3(0).build(), JobOptions.DEFAULT.bed());
    MoldJob strict = new MoldJob(never, KERNEL, Artist.NONE, Progress.NONE);
    Path none = temp.resolve("none");
    assertThrows(CaughtException.class, () -> strict.run(file, none));
    assertFalse(Files.exists(none));
  }
}
