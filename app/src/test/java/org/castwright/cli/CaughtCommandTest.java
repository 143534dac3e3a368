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
import org.castwright.mesh.Shapes;
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
