package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.Format;
import org.castwright.meshio.RawModel;
import org.castwright.mold.Mold;
import org.castwright.plan.BlockShape;
import org.castwright.plan.Channel;
import org.castwright.plan.GateEnd;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.Openings;
import org.castwright.progress.Progress;
import org.castwright.proof.Proof;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** A spinning top, filled from below. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BottomGateJobTest {

  private static final double[] PROFILE = {0, -22, 6, -20, 24, -2, 24, 2, 8, 20, 0, 22};

  private final SolidKernel kernel = new ManifoldKernel();

  @TempDir private Path temp;

  @AfterAll
  void closeKernel() {
    kernel.close();
  }

  private MoldJob.Result run(String name, GateEnd gate, String material, BlockShape block)
      throws IOException {
    TriMesh top = FloatGrid.snap(Primitives.revolve(PROFILE, 64));
    RawModel raw = new RawModel(top, Format.STL_BINARY, null, List.of(), "top");
    MoldOptions mold =
        MoldOptions.DEFAULT
            .with()
            .material(material)
            .block(block)
            .openings(Openings.BY_RULE.withGate(gate))
            .build();
    JobOptions options = new JobOptions(ModelOptions.DEFAULT, mold, JobOptions.DEFAULT.bed());
    Model model = Model.of(raw, ModelOptions.DEFAULT, kernel, Progress.NONE);
    return new MoldJob(options, kernel, Artist.NONE, Progress.NONE).run(model, temp.resolve(name));
  }

  @Test
  void aSprueBesideTheCastingFillsItFromBelow() throws IOException {
    MoldJob.Result r = run("below", GateEnd.BOTTOM, "plaster-pottery", BlockShape.BOX);
    Proof proof = r.proof();
    assertTrue(proof.failures().isEmpty(), proof.failures().toString());
    Mold mold = r.mold();
    double low = mold.casting().bounds().min().y();
    double high = mold.casting().bounds().max().y();
    List<Channel> channels = mold.plan().pour().channels();
    Channel gate = channels.get(0);
    assertEquals(Channel.Kind.GATE, gate.kind());
    double lowest = gate.stations().stream().mapToDouble(s -> s.center().y()).min().orElseThrow();
    double end = gate.stations().get(gate.stations().size() - 1).center().y();
    assertTrue(lowest < low, "the runner passes under the casting: " + lowest);
    assertTrue(end > high, "the sprue ends above the casting: " + end);
    // its end inside the casting lies in the lowest fifth
    Vec3 enters = gate.stations().get(0).center();
    assertTrue(enters.y() < low + 0.2 * (high - low), "the gate enters at " + enters);
    assertEquals("riser", channels.get(1).name());
    assertEquals(gate.boreMm(), channels.get(1).boreMm(), 1e-9);
    assertEquals("bottom", r.report().pour().gate().at());
    String sheet = Files.readString(temp.resolve("below").resolve("sheet.txt"));
    assertTrue(sheet.contains("It fills from below"), sheet);
  }

  @Test
  void theMaterialDecidesWhereItIsLeftToIt() throws IOException {
    Report.GateInfo wax =
        run("wax", GateEnd.AUTO, "beeswax", BlockShape.BOX).report().pour().gate();
    assertEquals("top", wax.at());
    Report.GateInfo tin =
        run("tin", GateEnd.AUTO, "tin-bismuth", BlockShape.BOX).report().pour().gate();
    assertEquals("bottom", tin.at());
    assertTrue(tin.why().contains("common practice, no source"), tin.why());
  }

  @Test
  void whereItCannotBeItIsSaidWhy() throws IOException {
    MoldJob.Result r = run("contour", GateEnd.BOTTOM, "plaster-pottery", BlockShape.CONTOUR);
    assertEquals("top", r.report().pour().gate().at());
    assertTrue(r.report().pour().gate().why().contains("follows the casting"));
    assertTrue(r.proof().failures().isEmpty(), r.proof().failures().toString());
  }
}
