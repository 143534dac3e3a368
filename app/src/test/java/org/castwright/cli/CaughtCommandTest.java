package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import javax.imageio.ImageIO;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Models that two rigid pieces cannot release. */
class CaughtCommandTest {

  @TempDir private Path dir;

  @Test
  void aKnotIsRefusedWithNumbersWaysOnAndAPicture() throws IOException {
    Path knot = Cli.write(dir, "knot.stl", Shapes.trefoil(9, 3, 72, 10));
    Path out = dir.resolve("knot mold");
    Cli r = Cli.run("mold", knot.toString(), "-o", out.toString());
    assertEquals(3, r.code(), r.toString());
    assertTrue(r.err().contains("mm³ of mold trapped in"), r.err());
    assertTrue(r.err().contains("caught near ("), r.err());
    assertTrue(r.err().contains("what would help: "), r.err());
    assertTrue(r.err().contains("more than two pieces"), r.err());
    assertTrue(r.err().contains("caught.png"), r.err());
    assertTrue(!r.err().contains("Exception"), r.err());

    assertEquals(Set.of("knot mold", "knot.stl"), Cli.namesIn(dir));
    assertEquals(Set.of("pictures", "refusal.json", "caught.glb"), Cli.namesIn(out));
    assertNotNull(ImageIO.read(out.resolve("pictures/caught.png").toFile()));
    JsonNode j = new ObjectMapper().readTree(Files.readString(out.resolve("refusal.json")));
    assertTrue(j.at("/survey/trapped_volume_mm3").asDouble() > 10);
    assertTrue(j.at("/survey/caught_width_mm").asDouble() > j.at("/survey/release_mm").asDouble());
    assertTrue(j.at("/survey/caught").size() >= 1);

    // a refusal may be replaced by the next try
    Cli again = Cli.run("mold", knot.toString(), "-o", out.toString(), "--quiet");
    assertEquals(3, again.code());
    assertEquals(1, again.complaints().size(), again.err());
  }

  /** A cube with a ball inside that is reached only round a corner, by a narrow way. */
  private Path retort() throws IOException {
    try (SolidKernel kernel = new ManifoldKernel()) {
      List<Solid> tools =
          List.of(
              kernel.solid("ball", Shapes.sphere(8, 32)),
              kernel.solid("neck", Primitives.box(new Vec3(0, -1.5, -1.5), new Vec3(15, 1.5, 1.5))),
              kernel.solid(
                  "mouth", Primitives.box(new Vec3(12, -1.5, -1.5), new Vec3(15, 30, 1.5))));
      Solid cube = kernel.solid("cube", Shapes.cube(40));
      return Cli.write(dir, "retort.stl", kernel.difference("retort", cube, tools).mesh());
    }
  }

  @Test
  void spaceThatNoDirectionFreesIsNamedAndDrawn() throws IOException {
    Path out = dir.resolve("retort mold");
    Cli r = Cli.run("mold", retort().toString(), "--pieces", "auto", "-o", out.toString());
    assertEquals(3, r.code(), r.toString());
    assertTrue(r.err().contains("no number of rigid pieces opens it"), r.err());
    assertTrue(r.err().contains("flexible skin in a rigid jacket"), r.err());
    assertTrue(!r.err().contains("more than two pieces"), r.err());
    assertTrue(r.err().contains("space.png"), r.err());
    JsonNode j = new ObjectMapper().readTree(Files.readString(out.resolve("refusal.json")));
    assertTrue(j.at("/never").asBoolean());
    JsonNode place = j.at("/cover/never_places/0");
    double ball = 4.0 / 3 * Math.PI * 512 * 1.006; // plaster shrinks a little
    assertEquals(ball, place.at("/volume_mm3").asDouble(), 0.15 * ball);
    for (int k = 0; k < 3; k++) {
      assertEquals(0, place.at("/center/" + k).asDouble(), 1, place.toString());
    }
    BufferedImage drawn = ImageIO.read(out.resolve("pictures/space.png").toFile());
    int marked = 0;
    for (int y = 0; y < drawn.getHeight(); y++) {
      for (int x = 0; x < drawn.getWidth(); x++) {
        int rgb = drawn.getRGB(x, y);
        marked += (rgb >> 16 & 255) > (rgb & 255) + 60 ? 1 : 0;
      }
    }
    assertTrue(marked > 2000, "the space shows through the cube: " + marked);
  }

  @Test
  void allowedToBeCaughtItIsBuiltAndSaidEverywhere() throws IOException {
    Path waist = Cli.write(dir, "waist.stl", Shapes.hourglass(16, 12, 20, 32));
    Path out = dir.resolve("waist mold");
    String[] ask = {"mold", waist.toString(), "-o", out.toString(), "--pull", "0,0,1"};
    assertEquals(3, Cli.run(ask).code());

    String[] allow = java.util.Arrays.copyOf(ask, ask.length + 1);
    allow[ask.length] = "--allow-caught";
    Cli r = Cli.run(allow);
    assertEquals(0, r.code(), r.toString());
    assertTrue(r.out().contains("caught"), r.out());
    JsonNode j = new ObjectMapper().readTree(Files.readString(out.resolve("report.json")));
    assertTrue(j.at("/limits/allow_caught").asBoolean());
    assertTrue(!j.at("/survey/free").asBoolean());
    assertTrue(j.at("/survey/trapped_volume_mm3").asDouble() > 100);
    assertTrue(j.at("/warnings").toString().contains("caught"));
    String sheet = Files.readString(out.resolve("sheet.txt"));
    assertTrue(sheet.contains("CAUGHT PLACES"), sheet);
  }
}
