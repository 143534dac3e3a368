package org.castwright.parting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.Stream;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Halves stitched round shapes whose seam is known. */
class StitchTest {

  /**
   * What is known of a shape.
   *
   * @param flat whether a plane parts it
   * @param loops closed lines of its seam: one more than its handles (Elber, Chen and Cohen 2005)
   * @param maxSlopeDeg what the sheet may not exceed; 90 where the seam itself is steeper than 60
   */
  record Known(String name, TriMesh mesh, boolean flat, int loops, double maxSlopeDeg) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Known> shapes() {
    return Stream.of(
        new Known("sphere", PartingShapes.snapped(Shapes.sphere(25, 64)), true, 1, 0.1),
        new Known(
            "ellipsoid", PartingShapes.snapped(Shapes.ellipsoid(30, 20, 10, 64)), true, 1, 0.1),
        new Known(
            "oblique ellipsoid",
            PartingShapes.turned(Shapes.ellipsoid(30, 20, 10, 64), 30, 20),
            false,
            1,
            90),
        new Known("torus", PartingShapes.snapped(Shapes.torus(25, 8, 64, 32)), true, 2, 0.1),
        new Known(
            "tilted torus",
            PartingShapes.turned(Shapes.torus(25, 8, 64, 32), 10, 20),
            false,
            2,
            90),
        new Known("cross", PartingShapes.cross(30, 16, 12), true, 1, 0.1),
        new Known("cube", PartingShapes.snapped(Shapes.cube(30)), true, 1, 0.1),
        new Known("rotated cube", PartingShapes.turned(Shapes.cube(30), 45, 20), true, 1, 0.1),
        new Known(
            "oblique cube",
            PartingShapes.turned(PartingShapes.turned(Shapes.cube(30), 0, 45), 54, 20),
            false,
            1,
            90),
        new Known(
            "lying cylinder",
            PartingShapes.turned(Shapes.cylinder(12, 50, 48), 90, 20),
            true,
            1,
            0.1),
        new Known(
            "lying hourglass",
            PartingShapes.turned(Shapes.hourglass(16, 8, 50, 48), 90, 20),
            true,
            1,
            0.1),
        new Known("wavy disc", PartingShapes.wavyDisc(30, 4, 96), false, 1, 61),
        new Known("disc with holes", PartingShapes.discWithHoles(25, 6, 32), true, 4, 0.1),
        new Known("banana", PartingShapes.banana(64), false, 1, 61),
        new Known("noisy sphere", PartingShapes.noisySphere(50, 96, 0.02, 5), true, 1, 90),
        new Known(
            "leaning cylinder",
            PartingShapes.turned(Shapes.cylinder(22, 45, 64), 0.06, 10),
            true,
            1,
            0.1),
        new Known("step", PartingShapes.step(), false, 1, 90));
  }

  @ParameterizedTest
  @MethodSource("shapes")
  void halvesFillTheBlock(Known known) {
    TriMesh m = known.mesh();
    assertTrue(MeshCheck.of(m).closedManifold(), "the shape itself");
    BlockBox box = BlockBox.around(m.bounds(), 12, 8);
    PartingOptions options = PartingOptions.DEFAULT.with(Method.STITCH);
    Parting p = Parting.of(m, box, options, null, Progress.NONE);
    assertTrue(MeshCheck.of(p.upper().mesh()).closedManifold());
    assertTrue(MeshCheck.of(p.lower().mesh()).closedManifold());
    double sum = p.upper().volume() + p.lower().volume() + p.casting().volume();
    assertEquals(box.volume(), sum, 1e-9 * box.volume());
    assertEquals(m.volume(), p.casting().volume(), 1e-6 * m.volume());
    assertEquals(Method.STITCH, p.used());
    assertEquals(known.flat(), p.flat());
    assertEquals(known.loops(), p.seamLoops().size());
    assertTrue(p.stats().maxSlopeDeg() <= known.maxSlopeDeg(), "slope " + p.stats().maxSlopeDeg());
    // common practice, no source: a lip under 0.05 mm bends or wears away
    double lip = new LipProbe(m, p.upper().mesh(), p.lower().mesh()).width();
    assertTrue(lip <= 0.05, "lip " + lip);
    flatAtTheWall(p);
  }

  private static void flatAtTheWall(Parting p) {
    BlockBox b = p.box();
    for (double t = 0; t <= 1; t += 1.0 / 64) {
      double x = b.x0() + t * (b.x1() - b.x0());
      double y = b.y0() + t * (b.y1() - b.y0());
      for (double in : new double[] {0, 1.5, 2.9}) {
        assertEquals(p.wallHeight(), p.heightAt(x, b.y0() + in), 1e-6);
        assertEquals(p.wallHeight(), p.heightAt(x, b.y1() - in), 1e-6);
        assertEquals(p.wallHeight(), p.heightAt(b.x0() + in, y), 1e-6);
        assertEquals(p.wallHeight(), p.heightAt(b.x1() - in, y), 1e-6);
      }
    }
  }
}
