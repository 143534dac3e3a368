package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.castwright.mesh.TriMesh;
import org.castwright.pipeline.Report;
import org.castwright.plan.MoldOptions;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/**
 * The cavity of a finished mold against Pappus's rule: the model's own volume, smaller by what its
 * facets take, times the cube of the scale. Nothing but 32-bit rounding may come between.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class TurnedTriangleTest {

  /**
   * Coordinates of up to 128 mm on 32-bit floats are off by up to 4e-6 mm; on bodies at least 10 mm
   * thick all walls off the same way would make a share of 2e-6.
   */
  private static final double ROUNDING = 2e-6;

  private Jobs jobs;

  @BeforeAll
  void open(@TempDir Path temp) {
    jobs = new Jobs(temp);
  }

  @AfterAll
  void close() {
    jobs.close();
  }

  /**
   * Casts {@code mesh} and compares.
   *
   * @param smooth volume of the body without facets
   * @param share of it the facets leave, exact
   */
  private void check(TriMesh mesh, double smooth, double share, String material, double scale)
      throws IOException {
    Jobs.Done done = jobs.run("body", mesh, MoldOptions.DEFAULT.with().material(material));
    assertEquals(List.of(), done.failures());
    Report r = done.result().report();
    double expected = smooth * share * scale * scale * scale;
    assertEquals(expected, r.casting().volumeMm3(), ROUNDING * expected);
    // mass = volume x density, to the milligram the report is rounded to
    double kg = r.casting().volumeMm3() * 1e-9 * r.material().densityKgPerM3();
    assertEquals(kg, r.casting().massKg(), 1e-6);
    double poured = (r.casting().volumeMm3() + r.volumes().channelsMm3()) * 1e-9;
    assertEquals(poured * r.material().densityKgPerM3(), r.pour().massToPourKg(), 1e-6);
    assertTrue(r.volumes().channelsMm3() > 0, "gate and vents hold material too");
  }

  /**
   * A triangle turned about an axis, by Pappus: (2,0), (5,0), (2,4) has area 6 and its centroid 3
   * from the axis, so V = 36 π = 113.097; here ten times as large.
   */
  @Test
  void turnedTriangleInChocolate() throws IOException {
    double v = 2 * Math.PI * 30 * 600;
    assertEquals(113.097, v / 1000, 5e-4);
    TriMesh ring = Turning.ring(new double[] {20, 0, 50, 0, 20, 40}, 60);
    check(ring, v, Turning.polygonShare(60), "chocolate-dark", 1 / 0.9915);
  }
}
