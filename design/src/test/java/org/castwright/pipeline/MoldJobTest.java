package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.Shapes;
import org.castwright.meshio.StlWriter;
import org.castwright.mold.Mold;
import org.castwright.plan.MoldOptions;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The folder a job leaves, or does not leave. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class MoldJobTest {

  private static final byte[] PICTURE = {1, 2, 3};
  private static final Artist DRAWS =
      (folder, mold, progress) -> Files.write(folder.resolve("a.png"), PICTURE);

  private static final Set<String> PROMISED =
      Set.of(
          "report.json",
          "sheet.txt",
          "job.json",
          "casting.stl",
          "channels.stl",
          "block.stl",
          "mold.3mf",
          "mold.glb",
          "pieces/piece-1.stl",
          "pieces/piece-2.stl",
          "print/piece-1.stl",
          "print/piece-2.stl",
          "pictures/a.png");

  private SolidKernel kernel;

  private Path temp;

  private Path model;
  private Path first;
  private SortedMap<String, byte[]> files;

  @BeforeAll
  void makeOne(@TempDir Path dir) throws IOException {
    temp = dir;
    kernel = new ManifoldKernel();
    model = temp.resolve("egg.stl");
    StlWriter.write(model, Shapes.ellipsoid(24, 17, 11, 24), "an egg");
    first = temp.resolve("first");
    job(2, DRAWS, Progress.NONE).run(model, first);
    files = filesOf(first);
  }

  @AfterAll
  void close() {
    kernel.close();
  }

  private MoldJob job(int threads, Artist artist, Progress progress) {
    return job(MoldOptions.DEFAULT.with().threads(threads).build(), artist, progress);
  }

  /** With the pull given there is little to survey. */
  private MoldJob quick(Artist artist, Progress progress) {
    return job(MoldOptions.DEFAULT.with().pull(Vec3.Z).build(), artist, progress);
  }

  private MoldJob job(MoldOptions mold, Artist artist, Progress progress) {
    JobOptions options = new JobOptions(ModelOptions.DEFAULT, mold, JobOptions.DEFAULT.bed());
    return new MoldJob(options, kernel, artist, progress);
  }

  private static SortedMap<String, byte[]> filesOf(Path dir) throws IOException {
    SortedMap<String, byte[]> out = new TreeMap<>();
    try (Stream<Path> all = Files.walk(dir)) {
      for (Path p : (Iterable<Path>) all.filter(Files::isRegularFile)::iterator) {
        out.put(dir.relativize(p).toString().replace('\\', '/'), Files.readAllBytes(p));
      }
    }
    return out;
  }

  private String text(String name) {
    return new String(files.get(name), StandardCharsets.UTF_8);
  }

  /** An empty folder to look for leftovers in. */
  private Path room(String name) throws IOException {
    return Files.createDirectory(temp.resolve(name));
  }

  private static Set<String> namesIn(Path dir) throws IOException {
    try (Stream<Path> entries = Files.list(dir)) {
      Set<String> out = new TreeSet<>();
      entries.forEach(p -> out.add(p.getFileName().toString()));
      return out;
    }
  }

  // ---- what is there ----

  @Test
  void theFolderHoldsEveryFilePromisedAndNoOther() {
    assertEquals(new TreeSet<>(PROMISED), new TreeSet<>(files.keySet()));
    files.forEach((name, bytes) -> assertTrue(bytes.length > 0, name + " is empty"));
  }

  @Test
  void nothingIsLeftBesideTheFolder() throws IOException {
    try (Stream<Path> beside = Files.list(temp)) {
      assertEquals(0, beside.filter(p -> p.getFileName().toString().startsWith(".")).count());
    }
  }

  @Test
  void theReportIsWhatTheJobReturnsAndProves() throws IOException {
    Report r = ProofFolder.report(first);
    assertTrue(r.proof().passed(), r.proof().toString());
    assertEquals("egg.stl", r.input().file());
    assertEquals(
        files.keySet().stream().filter(n -> n.startsWith("pieces/")).toList(),
        r.pieces().stream().map(Report.PieceFile::file).toList());
    assertTrue(r.timingsS().get("total") > 0);
    // density is stated per cubic meter: 1 m³ = 1e9 mm³
    assertEquals(
        r.pour().volumeToPourMm3() * 1e-9 * r.material().densityKgPerM3(),
        r.pour().massToPourKg(),
        1e-6);
  }

  @Test
  void theSheetSaysWhatThePersonNeeds() throws IOException {
    String sheet = text("sheet.txt");
    Report r = ProofFolder.report(first);
    assertTrue(sheet.contains("Proved") && !sheet.contains("NOT PROVED"));
    for (Report.PieceFile p : r.pieces()) {
      assertTrue(sheet.contains(p.name() + ": " + p.file()), p.name());
      assertTrue(sheet.contains("number " + p.order()), "no order for " + p.name());
    }
    String volume = String.format(Locale.ROOT, "%.1f cm³", r.pour().volumeToPourMm3() / 1000);
    String mass = String.format(Locale.ROOT, "%.3f kg", r.pour().massToPourKg());
    assertTrue(sheet.contains(volume) && sheet.contains(mass), sheet);
    String unwrapped = sheet.replaceAll("\\s+", " ");
    var cautions = org.castwright.material.Materials.of("plaster-pottery").cautions();
    assertFalse(cautions.isEmpty());
    cautions.forEach(c -> assertTrue(unwrapped.contains(c), "missing: " + c));
    assertFalse(unwrapped.toLowerCase(Locale.ROOT).contains("food safe"));
    assertFalse(unwrapped.toLowerCase(Locale.ROOT).contains("food-safe"));
    sheet.lines().forEach(l -> assertTrue(l.length() <= 100, "a long line: " + l));
  }

  @Test
  void noMaterialsSheetPromisesFoodSafety() {
    for (var m : org.castwright.material.Materials.all()) {
      String words = (m.notes() + " " + m.cautions()).toLowerCase(Locale.ROOT);
      assertFalse(words.contains("food safe") || words.contains("food-safe"), m.id());
    }
  }

  // ---- same bytes ----

  @Test
  void threadsDoNotChangeAByte() throws IOException {
    Path other = temp.resolve("one thread");
    job(1, DRAWS, Progress.NONE).run(model, other);
    assertSameFiles(files, filesOf(other), "threads");
  }

  @Test
  void aJobFileRunsAgainToTheSameBytesAndReplacesTheOldFolderWhole() throws IOException {
    JobFile.Job again = JobFile.read(first.resolve("job.json"));
    assertEquals(model.toAbsolutePath().normalize(), Path.of(again.model()));
    Path old = room("old");
    Files.write(old.resolve("report.json"), files.get("report.json"));
    Files.createDirectory(old.resolve("pieces"));
    Files.writeString(old.resolve("pieces/piece-9.stl"), "of an earlier mold");
    new MoldJob(again.options(), kernel, DRAWS, Progress.NONE).run(Path.of(again.model()), old);
    assertSameFiles(files, filesOf(old), "nothing");
    assertEquals(new TreeSet<>(PROMISED), new TreeSet<>(filesOf(old).keySet()));
    nothingIsLeftBesideTheFolder();
  }

  private static void assertSameFiles(Map<String, byte[]> a, Map<String, byte[]> b, String besides)
      throws IOException {
    assertEquals(a.keySet(), b.keySet());
    for (String name : a.keySet()) {
      if (name.equals("report.json") || name.equals("job.json")) {
        assertEquals(timeless(a.get(name), besides), timeless(b.get(name), besides), name);
      } else {
        assertArrayEquals(a.get(name), b.get(name), name);
      }
    }
  }

  /** The JSON without the seconds, and without the option {@code besides} of the mold. */
  private static String timeless(byte[] json, String besides) throws IOException {
    ObjectNode tree = (ObjectNode) new ObjectMapper().readTree(json);
    tree.remove("timings_s");
    if (tree.at("/options/mold") instanceof ObjectNode mold) {
      mold.remove(besides);
    }
    return tree.toPrettyString();
  }

  // ---- whole or not at all ----

  @Test
  void aForeignFolderIsRefusedAndLeftAlone() throws IOException {
    Path room = room("foreign room");
    Path foreign = Files.createDirectory(room.resolve("thesis"));
    Files.writeString(foreign.resolve("chapter.txt"), "all of it");
    Files.writeString(foreign.resolve("report.json"), "{\"by\": \"somebody else\"}");
    MeshException e =
        assertThrows(MeshException.class, () -> job(2, DRAWS, Progress.NONE).run(model, foreign));
    assertTrue(e.getMessage().contains("holds other files"), e.getMessage());
    assertEquals(Set.of("chapter.txt", "report.json"), namesIn(foreign));
    assertEquals("all of it", Files.readString(foreign.resolve("chapter.txt")));
    assertEquals(Set.of("thesis"), namesIn(room));
  }

  @Test
  void aFileInTheWayIsRefusedAndLeftAlone() throws IOException {
    Path room = room("file room");
    Path file = Files.writeString(room.resolve("mold"), "a file");
    assertThrows(MeshException.class, () -> job(2, DRAWS, Progress.NONE).run(model, file));
    assertEquals("a file", Files.readString(file));
    assertEquals(Set.of("mold"), namesIn(room));
  }

  @Test
  void anArtistThatFailsLeavesNothing() throws IOException {
    Path room = room("artist room");
    Artist breaks =
        (folder, mold, progress) -> {
          Files.write(folder.resolve("half.png"), PICTURE);
          throw new IOException("no more ink");
        };
    IOException e =
        assertThrows(
            IOException.class, () -> quick(breaks, Progress.NONE).run(model, room.resolve("mold")));
    assertEquals("no more ink", e.getMessage());
    assertEquals(Set.of(), namesIn(room));
  }

  @ParameterizedTest
  @ValueSource(strings = {"read", "parting", "write", "proof"})
  void stoppingLeavesNothingAndKeepsAnOldFolder(String stage) throws IOException {
    Path room = room("stopped at " + stage);
    Path old = Files.createDirectory(room.resolve("mold"));
    Files.write(old.resolve("report.json"), files.get("report.json"));
    Progress stops =
        (name, share) -> {
          if (name.equals(stage)) {
            throw new Progress.CancelledException();
          }
        };
    SlowArtist artist = new SlowArtist();
    assertThrows(Progress.CancelledException.class, () -> quick(artist, stops).run(model, old));
    assertFalse(artist.busy, "somebody draws on after the job has come back");
    assertEquals(Set.of("mold"), namesIn(room));
    assertEquals(Set.of("report.json"), namesIn(old));
  }

  /** Still busy when the proof stops. */
  private static final class SlowArtist implements Artist {

    private volatile boolean busy;

    @Override
    public void draw(Path folder, Mold mold, Progress progress) throws IOException {
      busy = true;
      for (int i = 0; i < 10; i++) {
        Files.createDirectories(folder);
        Files.write(folder.resolve(i + ".png"), PICTURE);
        try {
          Thread.sleep(50);
        } catch (InterruptedException e) {
          throw new IOException(e);
        }
      }
      busy = false;
    }
  }
}
