package org.castwright.parting;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

/** What a parting answers, and what it refuses. */
class PartingTest {

  private static final PartingOptions STITCH = PartingOptions.DEFAULT.with(Method.STITCH);

  private static Parting part(TriMesh m) {
    return Parting.of(m, BlockBox.around(m.bounds(), 12, 8), STITCH, null, Progress.NONE);
  }

  @Test
  void sphereQuestions() {
    Parting p = part(PartingShapes.snapped(Shapes.sphere(25, 128)));
    assertEquals(0, p.heightAt(30, 5), 1e-6);
    assertEquals(0, p.heightAt(p.box().x1(), p.box().y1()), 1e-6);
    assertTrue(Double.isNaN(p.heightAt(3, 4)));
    assertTrue(Double.isNaN(p.heightAt(200, 0)));
    assertEquals(0, p.slopeDegAt(28, 0), 1e-6);
    assertTrue(Double.isNaN(p.slopeDegAt(0, 0)));
    // a 128-gon lies within 25 (1 - cos(pi / 128)) = 0.0075 mm of its circle
    assertEquals(Math.hypot(30, 20) - 25, p.shadowDistance(30, 20), 0.01);
    assertEquals(0, p.shadowDistance(10, 10), 0);
    // the sphere's own equation, less its facets' sagitta
    assertEquals(Math.sqrt(25 * 25 - 15 * 15), p.upperAt(9, 12), 0.02);
    assertEquals(-Math.sqrt(25 * 25 - 15 * 15), p.lowerAt(9, 12), 0.02);
    assertTrue(Double.isNaN(p.upperAt(26, 0)));
  }

  /** The seam lies on the silhouette: of a sphere the equator, of a torus both equators. */
  @Test
  void seamOnTheSilhouette() {
    for (double[] loop : part(PartingShapes.snapped(Shapes.sphere(25, 64))).seamLoops()) {
      for (int i = 0; i < loop.length; i += 3) {
        assertEquals(25, Math.hypot(loop[i], loop[i + 1]), 1e-5);
        assertEquals(0, loop[i + 2], 1e-5);
      }
    }
    Parting torus = part(PartingShapes.snapped(Shapes.torus(25, 8, 64, 32)));
    for (double[] loop : torus.seamLoops()) {
      double r = Math.hypot(loop[0], loop[1]);
      assertEquals(8, Math.abs(r - 25), 1e-5);
    }
    assertEquals(0, torus.heightAt(0, 0), 1e-6, "a web across the hole");
    assertTrue(torus.shadowDistance(0, 0) > 16.9);
  }

  /** A straight wall is parted in its middle, and the facets of the wall are split there. */
  @Test
  void uprightWalls() {
    Parting p = part(PartingShapes.cross(30, 16, 12));
    assertEquals(6, p.wallHeight(), 0);
    assertEquals(44 + 2 * 24, p.casting().triangleCount());
    for (double[] loop : p.seamLoops()) {
      for (int i = 2; i < loop.length; i += 3) {
        assertEquals(6, loop[i], 0);
      }
    }
  }

  /** Where the outlines of two plates meet in one plan point the seam climbs straight up. */
  @Test
  void seamClimbsAtTheStep() {
    Parting p = part(PartingShapes.step());
    double lo = Double.POSITIVE_INFINITY;
    double hi = Double.NEGATIVE_INFINITY;
    for (double[] loop : p.seamLoops()) {
      for (int i = 0; i < loop.length; i += 3) {
        if (Math.hypot(loop[i], loop[i + 1]) < 1e-6) {
          lo = Math.min(lo, loop[i + 2]);
          hi = Math.max(hi, loop[i + 2]);
        }
      }
    }
    assertTrue(lo <= 2 && hi >= 5, "climbs from " + lo + " to " + hi);
    assertTrue(
        uprightFins(p.upper().mesh()) > uprightWalls(p), "no fin beside the casting's walls");
  }

  /** Where end faces lie over one line of the plan, the sheet stands upright between them. */
  @Test
  void sheetStandsUprightInTheStair() {
    TriMesh m = PartingShapes.stair();
    Parting p = part(m);
    assertTrue(p.stats().crossings() > 0, "edges of the seam lie on one another");
    assertTrue(MeshCheck.of(p.upper().mesh()).closedManifold());
    assertTrue(MeshCheck.of(p.lower().mesh()).closedManifold());
    double sum = p.upper().volume() + p.lower().volume() + p.casting().volume();
    assertEquals(p.box().volume(), sum, 1e-9 * p.box().volume());
    assertEquals(0, new LipProbe(m, p.upper().mesh(), p.lower().mesh()).width(), 0);
    // between plates, at y 5 to 20 on either side of x = 0, z 2 to 5, both halves have the fin
    assertTrue(uprightOverLine(p.upper().mesh()) >= 2 * 2 * 3 * 15 / 2.0);
  }

  /** Area of the triangles of a half that lie in the plane x = 0 between z 2 and 5, mm². */
  private static double uprightOverLine(TriMesh m) {
    double area = 0;
    for (int f = 0; f < m.triangleCount(); f++) {
      boolean in = true;
      for (int k = 0; k < 3; k++) {
        Vec3 v = m.vertex(m.tri()[3 * f + k]);
        in &= v.x() == 0 && Math.abs(v.y()) >= 5 && v.z() > 0 && v.z() < 7;
      }
      area += in ? m.areaVector(f).length() : 0;
    }
    return area;
  }

