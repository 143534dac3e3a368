package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.Format;
import org.castwright.meshio.MeshReader;
import org.castwright.meshio.RawModel;
import org.castwright.meshio.StlWriter;
import org.castwright.mold.Wavy;
import org.castwright.plan.BlockShape;
import org.castwright.plan.Closing;
import org.castwright.plan.MoldOptions;
import org.castwright.progress.Progress;
import org.castwright.proof.Proof;
import org.castwright.proof.ProofCheck;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A written folder read back: what was tampered with does not pass for a mold. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class WrittenFolderTest {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private SolidKernel kernel;
  private JsonSchema schema;

  private Path temp;

  private Path folder;

  @BeforeAll
  void makeOne(@TempDir Path dir) throws IOException {
    temp = dir;
    kernel = new ManifoldKernel();
    try (InputStream in = Report.class.getResourceAsStream("report.schema.json")) {
      schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(in);
    }
    MoldOptions mold =
        MoldOptions.DEFAULT
            .with()
            .pull(Vec3.Z)
            .block(BlockShape.ROUNDED)
            .closing(Closing.BOLTS)
            .build();
    JobOptions options = new JobOptions(ModelOptions.DEFAULT, mold, JobOptions.DEFAULT.bed());
    RawModel raw = new RawModel(Wavy.disc(22, 2), Format.OFF, null, List.of(), "wavy disc");
    Model model = Model.of(raw, options.model(), kernel, Progress.NONE);
    folder = temp.resolve("mold");
    new MoldJob(options, kernel, Artist.NONE, Progress.NONE).run(model, folder);
  }

  @AfterAll
  void close() {
    kernel.close();
  }

  private Path copy(String name) throws IOException {
    Path to = temp.resolve(name);
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path p : (Iterable<Path>) all::iterator) {
        Files.copy(p, to.resolve(folder.relativize(p).toString()));
      }
    }
    return to;
  }

  // ---- the report and its schema ----

  @Test
  void theReportHoldsToItsSchema() throws IOException {
    assertEquals(Set.of(), schema.validate(report()));
  }

  @Test
  void aModelFromMemoryHasNoJobFile() {
    assertFalse(Files.exists(folder.resolve("job.json")));
  }

  private JsonNode report() throws IOException {
    return MAPPER.readTree(Files.readString(folder.resolve("report.json")));
  }

  static Stream<Arguments> damages() {
    return Stream.of(
        damage("no proof", r -> r.remove("proof")),
        damage("no timings", r -> r.remove("timings_s")),
        damage("a new entry", r -> r.put("verdict", "fine")),
        damage("volume as words", r -> at(r, "/volumes").put("casting_mm3", "1 liter")),
        damage("a casting without volume", r -> at(r, "/casting").put("volume_mm3", 0)),
        damage("a pull with two numbers", r -> ((ArrayNode) r.at("/pieces/0/pull")).remove(2)),
        damage("no pieces", r -> ((ArrayNode) r.at("/pieces")).removeAll()),
        damage("an unknown channel", r -> at(r, "/channels/0").put("kind", "riser")),
        damage("a key without a gap", r -> at(r, "/keys/0").remove("clearance_mm")),
        damage("an unknown feature", r -> at(r, "/features/0").put("kind", "handle")),
        damage("a verdict as words", r -> at(r, "/proof").put("passed", "yes")),
        damage("a check without value", r -> at(r, "/proof/checks/0").remove("value")),
        damage("a bed of nothing", r -> ((ArrayNode) r.at("/limits/bed_mm")).set(1, 0)));
  }

  private static Arguments damage(String name, Consumer<ObjectNode> change) {
    return Arguments.of(name, change);
  }

  private static ObjectNode at(ObjectNode report, String place) {
    return (ObjectNode) report.at(place);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("damages")
  void aDamagedReportDoesNotHold(String name, Consumer<ObjectNode> change) throws IOException {
    ObjectNode report = report().deepCopy();
    change.accept(report);
    assertFalse(report.equals(report()), "nothing was changed");
    Set<ValidationMessage> faults = schema.validate(report);
    assertFalse(faults.isEmpty(), name + " passes the schema");
  }

  @Test
  void theReportReadBackIsTheReportWritten() throws IOException {
    String text = Files.readString(folder.resolve("report.json"));
    assertEquals(text, Json.write(ProofFolder.report(folder)));
    assertEquals(report(), MAPPER.readTree(Json.line(ProofFolder.report(folder))));
    assertFalse(Json.line(ProofFolder.report(folder)).contains("\n"));
  }

  // ---- the proof from the files alone ----

  @Test
  void theFolderProvesAgainToTheSameChecks() throws IOException {
    Proof again = Proof.of(ProofFolder.read(folder), kernel, Progress.NONE);
    assertTrue(again.passed());
    assertEquals(ProofFolder.report(folder).proof(), Report.ProofInfo.of(again));
  }

  static Stream<Arguments> tamperings() {
    return Stream.of(
        Arguments.of("pieces/piece-1.stl", "shifted", "bodies disjoint"),
        Arguments.of("casting.stl", "shifted", "bodies disjoint"),
        Arguments.of("pieces/piece-2.stl", "opened", "body: piece-2 closed"),
        Arguments.of("print/piece-1.stl", "shifted", "print: piece-1 stands on the bed"),
        Arguments.of("block.stl", "grown", "volume balance"));
  }

  @ParameterizedTest(name = "{0} {1}")
  @MethodSource("tamperings")
  void whatWasTamperedWithFails(String file, String how, String check) throws IOException {
    Path dir = copy(file.replaceAll("\\W", "-") + how);
    TriMesh was = MeshReader.read(dir.resolve(file)).mesh();
    StlWriter.write(dir.resolve(file), changed(was, how), "tampered");
    Proof proof = Proof.of(ProofFolder.read(dir), kernel, Progress.NONE);
    assertFalse(proof.passed());
    List<String> failed = proof.failures().stream().map(ProofCheck::name).toList();
    assertTrue(failed.contains(check), failed.toString());
  }

  @Test
  void aProofThatFindsNothingToMeasureStillHoldsToTheSchema() throws IOException {
    Path dir = copy("a key elsewhere");
    ObjectNode report = report().deepCopy();
    ((ArrayNode) report.at("/keys/0/center")).set(0, 400);
    Files.writeString(dir.resolve("report.json"), report.toString());
    Proof proof = Proof.of(ProofFolder.read(dir), kernel, Progress.NONE);
    assertFalse(proof.passed());
    assertTrue(proof.failures().stream().anyMatch(c -> Double.isNaN(c.value())));
    report.set("proof", MAPPER.readTree(Json.line(Report.ProofInfo.of(proof))));
    assertEquals(Set.of(), schema.validate(report));
    Files.writeString(dir.resolve("report.json"), report.toString());
    assertFalse(ProofFolder.report(dir).proof().passed());
  }

  private static TriMesh changed(TriMesh m, String how) {
    return switch (how) {
      case "shifted" -> m.translated(new Vec3(0.5, 0, 0.5));
      case "grown" -> m.scaled(new Vec3(1.001, 1, 1));
      case "opened" -> new TriMesh(m.xyz(), java.util.Arrays.copyOf(m.tri(), m.tri().length - 3));
      default -> throw new IllegalArgumentException(how);
    };
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "block.stl",
        "casting.stl",
        "channels.stl",
        "pieces/piece-1.stl",
        "pieces/piece-2.stl",
        "print/piece-2.stl",
        "report.json"
      })
  void aMissingFileIsNamed(String file) throws IOException {
    Path dir = copy("without " + file.replace('/', ' '));
    Files.delete(dir.resolve(file));
    MeshException e = assertThrows(MeshException.class, () -> ProofFolder.read(dir));
    String name = Path.of(file).getFileName().toString();
    assertTrue(e.getMessage().contains(name), e.getMessage());
  }

  @Test
  void aReportThatIsNoneIsSaidToBeDamaged() throws IOException {
    Path dir = copy("damaged reports");
    Path file = dir.resolve("report.json");
    for (String text : List.of("", "{", "[]", "null", "{}", "\"castwright\"", "solid report")) {
      Files.writeString(file, text);
      MeshException e = assertThrows(MeshException.class, () -> ProofFolder.read(dir), text);
      assertTrue(e.getMessage().contains("report.json"), e.getMessage());
    }
  }

  @Test
  void aReportThatLacksAnEntryIsSaidToBeDamaged() throws IOException {
    Path dir = copy("lacking reports");
    Path file = dir.resolve("report.json");
    for (String place :
        List.of(
            "/block",
            "/casting",
            "/channels_body",
            "/channels",
            "/keys",
            "/volumes",
            "/limits",
            "/pieces/0/pull",
            "/pieces/1/file",
            "/channels/0/axis",
            "/channels/0/kind",
            "/keys/0/center",
            "/limits/bed_mm",
            "/volumes/features_mm3")) {
      ObjectNode report = report().deepCopy();
      int slash = place.lastIndexOf('/');
      JsonNode gone = at(report, place.substring(0, slash)).remove(place.substring(slash + 1));
      assertTrue(gone != null, place + " is not in the report");
      Files.writeString(file, report.toString());
      MeshException e = assertThrows(MeshException.class, () -> ProofFolder.read(dir), place);
      assertTrue(e.getMessage().contains("report.json"), e.getMessage());
    }
  }
}
