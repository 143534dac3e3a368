package org.castwright.docs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Shapes;
import org.castwright.meshio.StlWriter;
import org.castwright.mold.Mold;
import org.castwright.mold.Piece;
import org.castwright.pipeline.Artist;
import org.castwright.pipeline.JobOptions;
import org.castwright.pipeline.Model;
import org.castwright.pipeline.ModelOptions;
import org.castwright.pipeline.MoldJob;
import org.castwright.pipeline.ProofFolder;
import org.castwright.plan.CaughtException;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.MoldPlan;
import org.castwright.progress.Progress;
import org.castwright.proof.Proof;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The examples of the README, as code that compiles and runs. */
class DocumentationExamplesTest {

  @TempDir private Path dir;

  @Test
  void planCutAndProve() throws IOException {
    Path file = dir.resolve("egg.stl");
    Path out = dir.resolve("egg-mold");
    StlWriter.write(file, Shapes.ellipsoid(24, 17, 11, 24), "an egg");

    // example: step by step
    try (SolidKernel kernel = new ManifoldKernel()) {
      Model model = Model.read(file, ModelOptions.DEFAULT, kernel, Progress.NONE);

      MoldPlan plan = MoldPlan.of(model.mesh(), MoldOptions.DEFAULT, kernel, Progress.NONE);
      Mold mold = Mold.build(plan, kernel, Progress.NONE);
      for (Piece piece : mold.pieces()) {
        StlWriter.write(dir.resolve(piece.name() + ".stl"), piece.print(), "to print, mm");
      }

      // example: the whole job, proved from the files it wrote
      MoldJob job = new MoldJob(JobOptions.DEFAULT, kernel, Artist.NONE, Progress.NONE);
      job.run(model, out);
      Proof proof = Proof.of(ProofFolder.read(out), kernel, Progress.NONE);

      assertTrue(proof.passed());
      assertEquals(2, mold.pieces().size());
      assertTrue(Files.size(dir.resolve("piece-2.stl")) > 84);
    }
  }

  @Test
  void aModelThatIsCaught() {
    try (SolidKernel kernel = new ManifoldKernel()) {
      // example: options are changed one by one; a model that is caught says where
      MoldOptions options =
          MoldOptions.DEFAULT.with().material("paraffin-wax").pull(new Vec3(0, 0, 1)).build();
      CaughtException e =
          assertThrows(
              CaughtException.class,
              () -> MoldPlan.of(Shapes.hourglass(20, 12, 40, 32), options, kernel, Progress.NONE));

      assertTrue(e.survey().best().trappedVolume() > 100);
      assertEquals(1, e.survey().caught().places().size());
    }
  }
}
