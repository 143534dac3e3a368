package org.castwright.solid.manifold;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** Volumes of results against formulas. */
class ClosedFormTest {

  /** Rounding: some thousand triangles, each with a relative error of about 1e-16. */
  private static final double ROUNDING = 1e-12;

  private static final ManifoldKernel KERNEL = new ManifoldKernel();

  @AfterAll
  static void close() {
    KERNEL.close();
  }

  @Test
  void boxMinusCylinder() {
    Solid box = KERNEL.solid("block", Bodies.box(-3, -3, -1, 3, 3, 1));
    Solid hole = KERNEL.solid("hole", Shapes.cylinder(2, 6, 64));
    Solid result = KERNEL.difference("drilled", box, List.of(hole));
    // a regular n-gon of circumradius r has the area n r² sin(2 pi / n) / 2 (Euclid)
    double polygon = 64 * 4 * Math.sin(2 * Math.PI / 64) / 2;
    assertEquals(72 - 2 * polygon, result.volume(), 72 * ROUNDING);
    assertEquals(1, MeshCheck.of(result.mesh()).genus());
    // perimeter of the n-gon: 2 n r sin(pi / n)
    double wall = 2 * 64 * 2 * 2 * Math.sin(Math.PI / 64);
    assertEquals(2 * (36 - polygon) + 24 * 2 + wall, result.area(), 200 * ROUNDING);
  }

  @Test
  void steinmetz() {
    int n = 256;
    TriMesh upright = Shapes.cylinder(1, 4, n);
    Solid a =
        KERNEL.solid("along x", Bodies.turned(upright, new Frame(Vec3.Z, Vec3.Y, Vec3.X.negate())));
    Solid b = KERNEL.solid("along y", Bodies.turned(upright, new Frame(Vec3.Z, Vec3.X, Vec3.Y)));
    double volume = KERNEL.intersection("bicylinder", a, b).volume();
    // Archimedes, The Method, preface: two equal cylinders crossing at right angles, 16 r³ / 3
    assertEquals(16.0 / 3, volume, 16.0 / 3 * 3e-4);
    // the same for prisms, exactly: at height z the section is a square of the side of the n-gon's
    // chord there, which is linear between vertices
    double sum = 0;
    for (int i = 0; i < n / 2; i++) {
      double z0 = Math.cos(2 * Math.PI * i / n);
      double z1 = Math.cos(2 * Math.PI * (i + 1) / n);
      double w0 = 2 * Math.sin(2 * Math.PI * i / n);
      double w1 = 2 * Math.sin(2 * Math.PI * (i + 1) / n);
      sum += (z0 - z1) * (w0 * w0 + w0 * w1 + w1 * w1) / 3;
    }
    assertEquals(sum, volume, sum * ROUNDING);
  }

  @Test
  void lensOfTwoSpheres() {
    Solid a = KERNEL.solid("left", Shapes.sphere(1, 200));
    Solid b = KERNEL.solid("right", Shapes.sphere(1, 200).translated(new Vec3(0.8, 0, 0)));
    // two caps of height h = r - d/2, each pi h² (3 r - h) / 3 (Archimedes, On the Sphere and
    // Cylinder II): pi (4 r + d) (2 r - d)² / 12
    double lens = Math.PI * 4.8 * 1.2 * 1.2 / 12;
    assertEquals(lens, KERNEL.intersection("lens", a, b).volume(), lens * 1e-3);
    Solid moon = KERNEL.difference("moon", a, List.of(b));
    assertEquals(4 * Math.PI / 3 - lens, moon.volume(), lens * 1e-3);
    assertTrue(MeshCheck.of(moon.mesh()).closedManifold());
  }

  @Test
  void farFromTheOriginNothingIsLost() {
    Vec3 far = new Vec3(5000, -7000, 9000);
    Solid a = KERNEL.solid("a", Bodies.box(0, 0, 0, 1, 1, 1).translated(far));
    Solid b = KERNEL.solid("b", Bodies.box(0.5, 0.5, 0.5, 2, 2, 2).translated(far));
    // half-unit shifts of whole numbers are exact: the corner cut off is 1/8
    assertEquals(0.875, KERNEL.difference("corner", a, List.of(b)).volume(), ROUNDING);
    assertEquals(0.125, KERNEL.overlap(a, Vec3.ZERO, b), ROUNDING);
    assertEquals(0.25, KERNEL.overlap(a, new Vec3(0.5, 0, 0), b), ROUNDING);
  }

