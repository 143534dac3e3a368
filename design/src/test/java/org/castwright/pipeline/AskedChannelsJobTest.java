package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.meshio.StlWriter;
import org.castwright.plan.Channel;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.MoldPlan;
import org.castwright.plan.Openings;
import org.castwright.plan.PiecePull;
import org.castwright.progress.Progress;
import org.castwright.proof.ProofCheck;
import org.castwright.side.Drilled;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** Whole jobs of three pieces, of the ball drilled three ways, with channels asked for. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class AskedChannelsJobTest {

  private SolidKernel kernel;

  @TempDir private Path temp;

  @BeforeAll
  void open() {
    kernel = new ManifoldKernel();
  }

  @AfterAll
  void close() {
    kernel.close();
  }

  /** Proves the mold; where sheets meet at the poles the ball gives wedges no limit. */
  private MoldPlan proved(String name, Openings openings) throws IOException {
    Path file = temp.resolve(name + ".stl");
    StlWriter.write(file, Drilled.threeWayBall(kernel), name);
    List<Vec3> ways = Drilled.threeWays();
    MoldOptions asked =
        MoldOptions.DEFAULT
            .with()
            .pieces(8)
            .pulls(List.of(new PiecePull(2, ways.get(1)), new PiecePull(3, ways.get(2))))
            .openings(openings)
            .build();
    JobOptions options = new JobOptions(ModelOptions.DEFAULT, asked, JobOptions.DEFAULT.bed(), 0);
    MoldJob.Result r =
        new MoldJob(options, kernel, Artist.NONE, Progress.NONE).run(file, temp.resolve(name));
    assertEquals(List.of(), r.proof().failures().stream().map(ProofCheck::words).toList());
    MoldPlan plan = r.mold().plan();
    assertEquals(3, plan.pieces().size());
    assertTrue(plan.seam().divided());
    return plan;
  }

  /** How far a channel joins from a place of the model, mm. */
  private static double off(MoldPlan plan, Channel c, Vec3 asked) {
    return c.inner().minus(plan.frame().pointToMold(asked)).length();
  }

  /** Two pieces part channels that narrow upward: the gate between their pulls, the vent aside. */
  @Test
  void gateAndVentStandNearWhereTheyAreAskedFor() throws IOException {
    Vec3 between = new Vec3(Math.cos(1.2), Math.sin(1.2), 0);
    Vec3 gate = between.times(17);
    Vec3 vent = between.times(0.8).plus(new Vec3(0, 0, 0.6)).times(17);
    MoldPlan plan = proved("both", Openings.BY_RULE.withGateAt(gate).withVentsAt(List.of(vent)));
    List<Channel> all = plan.pour().channels();
    assertEquals(Channel.Kind.GATE, all.get(0).kind());
    assertTrue(off(plan, all.get(0), gate) < 3, "gate off by " + off(plan, all.get(0), gate));
    assertTrue(
        all.stream().anyMatch(c -> c.kind() == Channel.Kind.VENT && off(plan, c, vent) < 5),
        plan.warnings().toString());
  }

  /** On the floor of a hole there is no room for any gate, and its rim is too far away. */
  @Test
  void whereItCannotBeTheGateStandsAsIfNotAskedFor() throws IOException {
    Vec3 floor = Drilled.threeWays().get(0).times(10);
    MoldPlan plan = proved("floor", Openings.BY_RULE.withGateAt(floor));
    String told =
        plan.warnings().stream().filter(w -> w.contains("The gate asked for")).findFirst().get();
    assertTrue(told.contains("cannot be made: no way out from near there"), told);
    assertTrue(Files.readString(temp.resolve("floor").resolve("sheet.txt")).contains("cannot be"));
    MoldPlan usual = proved("usual", Openings.BY_RULE);
    assertEquals(usual.frame(), plan.frame());
    assertEquals(usual.pour().channels(), plan.pour().channels());
  }
}
