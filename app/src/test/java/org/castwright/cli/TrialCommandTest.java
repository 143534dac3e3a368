package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** From a test cast to a new version, and from coupons to the next job. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class TrialCommandTest {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private Path dir;
  private Path egg;
  private Path first;

  @BeforeAll
  void mold(@TempDir Path temp) throws IOException {
    dir = temp;
    egg = Cli.egg(dir);
    first = dir.resolve("egg");
    Cli r = Cli.run("mold", egg.toString(), "-m", "beeswax", "-o", first.toString(), "--quiet");
    assertEquals(0, r.code(), r.toString());
  }

  private static JsonNode json(Path file) throws IOException {
    return MAPPER.readTree(Files.readString(file));
  }

  @Test
  void aTrialLeadsToAVersionThatAnswersToIt() throws IOException {
    Path second = dir.resolve("egg-2");
    Path own = dir.resolve("own.json");
    JsonNode report = json(first.resolve("report.json"));
    double low = report.at("/casting/box/min/1").asDouble();
    String place = "0," + (low + 20) + ",0";
    Cli r =
        Cli.run(
            "trial",
            first.toString(),
            "--air",
            place,
            "--keys-tight",
            "--length",
            "48=47.6",
            "--length",
            "34=33.7",
            "--printer",
            "left",
            "--calibration",
            own.toString(),
            "--date",
            "2026-03-04",
            "-o",
            second.toString());
    assertEquals(0, r.code(), r.toString());
    assertTrue(r.out().contains("trapped air"), r.out());
    JsonNode mold = json(second.resolve("job.json")).at("/options/mold");
    assertEquals(0.35, mold.at("/clearance_mm").asDouble(), 1e-9);
    double shrink = mold.at("/shrink_percent/x").asDouble();
    double before = report.at("/material/shrink_percent/0").asDouble();
    double expected =
        100 * (1 - (1 - before / 100) * (48 * 47.6 + 34 * 33.7) / (48 * 48 + 34 * 34));
    assertEquals(expected, shrink, 0.002);
    // air of an egg rises to its top, where gate and vent are: a wider vent
    double vent = report.at("/channels/1/bore_mm").asDouble();
    assertEquals(1.19 * vent, mold.at("/openings/vent_mm").asDouble(), 0.001);
    assertTrue(r.out().contains("Air there rises to"), r.out());
    JsonNode log = json(second.resolve("trials.json")).at("/log");
    assertEquals("egg", log.at("/made_from").asText());
    assertEquals("egg-2", log.at("/trials/0/next").asText());
    assertEquals("2026-03-04", log.at("/trials/0/date").asText());
    assertEquals(3, log.at("/trials/0/applied").size());
    assertEquals(3, json(own).at("/calibration/readings").size());
    Cli history = Cli.run("trial", second.toString());
    assertTrue(history.out().contains("applied in egg-2"), history.out());
    Cli compared = Cli.run("compare", first.toString(), second.toString());
    assertEquals(0, compared.code(), compared.toString());
    assertTrue(compared.out().contains("* mold clearance mm"), compared.out());
    assertTrue(compared.out().contains("* casting, cm³"), compared.out());
    assertFalse(compared.out().contains("* model file"), compared.out());
  }

  @Test
  void axesAndHeatAreAnswered(@TempDir Path temp) throws IOException {
    Path copy = temp.resolve("egg");
    copy(first, copy);
    Path uneven = temp.resolve("uneven");
    Cli r =
        Cli.run(
            "trial",
            copy.toString(),
            "--soft",
            "--length",
            "x:34=33.66",
            "--length",
            "x:17=16.83",
            "--length",
            "y:48=48",
            "--length",
            "y:24=24",
            "--quiet",
            "-o",
            uneven.toString());
    assertEquals(0, r.code(), r.toString());
    double before = json(copy.resolve("report.json")).at("/material/shrink_percent/0").asDouble();
    JsonNode shrink = json(uneven.resolve("job.json")).at("/options/mold/shrink_percent");
    assertEquals(100 - (100 - before) * 0.99, shrink.at("/x").asDouble(), 0.002);
    assertEquals(before, shrink.at("/y").asDouble(), 0.002);
    JsonNode lengths = json(uneven.resolve("trials.json")).at("/log/trials/0/notes/0/lengths");
    assertEquals("x", lengths.at("/0/axis").asText());
    // the log of an earlier version has no axes, and its report neither freezing nor channels
    Path log = copy.resolve("trials.json");
    Files.writeString(log, Files.readString(log).replaceAll(",\\s*\"axis\" : \"[xy]\"", ""));
    assertFalse(Files.readString(log).contains("axis"));
    Path report = copy.resolve("report.json");
    ObjectNode old = (ObjectNode) json(report);
    ((ObjectNode) old.at("/pouring")).remove("freezing");
    old.at("/pouring/heat/pools").forEach(p -> ((ObjectNode) p).remove("in_channels"));
    Files.writeString(report, MAPPER.writeValueAsString(old));
    Cli soft = Cli.run("trial", copy.toString(), "--soft");
    assertEquals(0, soft.code(), soft.toString());
    assertTrue(soft.out().contains("By the report the mold's inner wall comes to"), soft.out());
    assertTrue(
        Cli.run("trial", copy.toString(), "--length", "w:48=47").refused().contains("x, y or z"));
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> all = Files.walk(from)) {
      for (Path p : all.toList()) {
        Files.copy(p, to.resolve(from.relativize(p).toString()));
      }
    }
  }

  @Test
  void notesThatSayNothingUsableAreRefused() {
    assertTrue(Cli.run("trial", first.toString(), "--length", "48").refused().contains("="));
    assertTrue(Cli.run("trial", first.toString(), "--length", "48=8").refused().contains("slip"));
    assertTrue(Cli.run("trial", dir.toString(), "--soft").refused().contains("report.json"));
    String none = Cli.run("trial", first.toString(), "-o", dir.resolve("x").toString()).refused();
    assertTrue(none.contains("needs notes"), none);
    assertTrue(Cli.run("compare", first.toString(), dir.toString()).refused().contains("report"));
  }

  @Test
  void couponsAreMadeAndWhatIsReadIsUsedForTheNextJob() throws IOException {
    Path coupons = dir.resolve("coupons");
    Cli made = Cli.run("coupon", "-o", coupons.toString());
    assertEquals(0, made.code(), made.toString());
    assertEquals(
        java.util.Set.of(
            "key.stl", "sockets.stl", "bar.stl", "plate.stl", "coupon.json", "coupon.txt"),
        Cli.namesIn(coupons));
    byte[] before = Files.readAllBytes(coupons.resolve("sockets.stl"));
    assertEquals(0, Cli.run("coupon", "-o", coupons.toString()).code());
    org.junit.jupiter.api.Assertions.assertArrayEquals(
        before, Files.readAllBytes(coupons.resolve("sockets.stl")));
    String file = dir.resolve("mine.json").toString();
    Cli read =
        Cli.run(
            "calibrate",
            file,
            "--printer",
            "right",
            "-m",
            "beeswax",
            "--fit",
            "0.2=tight",
            "--fit",
            "0.25=good",
            "--cast",
            "50=48.5",
            "--cast",
            "100=97",
            "--vent",
            "1.2",
            "--date",
            "2026-01-01");
    assertEquals(0, read.code(), read.toString());
    assertTrue(read.out().contains("0.25 mm") && read.out().contains("3.00 % (± 0.00"), read.out());
    Path out = dir.resolve("egg-own");
    Cli r =
        Cli.run(
            "mold",
            egg.toString(),
            "-m",
            "beeswax",
            "--calibration",
            file,
            "--printer",
            "right",
            "-o",
            out.toString(),
            "--quiet");
    assertEquals(0, r.code(), r.toString());
    JsonNode mold = json(out.resolve("job.json")).at("/options/mold");
    assertEquals(0.25, mold.at("/clearance_mm").asDouble());
    assertEquals(3, mold.at("/shrink_percent/x").asDouble(), 1e-9);
    assertEquals(1.2, mold.at("/openings/vent_mm").asDouble());
    assertEquals(1 / 0.97, json(out.resolve("report.json")).at("/scale/0").asDouble(), 1e-5);
    String gone = Cli.run("mold", egg.toString(), "--calibration", "no.json", "-o", "x").refused();
    assertTrue(gone.contains("no.json"), gone);
    String bad = Cli.run("calibrate", file, "--printer", "right", "--cast", "50=48").refused();
    assertTrue(bad.contains("material"), bad);
  }
}
