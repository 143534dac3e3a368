package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import javax.xml.stream.XMLStreamException;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.pipeline.Report;
import org.castwright.plan.Closing;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.Pour;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/**
 * Euler's formula on the pieces as written: a closed surface with g handles has V - E + F = 2 - 2g,
 * and E = 3F/2 since every edge has two triangles. Each hole bored through a piece is one handle;
 * grooves, dents and bumps are none. Counted on the 3MF objects, from scratch.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class HandlesTest {

  private static final TriMesh EGG = Shapes.ellipsoid(40, 28, 18, 40);

  private Jobs jobs;

  @BeforeAll
  void open(@TempDir Path temp) {
    jobs = new Jobs(temp);
  }

  @AfterAll
  void close() {
    jobs.close();
  }

  private static int handles(ThreeMfRules.Item item) {
    item.holdRules();
    int v = item.mesh().vertexCount();
    int f = item.mesh().triangleCount();
    assertEquals(0, f % 2, "an odd number of triangles cannot close");
    int chi = v - 3 * f / 2 + f;
    assertEquals(0, chi % 2);
    return (2 - chi) / 2;
  }

  private List<Integer> handlesOf(Jobs.Done done) throws IOException, XMLStreamException {
    return ThreeMfRules.items(done.files().get("mold.3mf")).stream()
        .map(HandlesTest::handles)
        .toList();
  }

  /** Seam pour: gate and vents are grooves. Only the bolts bore through, every one both pieces. */
  @Test
  void bolts() throws IOException, XMLStreamException {
    MoldOptions.With bolted = MoldOptions.DEFAULT.with().closing(Closing.BOLTS);
    Jobs.Done done = jobs.run("egg", EGG, bolted);
    assertEquals(List.of(), done.failures());
    int bolts = bolts(done.result().report());
    assertTrue(bolts >= 3, bolts + " bolts");
    assertEquals(List.of(bolts, bolts, 0), handlesOf(done));
  }

  /** Poured along the pull: the gate and each vent bore through piece 1. */
  @Test
  void channelsAlongThePull() throws IOException, XMLStreamException {
    MoldOptions.With lying = MoldOptions.DEFAULT.with().closing(Closing.NONE).pour(Pour.PULL);
    Jobs.Done done = jobs.run("egg", EGG, lying);
    assertEquals(List.of(), done.failures());
    Report r = done.result().report();
    int through = (int) r.channels().stream().filter(c -> c.course().equals("pull")).count();
    assertTrue(through >= 1);
    assertEquals(List.of(through, 0, 0), handlesOf(done));
  }

  /** A ring's casting has one handle; its pieces, with a web across the hole, have none. */
  @Test
  void ring() throws IOException, XMLStreamException {
    Jobs.Done done = jobs.run("ring", Shapes.torus(30, 9, 48, 20), MoldOptions.DEFAULT.with());
    assertEquals(List.of(), done.failures());
    assertEquals(List.of(0, 0, 1), handlesOf(done));
  }

  /** A block is a box of 12 triangles: 684 bytes, 8 - 18 + 12 = 2. */
  @Test
  void boxBlock() throws IOException, XMLStreamException {
    TriMesh bar = Primitives.box(new Vec3(0, 0, 0), new Vec3(50, 30, 20));
    Jobs.Done done = jobs.run("bar", bar, MoldOptions.DEFAULT.with().closing(Closing.NONE));
    assertEquals(List.of(), done.failures());
    assertEquals(684, done.files().get("block.stl").length);
    assertEquals(List.of(0, 0, 0), handlesOf(done));
  }

  private static int bolts(Report r) {
    return (int) r.features().stream().filter(f -> f.kind().equals("bolt-hole")).count();
  }
}
