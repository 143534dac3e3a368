package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Set;
import org.castwright.mesh.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code look --pieces}: the fewest pulls that open a model. */
class LookPiecesTest {

  @TempDir private Path dir;

  private Path waist() throws IOException {
    return Cli.write(dir, "waist.stl", Shapes.hourglass(20, 12, 40, 32));
  }

  @Test
  void saysTheFewestAndHowSureThatIs() throws IOException {
    Cli r = Cli.run("look", "--pieces", "auto", waist().toString());
    assertEquals(0, r.code(), r.toString());
    assertTrue(r.out().contains("opens in 2 pulls, 2 piece(s) to print"), r.out());
    assertTrue(r.out().contains("2 is the least over the directions tried (proven)"), r.out());
    assertTrue(r.out().contains("caught with so many pulls"), r.out());
    assertTrue(r.out().contains("holds when all pulls are turned"), r.out());
    assertTrue(r.out().contains("pull 2 along"), r.out());
    assertEquals(Set.of("waist.stl"), Cli.namesIn(dir));
  }

  @Test
  void aGivenPullIsKeptAndTooFewAreSaidToBe() throws IOException {
    // up along the axis the waist's round wall is caught: two more pulls, across it, free it
    Cli three = Cli.run("look", "--pieces", "auto", "--pull", "0,0,1", waist().toString());
    assertEquals(0, three.code(), three.toString());
    assertTrue(three.out().contains("opens in 3 pulls"), three.out());
    assertTrue(three.out().contains("along 0.000, 0.000, 1.000 (given)"), three.out());
    Cli two = Cli.run("look", "--pieces", "2", "--pull", "0,0,1", waist().toString());
    assertEquals(3, two.code(), two.toString());
    assertTrue(two.out().contains("does NOT open in 2 pulls"), two.out());
    assertTrue(two.out().contains("3 is the least"), two.out());
    assertTrue(two.out().contains("caught near ("), two.out());
  }

  @Test
  void aPullMayBeThatOfAPiece() throws IOException {
    String model = waist().toString();
    Cli third = Cli.run("look", "--pieces", "auto", "--pull", "3=0,0,1", model);
    assertEquals(0, third.code(), third.toString());
    assertTrue(third.out().contains("pull 3 along 0.000, 0.000, 1.000 (given)"), third.out());
    Cli beyond = Cli.run("look", "--pieces", "auto", "--pull", "7=0,0,1", model);
    assertEquals(2, beyond.code());
    assertTrue(beyond.err().contains("given for piece 7, but 3 pulls"), beyond.err());
    Cli twice =
        Cli.run("look", "--pieces", "auto", "--pull", "1=0,0,1", "--pull", "1=1,0,0", model);
    assertTrue(twice.err().contains("the pull of piece 1 is given twice"), twice.err());
    Cli both = Cli.run("look", "--pieces", "auto", "--pull", "0,0,1", "--pull", "1=1,0,0", model);
    assertTrue(both.err().contains("--pull is given more than once"), both.err());
    Cli none = Cli.run("look", "--pull", "9=0,0,1", model);
    assertEquals(2, none.code());
    assertTrue(none.err().contains("numbers from 1 to 8"), none.err());
    Cli.run("look", "--pieces", "auto", "--pull", "2=0,0,0", model).refused();
    Cli alone = Cli.run("look", "--pull", "3=0,0,1", model);
    assertTrue(alone.err().contains("at most 2 pieces"), alone.err());
  }

  @Test
  void asJson() throws IOException {
    Cli r = Cli.run("look", "--json", "--pieces", "auto", "--crease", "0.3", waist().toString());
    assertEquals(0, r.code(), r.toString());
    JsonNode j = new ObjectMapper().readTree(r.out()).at("/cover");
    assertTrue(j.at("/opens").asBoolean());
    assertEquals(2, j.at("/pulls").size());
    assertEquals(2, j.at("/certificate/lower_bound").asInt());
    assertTrue(j.at("/certificate/proven").asBoolean());
    assertEquals(0.3, j.at("/tolerance/width_mm").asDouble());
    assertEquals(1, j.at("/curve/0/pulls").asInt());
    assertTrue(j.at("/curve/0/volume_mm3").asDouble() > j.at("/curve/1/volume_mm3").asDouble());
    assertEquals(4, j.at("/caught_turned").size());
    JsonNode plain =
        new ObjectMapper().readTree(Cli.run("look", "--json", waist().toString()).out());
    assertTrue(plain.at("/cover").isMissingNode());
  }

  @Test
  void whatIsNoNumberOfPiecesIsRefused() throws IOException {
    Cli nine = Cli.run("look", "--pieces", "9", waist().toString());
    assertEquals(2, nine.code());
    assertTrue(nine.err().contains("pieces are auto or 1 to 8, not '9'"), nine.err());
    Cli.run("look", "--pieces", "auto", "--crease", "0", waist().toString()).refused();
  }
}
