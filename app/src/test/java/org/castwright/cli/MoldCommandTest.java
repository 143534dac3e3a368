package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import javax.imageio.ImageIO;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.MeshReader;
import org.castwright.meshio.StlWriter;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;

/** The main job from the command line; the folder of the first run serves the tests after it. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class MoldCommandTest {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private Path dir;
  private Path mold;
  private Cli first;

  @BeforeAll
  void makeOne(@TempDir Path temp) throws IOException {
    dir = temp;
    mold = dir.resolve("egg mold");
    String egg = Cli.egg(dir).toString();
    first = Cli.run("mold", egg, "-o", mold.toString(), "--json", "--material", "beeswax");
  }

  @Test
  @Order(1)
  void everyLineOfJsonParsesAndTheLastGivesTheVerdict() throws IOException {
    assertEquals(0, first.code(), first.toString());
    assertEquals("", first.err());
    List<String> lines = first.out().lines().toList();
    assertTrue(lines.size() > 5);
    for (String line : lines.subList(0, lines.size() - 1)) {
      JsonNode n = MAPPER.readTree(line);
      assertTrue(n.get("stage").isTextual(), line);
      double share = n.get("share").asDouble();
      assertTrue(share >= 0 && share <= 1, line);
    }
    JsonNode last = MAPPER.readTree(lines.get(lines.size() - 1));
    assertTrue(last.get("proved").asBoolean());
    assertEquals(mold.toString(), last.get("folder").asText());
  }

  @Test
  @Order(2)
  void theFolderHasSheetPiecesAndPictures() throws IOException {
    assertEquals(Set.of("egg mold", "egg.stl"), Cli.namesIn(dir));
    assertTrue(Files.readString(mold.resolve("sheet.txt")).contains("Beeswax"));
    assertEquals(Set.of("piece-1.stl", "piece-2.stl"), Cli.namesIn(mold.resolve("pieces")));
    Set<String> pictures = Cli.namesIn(mold.resolve("pictures"));
    assertTrue(pictures.containsAll(Set.of("closed.png", "opened.png", "piece-1.png", "fill.png")));
    assertTrue(Files.readString(mold.resolve("pour.svg")).contains("Level against volume"));
    for (String p : pictures) {
      assertNotNull(ImageIO.read(mold.resolve("pictures").resolve(p).toFile()), p);
    }
  }

  /** glTF 2.0, chapter 4: the JSON chunk follows a header of 12 bytes and one of 8. */
  @Test
  @Order(2)
  void theFileForLookingNamesPiecesAndCasting() throws IOException {
    ByteBuffer glb =
        ByteBuffer.wrap(Files.readAllBytes(mold.resolve("mold.glb")))
            .order(ByteOrder.LITTLE_ENDIAN);
    JsonNode json = MAPPER.readTree(glb.array(), 20, glb.getInt(12));
    assertEquals("2.0", json.at("/asset/version").asText());
    List<String> names = new ArrayList<>();
    json.get("nodes").forEach(n -> names.add(n.get("name").asText()));
    assertEquals(List.of("mold", "piece-1", "piece-2", "casting"), names);
    TriMesh piece = MeshReader.read(mold.resolve("pieces/piece-1.stl")).mesh();
    assertEquals(3 * piece.triangleCount(), json.at("/accessors/1/count").asInt());
    assertEquals(piece.bounds().max().y(), json.at("/accessors/0/max/1").asDouble(), 1e-6);
  }

  @Test
  @Order(3)
  void theJobRunsAgainInSilenceToTheSameBytes() throws IOException {
    Path again = dir.resolve("again");
    String job = mold.resolve("job.json").toString();
    Cli r = Cli.run("mold", "--job", job, "-o", again.toString(), "--quiet");
    assertEquals(new Cli(0, "", ""), r);
    for (String file : List.of("sheet.txt", "job.json", "mold.3mf", "pieces/piece-1.stl")) {
      assertArrayEquals(
          Files.readAllBytes(mold.resolve(file)), Files.readAllBytes(again.resolve(file)), file);
    }
    for (String picture : Cli.namesIn(mold.resolve("pictures"))) {
      assertArrayEquals(
          Files.readAllBytes(mold.resolve("pictures").resolve(picture)),
          Files.readAllBytes(again.resolve("pictures").resolve(picture)),
          picture);
    }
  }

  @Test
  @Order(4)
  void provesAgainFromTheFiles() throws IOException {
    Cli r = Cli.run("prove", mold.toString());
    assertEquals(0, r.code(), r.toString());
    assertTrue(r.out().contains("  ok    ") && r.out().strip().endsWith("proved"), r.out());
    assertTrue(!r.out().contains("NOT") && !r.out().contains("FAILED"), r.out());
  }

  @Test
  @Order(4)
  void poursAgainForItsOwnAndOtherMaterials() throws IOException {
    Cli own = Cli.run("pour", mold.toString(), "--quiet");
    assertEquals(0, own.code(), own.toString());
    JsonNode report = MAPPER.readTree(mold.resolve("report.json").toFile()).get("pouring");
    String[] last = Cli.run("pour", mold.toString(), "--json").out().split("\n", -1);
    assertEquals(report, MAPPER.readTree(last[last.length - 2]));
    // beeswax shrinks 3.3 %, plaster grows: the cavity is too large for it
    Cli plaster = Cli.run("pour", mold.toString(), "-m", "plaster-pottery");
    assertEquals(3, plaster.code(), plaster.toString());
    assertTrue(plaster.out().contains("does NOT suit plaster-pottery"), plaster.out());
    assertTrue(plaster.out().contains("scaled for another shrink"), plaster.out());
    Cli down = Cli.run("pour", mold.toString(), "--up", "0,-1,0");
    assertEquals(3, down.code(), down.toString());
    assertTrue(down.out().contains("Air stays"), down.out());
    assertTrue(Cli.run("pour", mold.toString(), "-m", "marble").refused().contains("known are"));
    assertTrue(Cli.run("pour", mold.toString(), "--up", "0,0,0").refused().contains("direction"));
    assertTrue(Cli.run("pour", mold.toString(), "--castings", "0").refused().contains("casting"));
    Cli cost = Cli.run("pour", mold.toString(), "--castings", "4", "--cast-price", "12");
    assertTrue(cost.out().contains("without a price: printed plastic"), cost.out());
  }

  @Test
  @Order(5)
  void aModelThatChangedIsNotTakenForTheJobs() throws IOException {
    Path egg = dir.resolve("egg.stl");
    byte[] was = Files.readAllBytes(egg);
    byte[] other = was.clone();
    other[0] ^= 1;
    Files.write(egg, other);
    String job = mold.resolve("job.json").toString();
    String out = dir.resolve("none").toString();
    assertTrue(Cli.run("mold", "--job", job, "-o", out).refused().contains("has changed"));
    Files.write(egg, was);
  }

  @Test
  @Order(6)
  void aFailedProofKeepsTheFilesAndGivesCodeFour() throws IOException {
    Path out = dir.resolve("too large");
    String egg = dir.resolve("egg.stl").toString();
    Cli r = Cli.run("mold", egg, "-o", out.toString(), "--bed", "10x10x10", "--pull", "0,0,1");
    assertEquals(4, r.code(), r.toString());
    assertTrue(r.out().contains("NOT proved") && r.out().contains("FAILED "), r.out());
    assertTrue(r.complaints().isEmpty(), r.err());
    assertTrue(Files.size(out.resolve("print/piece-2.stl")) > 84);
    String sheet = Files.readString(out.resolve("sheet.txt"));
    assertTrue(sheet.contains("NOT PROVED") && sheet.contains("FAILED "), sheet);
  }

  @Test
  @Order(7)
  void tamperingShows() throws IOException {
    Path piece = mold.resolve("pieces/piece-2.stl");
    TriMesh was = MeshReader.read(piece).mesh();
    StlWriter.write(piece, was.translated(new Vec3(0, 0, 0.4)), "moved");
    Cli r = Cli.run("prove", mold.toString());
    assertEquals(4, r.code(), r.toString());
    assertTrue(r.out().contains("FAILED  ") && r.out().contains("NOT proved"), r.out());
    Cli j = Cli.run("prove", "--json", mold.toString());
    assertEquals(4, j.code());
    List<String> lines = j.out().lines().toList();
    JsonNode verdict = MAPPER.readTree(lines.get(lines.size() - 1));
    assertTrue(!verdict.get("passed").asBoolean() && verdict.get("checks").size() > 10);
    for (String line : lines) {
      MAPPER.readTree(line);
    }
    assertEquals(new Cli(4, "", ""), Cli.run("prove", "--quiet", mold.toString()));
  }
}
