package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.StlWriter;
import org.castwright.plan.MoldOptions;
import org.castwright.progress.Progress;
import org.castwright.proof.ProofCheck;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A whole job whose casting has to stretch past a lip, proved from its files. */
class StretchedJobTest {

  @TempDir private Path temp;

  @Test
  void twoPiecesAreProvedAndThePlaceIsListed() throws IOException {
    TriMesh bead =
        Primitives.revolve(
            new double[] {0, -4, 14, -4, 14, 0, 5, 1, 5, 6, 5.5, 8, 5.5, 9, 4, 12, 0, 12}, 64);
    Path file = temp.resolve("bead.stl");
    StlWriter.write(file, bead, "bead");
    MoldOptions asked =
        MoldOptions.DEFAULT.with().pull(Vec3.Z).material("gelatin-gummy").pieces(8).build();
    JobOptions options = new JobOptions(ModelOptions.DEFAULT, asked, JobOptions.DEFAULT.bed());
    try (SolidKernel kernel = new ManifoldKernel()) {
      MoldJob.Result r =
          new MoldJob(options, kernel, Artist.NONE, Progress.NONE).run(file, temp.resolve("mold"));
      assertEquals(List.of(), r.proof().failures().stream().map(ProofCheck::words).toList());
      Report report = r.report();
      assertEquals(2, report.pieces().size());
      assertTrue(!report.limits().allowCaught(), "only what was measured may catch");
      assertEquals(1, report.stretch().size());
      Report.StretchInfo s = report.stretch().get(0);
      assertEquals(0.1, s.strain(), 0.02);
      assertEquals(0.125, s.limit(), 1e-9);
      assertTrue(report.limits().creaseMm3() < 5 + 1.2 * s.volumeMm3(), report.limits().toString());
      String sheet = Files.readString(temp.resolve("mold").resolve("sheet.txt"));
      assertTrue(sheet.contains("stretches by"), sheet);
      assertEquals(options, JobFile.read(temp.resolve("mold").resolve("job.json")).options());
    }
  }
}
