package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.Format;
import org.castwright.meshio.RawModel;
import org.castwright.mold.Wavy;
import org.castwright.plan.BlockShape;
import org.castwright.plan.Closing;
import org.castwright.plan.KeyShape;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.Pour;
import org.castwright.plan.PrintProcess;
import org.castwright.progress.Progress;
import org.castwright.proof.ProofCheck;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Options against shapes: every combination here must end in a proved mold. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class JobMatrixTest {

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

  static Stream<Arguments> combinations() {
    TriMesh wavy = Wavy.disc(40, 5);
    TriMesh egg = Shapes.ellipsoid(45, 30, 20, 48);
    TriMesh ring = Shapes.torus(30, 10, 64, 24);
    TriMesh ball = Shapes.sphere(18, 32);
    TriMesh smallWavy = Wavy.disc(24, 3);
    TriMesh smallRing = Shapes.torus(18, 6, 40, 16);
    return Stream.of(
        row("wavy, defaults", wavy, MoldOptions.DEFAULT.with()),
        row(
            "wavy, contour, bolts, domes",
            wavy,
            MoldOptions.DEFAULT
                .with()
                .block(BlockShape.CONTOUR)
                .closing(Closing.BOLTS)
                .keyShape(KeyShape.DOME)),
        row(
            "wavy, rounded, clamps, poured lying, resin print",
            wavy,
            MoldOptions.DEFAULT
                .with()
                .block(BlockShape.ROUNDED)
                .closing(Closing.CLAMPS)
                .pour(Pour.PULL)
                .process(PrintProcess.RESIN)),
        row(
            "egg, contour, bands, wax",
            egg,
            MoldOptions.DEFAULT.with().block(BlockShape.CONTOUR).material("paraffin-wax")),
        row(
            "egg, pull given askew, nothing to close it",
            egg,
            MoldOptions.DEFAULT.with().pull(new Vec3(0.2, 0.3, 1)).closing(Closing.NONE)),
        row(
            "egg, six keys, clearance 0.5, wall 12",
            egg,
            MoldOptions.DEFAULT.with().keyCount(6).clearanceMm(0.5).wallMm(12)),
        row(
            "ring, bolts, poured lying, domes",
            ring,
            MoldOptions.DEFAULT
                .with()
                .closing(Closing.BOLTS)
                .pour(Pour.PULL)
                .keyShape(KeyShape.DOME)),
        row(
            "ring, rounded, shrink by axis",
            ring,
            MoldOptions.DEFAULT.with().block(BlockShape.ROUNDED).shrinkPercent(new Vec3(1, 2, 3))),
        row(
            "ball, clamps, domes, resin print",
            ball,
            MoldOptions.DEFAULT
                .with()
                .pull(Vec3.Z)
                .closing(Closing.CLAMPS)
                .keyShape(KeyShape.DOME)
                .process(PrintProcess.RESIN)),
        row(
            "ball, contour, bolts, poured lying, resin print",
            ball,
            MoldOptions.DEFAULT
                .with()
                .pull(Vec3.X)
                .block(BlockShape.CONTOUR)
                .closing(Closing.BOLTS)
                .pour(Pour.PULL)
                .process(PrintProcess.RESIN)),
        row(
            "wavy, contour, clamps, poured lying",
            smallWavy,
            MoldOptions.DEFAULT
                .with()
                .pull(Vec3.Z)
                .block(BlockShape.CONTOUR)
                .closing(Closing.CLAMPS)
                .pour(Pour.PULL)),
        row(
            "wavy, bands, poured lying, domes, resin print",
            smallWavy,
            MoldOptions.DEFAULT
                .with()
                .pull(new Vec3(0, 0, -1))
                .pour(Pour.PULL)
                .keyShape(KeyShape.DOME)
                .process(PrintProcess.RESIN)),
        row(
            "small ring, rounded, nothing to close it, resin print",
            smallRing,
            MoldOptions.DEFAULT
                .with()
                .pull(Vec3.Z)
                .block(BlockShape.ROUNDED)
                .closing(Closing.NONE)
                .process(PrintProcess.RESIN)),
        row(
            "small ring, contour, nothing to close it, poured lying, domes",
            smallRing,
            MoldOptions.DEFAULT
                .with()
                .pull(Vec3.Z)
                .block(BlockShape.CONTOUR)
                .closing(Closing.NONE)
                .pour(Pour.PULL)
                .keyShape(KeyShape.DOME)));
  }

  private static Arguments row(String name, TriMesh mesh, MoldOptions.With options) {
    return Arguments.of(name, mesh, options.threads(2).build());
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("combinations")
  void proved(String name, TriMesh mesh, MoldOptions options) throws IOException {
    JobOptions job = new JobOptions(ModelOptions.DEFAULT, options, JobOptions.DEFAULT.bed());
    RawModel raw = new RawModel(mesh, Format.STL_BINARY, null, List.of(), name);
    Model model = Model.of(raw, job.model(), kernel, Progress.NONE);
    MoldJob.Result r =
        new MoldJob(job, kernel, Artist.NONE, Progress.NONE).run(model, temp.resolve("mold"));
    assertEquals(List.of(), r.proof().failures().stream().map(ProofCheck::words).toList(), name);
    assertTrue(r.report().keys().size() >= Math.max(3, options.keyCount() - 1), name);
    assertTrue(r.report().pour().gates() == 1 && r.report().pour().vents() >= 1, name);
    Report.Volumes v = r.report().volumes();
    double sum =
        v.piecesMm3() + v.castingMm3() + v.channelsMm3() + v.keyClearanceMm3() + v.featuresMm3();
    assertEquals(v.blockMm3(), sum, 1e-6 * v.blockMm3(), name);
  }
}