  /** Triangles of a half that stand upright at the origin's corner. */
  private static int uprightFins(TriMesh m) {
    return upright(m);
  }

  private static int uprightWalls(Parting p) {
    int upper = 0;
    TriMesh m = p.casting();
    for (int f = 0; f < m.triangleCount(); f++) {
      upper += touchesCorner(m, f) && m.areaVector(f).z() == 0 ? 1 : 0;
    }
    return upper - upright(p.lower().mesh());
  }

  private static int upright(TriMesh m) {
    int n = 0;
    for (int f = 0; f < m.triangleCount(); f++) {
      n += touchesCorner(m, f) && Math.abs(m.areaVector(f).z()) < 1e-9 ? 1 : 0;
    }
    return n;
  }

  private static boolean touchesCorner(TriMesh m, int f) {
    for (int k = 0; k < 3; k++) {
      Vec3 v = m.vertex(m.tri()[3 * f + k]);
      if (Math.hypot(v.x(), v.y()) < 1e-6) {
        return true;
      }
    }
    return false;
  }

  /** With a land the sheet leaves the casting nearly level; without, it starts to climb at once. */
  @Test
  void landIsNearlyLevel() {
    TriMesh m = PartingShapes.banana(64);
    assertTrue(riseBesideSeam(m, 3) < 0.3 * riseBesideSeam(m, 0));
  }

  /** Mean change of height from the seam to one millimeter outside of it. */
  private static double riseBesideSeam(TriMesh m, double landMm) {
    PartingOptions o = new PartingOptions(60, 0.05, landMm, 3, Method.STITCH);
    Parting p = Parting.of(m, BlockBox.around(m.bounds(), 12, 8), o, null, Progress.NONE);
    double sum = 0;
    int n = 0;
    for (double[] s : p.seamLoops()) {
      for (int i = 0; i < s.length; i += 3) {
        int j = (i + 3) % s.length;
        double l = Math.hypot(s[j] - s[i], s[j + 1] - s[i + 1]);
        double x = (s[i] + s[j]) / 2 + (s[j + 1] - s[i + 1]) / l;
        double y = (s[i + 1] + s[j + 1]) / 2 - (s[j] - s[i]) / l;
        sum += Math.abs(p.heightAt(x, y) - (s[i + 2] + s[j + 2]) / 2);
        n++;
      }
    }
    return sum / n;
  }

  @Test
  void sameInputSameHalves() {
    TriMesh m = PartingShapes.noisySphere(50, 64, 0.02, 9);
    Parting a = part(m);
    Parting b = part(m);
    assertArrayEquals(a.upper().mesh().xyz(), b.upper().mesh().xyz());
    assertArrayEquals(a.upper().mesh().tri(), b.upper().mesh().tri());
    assertArrayEquals(a.lower().mesh().tri(), b.lower().mesh().tri());
  }

  @Test
  void everyCoordinateIsFloat() {
    Parting p = part(PartingShapes.banana(48));
    for (double v : p.upper().mesh().xyz()) {
      assertEquals((float) v, v, 0);
    }
  }

  /** The cavity of both halves is made of the casting's facets and nothing else. */
  @Test
  void cavityIsTheCastingsOwn() {
    Parting p = part(PartingShapes.wavyDisc(30, 4, 64));
    double cavity = p.upper().area() + p.lower().area() - p.casting().area();
    BlockBox b = p.box();
    double w = b.x1() - b.x0();
    double d = b.y1() - b.y0();
    double walls = 2 * (w * d + (w + d) * (b.z1() - b.z0()));
    // what is left is the sheet, on both halves; it is at least as large as its plan
    double sheet = cavity - walls;
    assertTrue(sheet > 2 * (w * d - Math.PI * 30 * 30) && sheet < 2 * w * d, "sheet " + sheet);
  }

  @Test
  void refusals() {
    TriMesh cube = Shapes.cube(10);
    BlockBox box = BlockBox.around(cube.bounds(), 12, 8);
    TriMesh open = new TriMesh(cube.xyz(), java.util.Arrays.copyOf(cube.tri(), 33));
    MeshException e =
        assertThrows(MeshException.class, () -> Parting.of(open, box, STITCH, null, Progress.NONE));
    assertTrue(e.getMessage().contains("open"), e.getMessage());
    BlockBox tight = new BlockBox(-5, -5, 5, 5, -20, 20);
    assertThrows(
        IllegalArgumentException.class, () -> Parting.of(cube, tight, STITCH, null, Progress.NONE));
    TriMesh doubles = cube.translated(new Vec3(0.1, 0, 0));
    assertThrows(
        IllegalArgumentException.class,
        () -> Parting.of(doubles, box, STITCH, null, Progress.NONE));
    assertThrows(IllegalArgumentException.class, () -> new BlockBox(0, 0, 0.1, 1, 0, 1));
    TriMesh knot = PartingShapes.snapped(Shapes.trefoil(10, 4, 48, 12));
    assertThrows(MeshException.class, () -> part(knot));
  }

  @Test
  void stopsWhenAsked() {
    TriMesh m = PartingShapes.snapped(Shapes.sphere(25, 32));
    BlockBox box = BlockBox.around(m.bounds(), 12, 8);
    Progress stop =
        (stage, share) -> {
          if (share > 0.1) {
            throw new Progress.CancelledException();
          }
        };
    assertThrows(Progress.CancelledException.class, () -> Parting.of(m, box, STITCH, null, stop));
  }
}
