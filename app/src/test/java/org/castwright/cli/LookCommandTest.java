package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import javax.imageio.ImageIO;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LookCommandTest {

  @TempDir private Path dir;

  private static JsonNode json(Cli r) throws IOException {
    return new ObjectMapper().readTree(r.out());
  }

  @Test
  void saysHowAModelOpensAndWritesNothing() throws IOException {
    Cli r = Cli.run("look", Cli.egg(dir).toString());
    assertEquals(0, r.code(), r.toString());
    assertTrue(r.out().contains("opens in two rigid pieces along"), r.out());
    assertTrue(r.out().contains("egg.stl"), r.out());
    assertEquals(Set.of("egg.stl"), Cli.namesIn(dir));
  }

  @Test
  void asJson() throws IOException {
    Cli r = Cli.run("look", "--json", Cli.egg(dir).toString());
    assertEquals(0, r.code());
    assertEquals("", r.err());
    JsonNode j = json(r);
    assertTrue(j.at("/survey/free").asBoolean());
    // closed form of an ellipsoid, less what 24 chords round and 12 along take from it
    double ellipsoid = 4.0 / 3 * Math.PI * 24 * 17 * 11;
    assertEquals(ellipsoid, j.at("/health/volume_mm3").asDouble(), 0.04 * ellipsoid);
    assertEquals(0, j.at("/health/genus").asInt());
  }

  @Test
  void aModelThatIsCaughtGivesCodeThreeAndThePlace() throws IOException {
    Path waist = Cli.write(dir, "waist.stl", Shapes.hourglass(20, 12, 40, 32));
    Path picture = dir.resolve("caught.png");
    Cli r = Cli.run("look", "--pull", "0,0,1", "--picture", picture.toString(), waist.toString());
    assertEquals(3, r.code(), r.toString());
    assertTrue(r.out().contains("does NOT open"), r.out());
    assertTrue(r.out().contains("caught near ("), r.out());
    assertTrue(r.out().contains("what would help: "), r.out());
    assertNotNull(ImageIO.read(picture.toFile()));
    Cli j = Cli.run("look", "--json", "--pull", "0,0,1", waist.toString());
    assertEquals(3, j.code());
    // between two cones and the cylinder round them: π h (R² - (R² + R r + r²) / 3)
    double trapped = Math.PI * 40 * (400 - (400 + 240 + 144) / 3.0);
    assertEquals(trapped, json(j).at("/survey/trapped_volume_mm3").asDouble(), 0.02 * trapped);
    assertEquals(0, Cli.run("look", "--quiet", "--pull", "1,0,0", waist.toString()).code());
  }

  @Test
  void unlikelyUnitsAreNoted() throws IOException {
    Path egg = Cli.egg(dir);
    Cli large = Cli.run("look", "--units", "m", "--pull", "0,0,1", egg.toString());
    assertTrue(large.out().contains("are m the right units"), large.out());
    Path tiny =
        Cli.write(
            dir, "tiny.stl", Shapes.ellipsoid(24, 17, 11, 24).scaled(new Vec3(.01, .01, .01)));
    Cli small = Cli.run("look", "--pull", "0,0,1", tiny.toString());
    assertTrue(small.out().contains("are mm the right units"), small.out());
    Cli inches = Cli.run("look", "--units", "in", "--json", "--pull", "0,0,1", tiny.toString());
    // an inch is 25.4 mm
    assertEquals(0.48 * 25.4, json(inches).at("/input/size_mm/0").asDouble(), 1e-5);
    assertEquals(0, json(inches).at("/warnings").size());
  }

  @Test
  void sizeScaleAndUp() throws IOException {
    String egg = Cli.egg(dir).toString();
    double[] plain = size(Cli.run("look", "--json", "--pull", "0,0,1", egg));
    assertEquals(48, plain[0], 1e-5);
    assertEquals(22, plain[2], 1e-5);
    double[] sized = size(Cli.run("look", "--json", "--pull", "0,0,1", "--size", "96", egg));
    assertEquals(96, sized[0], 1e-5);
    assertEquals(44, sized[2], 1e-4);
    double[] scaled = size(Cli.run("look", "--json", "--pull", "0,0,1", "--scale", "0.5", egg));
    assertEquals(24, scaled[0], 1e-5);
    double[] onEnd = size(Cli.run("look", "--json", "--pull", "0,0,1", "--up", "-x", egg));
    assertEquals(48, onEnd[2], 1e-5);
    double[] onSide = size(Cli.run("look", "--json", "--pull", "0,0,1", "--up", "y", egg));
    assertEquals(plain[1], onSide[2], 1e-5);
  }

  private static double[] size(Cli r) throws IOException {
    JsonNode n = json(r).at("/input/size_mm");
    return new double[] {n.get(0).asDouble(), n.get(1).asDouble(), n.get(2).asDouble()};
  }

  @Test
  void aHealedModelSaysWhatWasHealed() throws IOException {
    byte[] bytes = Files.readAllBytes(Cli.egg(dir));
    // the file without its last triangle: 50 bytes shorter, one less in the count
    byte[] less = java.util.Arrays.copyOf(bytes, bytes.length - 50);
    java.nio.ByteBuffer b = java.nio.ByteBuffer.wrap(less).order(java.nio.ByteOrder.LITTLE_ENDIAN);
    b.putInt(80, b.getInt(80) - 1);
    Path open = Files.write(dir.resolve("open.stl"), less);
    Cli r = Cli.run("look", "--pull", "0,0,1", open.toString());
    assertEquals(0, r.code(), r.toString());
    assertTrue(r.out().contains("healed "), r.out());
    Cli.run("look", "--heal", "none", open.toString()).refused();
  }
}