  @Test
  void stepsFarBelowSinglePrecisionSurvive() {
    double depth = 1e-9;
    Solid cube = KERNEL.solid("cube", Bodies.box(0, 0, 0, 1, 1, 1));
    Solid tool = KERNEL.solid("tool", Bodies.box(0.25, 0.25, 1 - depth, 0.75, 0.75, 2));
    Solid result = KERNEL.difference("pocket", cube, List.of(tool));
    // 1 - 1e-9 is itself off by up to 1.2e-16
    assertEquals(0.25 * depth, 1 - result.volume(), 1e-15);
  }

  @Test
  void hullOfTwoBoxes() {
    Solid a = KERNEL.solid("a", Bodies.box(0, 0, 0, 1, 1, 1));
    Solid b = KERNEL.solid("b", Bodies.box(3, 0, 0, 4, 1, 1));
    Solid hull = KERNEL.hull("bar", List.of(a, b));
    assertEquals(4, hull.volume(), ROUNDING);
    assertEquals(a.bounds().min(), hull.bounds().min());
    assertEquals(b.bounds().max(), hull.bounds().max());
  }

  @Test
  void slicesOfABox() {
    Solid box = KERNEL.solid("box", Bodies.box(0, 0, 0, 4, 1, 1));
    Solid far = KERNEL.solid("far", Bodies.box(9, 0, 0, 10, 1, 1));
    Solid left = KERNEL.solid("left", Bodies.box(-1, -1, -1, 1, 2, 2));
    Solid middle = KERNEL.solid("middle", Bodies.box(0.5, -1, -1, 3, 2, 2));
    List<Integer> done = new ArrayList<>();
    List<Solid> parts = KERNEL.slices(box, List.of(left, far, middle), done::add);
    double[] volumes = parts.stream().mapToDouble(Solid::volume).toArray();
    // the middle is cut from what the left one left
    assertArrayEquals(new double[] {1, 0, 2, 1}, volumes, ROUNDING);
    assertEquals(List.of(1, 2), done);
    assertEquals("box inside middle", parts.get(2).name());
    Solid all = KERNEL.solid("all", Bodies.box(-1, -1, -1, 5, 2, 2));
    List<Solid> none = KERNEL.slices(box, List.of(all, left), n -> {});
    assertEquals(4, none.get(0).volume(), ROUNDING);
    assertTrue(none.get(1).isEmpty() && none.get(2).isEmpty());
  }

  @Test
  void recutJoinsAndTakesAway() {
    Solid box = KERNEL.solid("box", Bodies.box(0, 0, 0, 4, 1, 1));
    Solid knob = KERNEL.solid("knob", Bodies.box(1, 0.25, 0.5, 2, 0.75, 2));
    Solid bore = KERNEL.solid("bore", Bodies.box(1.25, 0.5, -1, 1.75, 0.625, 3));
    Solid far = KERNEL.solid("far", Bodies.box(9, 0, 0, 10, 1, 1));
    Solid none = KERNEL.intersection("none", box, far);
    // 4 and a knob of half a mm² by 1 mm that stands out, less a bore of 1/16 mm² by 2 mm
    assertEquals(
        4 + 0.5 - 0.125, KERNEL.recut("a", box, knob, List.of(far, bore)).volume(), ROUNDING);
    assertEquals(4.5, KERNEL.recut("b", box, knob, List.of(far)).volume(), ROUNDING);
    assertEquals(4 - 0.0625, KERNEL.recut("c", box, none, List.of(bore)).volume(), ROUNDING);
    assertEquals(4, KERNEL.recut("d", box, none, List.of()).volume(), ROUNDING);
    assertEquals("e", KERNEL.recut("e", box, knob, List.of(bore)).name());
  }

  @Test
  void splitGivesBothSides() {
    Solid ball = KERNEL.solid("ball", Shapes.sphere(1, 40));
    Solid half = KERNEL.solid("half", Bodies.box(-2, -2, 0, 2, 2, 2));
    SolidKernel.Split parts = KERNEL.split(ball, half);
    // the ball of an even number of bands has a plane of symmetry at z = 0
    assertEquals(ball.volume() / 2, parts.inside().volume(), ROUNDING);
    assertEquals(ball.volume() / 2, parts.outside().volume(), ROUNDING);
    assertEquals("ball inside half", parts.inside().name());
    assertTrue(parts.inside().bounds().min().z() >= 0);
    assertTrue(parts.outside().bounds().max().z() <= 0);
  }
}
