package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.Format;
import org.castwright.meshio.RawModel;
import org.castwright.mold.Mold;
import org.castwright.mold.Piece;
import org.castwright.mold.Volumes;
import org.castwright.parting.BlockBox;
import org.castwright.plan.BlockShape;
import org.castwright.plan.Closing;
import org.castwright.plan.Key;
import org.castwright.plan.KeyShape;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.MoldPlan;
import org.castwright.plan.PourPlan;
import org.castwright.progress.Progress;
import org.castwright.proof.Proof;
import org.castwright.proof.ProofInput;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/**
 * A cube in three pieces, the second pulled slantwise, through files, report, proof and sheet: no
 * planner decides it.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ManyPiecesFolderTest {

  private static final Vec3 SLANTED = new Vec3(2, 0, -1).unit();
  private static final Key KEY =
      new Key("key-1", KeyShape.CONE, new Vec3(15, 3, -8), SLANTED, 3, 2.7, 0.2, 3, 2);

  private SolidKernel kernel;
  private Path folder;
  private Mold mold;
  private Proof proof;
  private Report report;

  @BeforeAll
  void writeOne(@TempDir Path dir) throws IOException {
    kernel = new ManifoldKernel();
    folder = dir;
    RawModel raw = new RawModel(Shapes.cube(20), Format.OFF, null, List.of(), "cube");
    Model model = Model.of(raw, ModelOptions.DEFAULT, kernel, Progress.NONE);
    MoldOptions options =
        MoldOptions.DEFAULT.with().pull(Vec3.Z).block(BlockShape.BOX).closing(Closing.NONE).build();
    mold = threePieces(MoldPlan.of(model.mesh(), options, kernel, Progress.NONE));
    JobOptions job = new JobOptions(ModelOptions.DEFAULT, options, JobOptions.DEFAULT.bed(), 30);
    MoldFiles.write(folder, mold);
    write(ReportMaker.of("test", model, mold, job, null, Map.of(), List.of()));
    proof = Proof.of(ProofFolder.read(folder), kernel, Progress.NONE);
    report = ReportMaker.of("test", model, mold, job, proof, Map.of("total", 1.0), List.of());
    write(report);
  }

  @AfterAll
  void close() {
    kernel.close();
  }

  private void write(Report r) throws IOException {
    Files.writeString(folder.resolve("report.json"), Json.write(r));
  }

  /** The lower half of a two-part mold cut once more, beside the casting. */
  private Mold threePieces(MoldPlan two) {
    BlockBox box = two.block().box();
    double side = two.casting().bounds().max().x();
    Solid beside =
        kernel.solid(
            "beside",
            Primitives.box(
                new Vec3(side, box.y0() - 1, box.z0() - 1),
                new Vec3(box.x1() + 1, box.y1() + 1, box.z1() + 1)));
    SolidKernel.Split lower = kernel.split(two.pieces().get(1).body(), beside);
    List<Piece> pieces =
        List.of(
            Piece.of(1, Vec3.Z, snapped(two.pieces().get(0).body())),
            Piece.of(2, SLANTED, snapped(lower.inside())),
            Piece.of(3, Vec3.Z.negate(), snapped(lower.outside())));
    PourPlan pour =
        new PourPlan(
            two.pour().pour(), two.pour().up(), List.of(), 0, two.pour().gate(), List.of());
    TriMesh casting = two.parted();
    return new Mold(
        with(two, pour, List.of()),
        pieces,
        casting,
        new TriMesh(new double[0], new int[0]),
        new Volumes(two.block().volume(), casting.volume(), 0, 0, 0),
        List.of());
  }

  private static MoldPlan with(MoldPlan p, PourPlan pour, List<Key> keys) {
    return new MoldPlan(
        p.options(),
        p.material(),
        p.survey(),
        null,
        null,
        p.frame(),
        p.casting(),
        p.block(),
        p.parted(),
        p.pieces(),
        p.seam(),
        pour,
        keys,
        List.of(),
        List.of());
  }

  private static TriMesh snapped(Solid solid) {
    return FloatGrid.snap(solid.mesh());
  }

  @Test
  void isProvedFromItsFiles() {
    // this mold is made without channels, which the proof of a folder does not let pass
    assertEquals(
        List.of("gate: one at least"), proof.failures().stream().map(c -> c.name()).toList());
    assertTrue(
        proof.checks().stream()
            .anyMatch(c -> c.name().equals("opening: piece-2 past piece-3, way")));
  }

  @Test
  void theReportHoldsToItsSchema() throws IOException {
    try (InputStream in = Report.class.getResourceAsStream("report.schema.json")) {
      JsonSchema schema =
          JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(in);
      JsonNode node = new ObjectMapper().readTree(Files.readString(folder.resolve("report.json")));
      assertEquals(Set.of(), schema.validate(node));
    }
  }

  @Test
  void pullsOrdersAndLimitsComeBackFromTheFolder() throws IOException {
    ProofInput in = ProofFolder.read(folder);
    assertEquals(3, in.pieces().size());
    assertEquals(0, in.pieces().get(1).pull().minus(SLANTED).length(), 1e-15);
    assertEquals(List.of(1, 2, 3), report.pieces().stream().map(Report.PieceFile::order).toList());
    assertEquals(30, in.limits().wedgeDegrees());
  }

  @Test
  void keysNameThePiecesTheyStandBetween() {
    Mold keyed =
        new Mold(
            with(mold.plan(), mold.plan().pour(), List.of(KEY)),
            mold.pieces(),
            mold.casting(),
            mold.channels(),
            mold.volumes(),
            List.of());
    Report.KeyInfo k = keyInfo(keyed);
    assertEquals("piece-3", k.keyPiece());
    assertEquals("piece-2", k.socketPiece());
    assertEquals(List.of(SLANTED.x(), 0.0, SLANTED.z()), k.axis());
  }

  private static Report.KeyInfo keyInfo(Mold keyed) {
    return ReportMaker.key(keyed.plan().keys().get(0));
  }

  @Test
  void theSheetTellsEachPullAndHowEachPieceIsPrinted() {
    String sheet = JobSheet.of(report, mold).replaceAll("\\s+", " ");
    assertTrue(sheet.contains("1. piece-1 off along +z (mold frame)"), sheet);
    assertTrue(sheet.contains("2. piece-2 off along (0.894, 0.000, -0.447) (mold frame)"), sheet);
    assertTrue(sheet.contains("3. piece-3 off along -z (mold frame)"), sheet);
    assertTrue(sheet.contains("Pieces not named below: Outer face on the bed"), sheet);
    assertTrue(sheet.contains("piece-2: its outer face is not square to its pull"), sheet);
    assertTrue(sheet.contains("clamp the pieces"), sheet);
    assertFalse(sheet.contains("halves"), sheet);
  }
}
