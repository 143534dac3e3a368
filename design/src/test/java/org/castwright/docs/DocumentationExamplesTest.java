package org.castwright.docs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Shapes;
import org.castwright.meshio.StlWriter;
import org.castwright.mold.Mold;
import org.castwright.pipeline.Artist;
import org.castwright.pipeline.JobOptions;
import org.castwright.pipeline.Model;
import org.castwright.pipeline.ModelOptions;
import org.castwright.pipeline.MoldJob;
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
  void theExampleOfTheReadme() throws IOException {
    Path path = dir.resolve("egg.stl");
    Path folder = dir.resolve("my-mold");
    StlWriter.write(path, Shapes.ellipsoid(24, 17, 11, 24), "an egg");
    Mold cut;
    Proof judged;
    // example begins
    try (SolidKernel kernel = new ManifoldKernel()) {
      Model model = Model.read(path, ModelOptions.DEFAULT, kernel, Progress.NONE);
      MoldPlan plan = MoldPlan.of(model.mesh(), MoldOptions.DEFAULT, kernel, Progress.NONE);
      Mold mold = Mold.build(plan, kernel, Progress.NONE);
      // or all of it, with files and proof:
      MoldJob job = new MoldJob(JobOptions.DEFAULT, kernel, Artist.NONE, Progress.NONE);
      Proof proof = job.run(path, folder).proof();
      // example ends
      cut = mold;
      judged = proof;
    }
    assertEquals(2, cut.pieces().size());
    assertTrue(judged.passed());
    assertTrue(Files.isRegularFile(folder.resolve("sheet.txt")));
  }

  @Test
  void theReadmeShowsTheExampleAsItRunsHere() throws IOException {
    List<String> shown = between(Path.of("../README.md"), "```java", "}");
    shown.replaceAll(line -> line.replace("Path.of(\"my-mold\")", "folder"));
    Path source = Path.of("src/test/java/org/castwright/docs/DocumentationExamplesTest.java");
    assertEquals(between(source, "// example begins", "// example ends"), shown);
  }

  /** The lines after the first that is {@code from} up to the next that is {@code to}. */
  private static List<String> between(Path file, String from, String to) throws IOException {
    List<String> lines = Files.readAllLines(file).stream().map(String::strip).toList();
    List<String> rest = lines.subList(lines.indexOf(from) + 1, lines.size());
    return new ArrayList<>(rest.subList(0, rest.indexOf(to)));
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
