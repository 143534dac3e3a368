package org.castwright.parting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import java.util.stream.Stream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Halves cut by the solid kernel, against the stitched ones and for castings that are caught. */
class SlabCutTest {

  private static SolidKernel kernel;

  @BeforeAll
  static void start() {
    kernel = new ManifoldKernel();
  }

  @AfterAll
  static void stop() {
    kernel.close();
  }

  private static Parting part(TriMesh m, Method method) {
    BlockBox box = BlockBox.around(m.bounds(), 12, 8);
    PartingOptions options = PartingOptions.DEFAULT.with(method);
    Parting p = Parting.of(m, box, options, kernel, Progress.NONE);
    assertTrue(MeshCheck.of(p.upper().mesh()).closedManifold());
    assertTrue(MeshCheck.of(p.lower().mesh()).closedManifold());
    double sum = p.upper().volume() + p.lower().volume() + p.casting().volume();
    assertEquals(box.volume(), sum, 1e-9 * box.volume());
    return p;
  }

  static Stream<StitchTest.Known> shapes() {
    Set<String> chosen =
        Set.of(
            "oblique ellipsoid",
            "tilted torus",
            "oblique cube",
            "lying cylinder",
            "disc with holes",
            "banana",
            "leaning cylinder",
            "step");
    return StitchTest.shapes().filter(s -> chosen.contains(s.name()));
  }

  /** A second way to the same halves: the volumes must agree. */
  @ParameterizedTest
  @MethodSource("shapes")
  void agreesWithTheStitch(StitchTest.Known known) {
    TriMesh m = known.mesh();
    Parting cut = part(m, Method.BOOLEAN);
    Parting stitched = part(m, Method.STITCH);
    assertEquals(Method.BOOLEAN, cut.used());
    double plan = (cut.box().x1() - cut.box().x0()) * (cut.box().y1() - cut.box().y0());
    // beside a curved seam the two sheets are triangulated differently: less than the release
    // tolerance on the mean; planes are the same but for the triangles that meet the seam
    double apart = known.flat() ? 1e-3 : 0.05;
    assertEquals(stitched.upper().volume(), cut.upper().volume(), apart * plan);
    for (Parting p : new Parting[] {cut, stitched}) {
      assertEquals(0, kernel.overlap(p.upper(), Vec3.ZERO, p.lower()), 1e-6);
    }
    LipProbe probe = new LipProbe(m, cut.upper().mesh(), cut.lower().mesh());
    assertTrue(probe.width() <= 0.05, "lip " + probe.width());
    // a bead 0.05 mm wide and 0.02 mm deep all along the outline; where the seam was moved on an
    // upright wall, the strip of that wall that a lip of the width found sweeps
    double bead = probe.outlineMm() * 0.05 * 0.02;
    Solid body = kernel.solid("casting", m);
    for (Parting p : new Parting[] {cut, stitched}) {
      double width = new LipProbe(m, p.upper().mesh(), p.lower().mesh()).width();
      for (double step : new double[] {0.1, 2}) {
        double v = LipProbe.collision(kernel, p, body, step);
        double most = Math.max(bead, probe.outlineMm() * width * step);
        assertTrue(v <= most, "collision " + v + " of " + most);
      }
    }
  }

  @Test
  void aKnotIsCaughtButStillParted() {
    TriMesh m = PartingShapes.snapped(Shapes.trefoil(10, 4, 96, 16));
    Parting p = part(m, Method.AUTO);
    assertEquals(Method.BOOLEAN, p.used());
    assertTrue(p.stats().caughtMm3() > 100);
    assertTrue(p.stats().crossings() > 0);
    assertTrue(!p.stats().why().isEmpty());
  }

  /**
   * Noise far above the release tolerance: the seam crosses itself, the halves must still close.
   */
  @Test
  void veryRoughSkin() {
    TriMesh m = PartingShapes.noisySphere(25, 96, 0.05, 7);
    Parting p = part(m, Method.AUTO);
    double lip = new LipProbe(m, p.upper().mesh(), p.lower().mesh()).width();
    assertTrue(lip <= 0.05, "lip " + lip);
  }
}
