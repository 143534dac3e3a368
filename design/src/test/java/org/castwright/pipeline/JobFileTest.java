package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.castwright.geom.LengthUnit;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.plan.BlockShape;
import org.castwright.plan.Closing;
import org.castwright.plan.GateEnd;
import org.castwright.plan.KeyShape;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.Openings;
import org.castwright.plan.PiecePull;
import org.castwright.plan.Pour;
import org.castwright.plan.PrintProcess;
import org.castwright.repair.HealMode;
import org.castwright.repair.RepairOptions;
import org.castwright.seams.Mark;
import org.castwright.seams.Region;
import org.castwright.seams.Wish;
import org.castwright.seams.Wishes;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobFileTest {

  /** No value is the default's, so that a lost one shows. */
  private static final JobOptions ALL_DIFFERENT =
      new JobOptions(
          new ModelOptions(
              LengthUnit.INCH,
              0,
              2.5,
              Up.MINUS_Y,
              RepairOptions.DEFAULT
                  .withMode(HealMode.REMESH)
                  .withFillVoids(true)
                  .withRemeshCell(0.7)),
          new MoldOptions(
              null,
              List.of(new PiecePull(5, new Vec3(0.1, 1.0 / 3, -2)), new PiecePull(2, Vec3.Y)),
              new Wishes(
                  List.of(
                      Wish.of(new Region.Box(new Vec3(-1, 0, -0.1), Vec3.X), Mark.NO_SEAM),
                      Wish.of(new Region.Ball(Vec3.Z, 1.0 / 3), Mark.HIDE),
                      Wish.of(new Region.Painted(7, 3, 4), Mark.SHOW),
                      Wish.piece(new Region.Painted(1), 2))),
              "concrete",
              new Vec3(1, 0.1, -0.5),
              7.5,
              BlockShape.CONTOUR,
              PrintProcess.RESIN,
              0.15,
              KeyShape.DOME,
              5,
              Closing.CLAMPS,
              Pour.PULL,
              0.08,
              5,
              2.5,
              0.12,
              0,
              true,
              true,
              new Openings(
                  new Vec3(1, 2, 3), List.of(new Vec3(0.1, 5, 6)), GateEnd.BOTTOM, 9, 1.25),
              3),
          new Vec3(300, 301, 302));

  @TempDir private Path temp;
  private Path model;
  private Path job;

  @BeforeEach
  void write() throws IOException {
    model = Files.writeString(temp.resolve("model.stl"), "any bytes");
    job = temp.resolve("job.json");
    Files.writeString(job, JobFile.write(model, ALL_DIFFERENT));
  }

  @Test
  void onePullComesBackExactly() throws IOException {
    Vec3 pull = new Vec3(0.1, 1.0 / 3, -2);
    MoldOptions one = MoldOptions.DEFAULT.with().pull(pull).build();
    JobOptions options = new JobOptions(ModelOptions.DEFAULT, one, JobOptions.DEFAULT.bed());
    Files.writeString(job, JobFile.write(model, options));
    assertEquals(options, JobFile.read(job).options());
  }

  @Test
  void everyOptionComesBackExactly() throws IOException {
    JobFile.Job read = JobFile.read(job);
    assertEquals(ALL_DIFFERENT, read.options());
    assertEquals(model.toString(), read.model());
    assertEquals(MoldJob.VERSION, read.castwright());
  }

  @Test
  void aJobOfAnEarlierVersionHasItsOpeningsByRule() throws IOException {
    String now = Files.readString(job);
    String then = now.replaceAll("(?s),\\s*\"openings\" : \\{.*?\\n      \\}", "");
    assertTrue(then.length() < now.length() && !then.contains("openings"), then);
    Files.writeString(job, then);
    MoldOptions read = JobFile.read(job).options().mold();
    assertEquals(Openings.BY_RULE, read.openings());
    assertEquals(3, read.threads());
  }

  @Test
  void aJobOfAnEarlierVersionHasItsGateAtTheTop() throws IOException {
    String now = Files.readString(job);
    String then = now.replaceAll("\\s*\"gate\" : \"BOTTOM\",", "");
    assertTrue(then.length() < now.length(), then);
    Files.writeString(job, then);
    Openings read = JobFile.read(job).options().mold().openings();
    assertEquals(GateEnd.TOP, read.gate());
    assertEquals(1.25, read.ventMm());
  }

  @Test
  void theHashIsThePlainSha256OfTheFile() throws IOException {
    Files.write(model, "abc".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    Files.writeString(job, JobFile.write(model, ALL_DIFFERENT));
    // FIPS 180-4, example for the one-block message "abc"
    assertEquals(
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        JobFile.read(job).modelSha256());
  }

  @Test
  void aChangedModelIsRefused() throws IOException {
    Files.writeString(model, " ", StandardOpenOption.APPEND);
    refused("has changed");
  }

  @Test
  void aModelThatIsGoneIsRefused() throws IOException {
    Files.delete(model);
    refused("is gone");
  }

  @Test
  void whatIsNoJobIsRefused() throws IOException {
    for (String text : new String[] {"", "solid cube", "[]", "{}", "null", "{\"model\": \"x\"}"}) {
      Files.writeString(job, text);
      refused("not a job file");
    }
  }

  @Test
  void anOptionThatDoesNotHoldIsRefused() throws IOException {
    String good = Files.readString(job);
    for (String[] change :
        new String[][] {
          {"\"CONTOUR\"", "\"pyramid\""},
          {"\"release_mm\" : 0.08", "\"release_mm\" : -1"},
          {"\"key_count\" : 5", "\"key_count\" : 1"},
          {"\"mold\"", "\"mould\""}
        }) {
      String bad = good.replace(change[0], change[1]);
      assertTrue(!bad.equals(good), change[0] + " is not in the file");
      Files.writeString(job, bad);
      refused("not a job file");
    }
  }

  private void refused(String because) {
    MeshException e = assertThrows(MeshException.class, () -> JobFile.read(job));
    assertTrue(e.getMessage().contains(because), e.getMessage());
  }
}
