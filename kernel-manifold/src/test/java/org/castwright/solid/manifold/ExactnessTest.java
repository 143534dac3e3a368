package org.castwright.solid.manifold;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** Positions keep every bit on the way in, through an operation, and out. */
class ExactnessTest {

  private static final ManifoldKernel KERNEL = new ManifoldKernel();

  @AfterAll
  static void close() {
    KERNEL.close();
  }

  @Test
  void verticesAwayFromTheCutKeepTheirBits() {
    SplittableRandom random = new SplittableRandom(21);
    for (int k = 0; k < 20; k++) {
      // coordinates with full mantissas, far from the origin
      Vec3 far = new Vec3(1000.1 * random.nextDouble(), -2000.3, 3000.7 * random.nextDouble());
      TriMesh mesh =
          Bodies.turned(Shapes.sphere(1 / 3.0, 40), Bodies.frame(random)).translated(far);
      TriMesh tool =
          Bodies.turned(Shapes.cube(0.4), Bodies.frame(random))
              .translated(far.plus(new Vec3(0.3, 0.1, 0)));
      Solid a = KERNEL.solid("ball", mesh);
      Solid b = KERNEL.solid("tool", tool);
      Solid result = KERNEL.difference("bitten", a, List.of(b));
      Set<Vec3> after = points(result.mesh());
      int kept = 0;
      for (Vec3 p : points(mesh)) {
        boolean cutAway = Pieces.winding(tool, p) > 0.5;
        assertEquals(!cutAway, after.contains(p), "vertex " + p);
        kept += cutAway ? 0 : 1;
      }
      assertTrue(kept > 100 && kept < mesh.vertexCount(), "the tool takes some vertices: " + kept);
    }
  }

  @Test
  void bodiesThatDoNotTouchComeThroughWhole() {
    TriMesh a = Bodies.turned(Shapes.torus(1.1, 0.37, 30, 17), Frame.along(new Vec3(1, 2, 3)));
    TriMesh b = a.translated(new Vec3(10.3, 0.1, 0.7));
    Solid both = KERNEL.union("both", List.of(KERNEL.solid("a", a), KERNEL.solid("b", b)));
    Set<Vec3> expected = points(a);
    expected.addAll(points(b));
    assertEquals(expected, points(both.mesh()));
    assertEquals(2 * a.triangleCount(), both.mesh().triangleCount());
  }

  @Test
  void slivers() {
    // a fan whose triangles are a millionth of a micron wide at the rim: single precision would
    // put its corners on one another
    TriMesh thin =
        Shapes.cone(1e-7, 1, 12).scaled(new Vec3(1, 1e-3, 1)).translated(new Vec3(40, 50, 60));
    Solid needle = KERNEL.solid("needle", thin);
    Solid block = KERNEL.solid("block", Bodies.box(0, 0, 0, 1, 1, 1));
    Solid both = KERNEL.union("both", List.of(needle, block));
    Set<Vec3> expected = points(thin);
    expected.addAll(points(block.mesh()));
    assertEquals(expected, points(both.mesh()));
    assertEquals(thin.triangleCount() + 12, both.mesh().triangleCount());
  }

  @Test
  void unusedVerticesAndLargeIndicesDoNotMatter() {
    TriMesh cube = Shapes.cube(1);
    double[] xyz = new double[cube.xyz().length + 3000];
    System.arraycopy(cube.xyz(), 0, xyz, 3000, cube.xyz().length);
    int[] tri = cube.tri().clone();
    for (int i = 0; i < tri.length; i++) {
      tri[i] += 1000;
    }
    Solid a = KERNEL.solid("a", new TriMesh(xyz, tri));
    Solid b = KERNEL.solid("b", cube.translated(new Vec3(0.5, 0, 0)));
    assertEquals(1.5, KERNEL.union("both", List.of(a, b)).volume(), 1e-15);
  }

  @Test
  void resultsCanGoBackInManyTimes() {
    Solid body = KERNEL.solid("block", Bodies.box(0, 0, 0, 20, 20, 2));
    SplittableRandom random = new SplittableRandom(22);
    double removed = 0;
    for (int k = 0; k < 20; k++) {
      double x = 1 + 18 * random.nextDouble();
      double y = 1 + 18 * random.nextDouble();
      Solid drill =
          KERNEL.solid("drill", Shapes.cylinder(0.7, 6, 24).translated(new Vec3(x, y, 1)));
      double before = body.volume();
      removed += KERNEL.overlap(drill, Vec3.ZERO, body);
      body = KERNEL.difference("drilled", body, List.of(drill));
      assertEquals(800 - removed, body.volume(), 800 * 1e-12);
      assertTrue(body.volume() <= before);
      assertTrue(MeshCheck.of(body.mesh()).closedManifold());
    }
  }

  @Test
  void changedTrianglesAreNoticedAndTheirCornersMoved() {
    TriMesh mesh = Shapes.torus(3, 1, 200, 100);
    StandIns standIns = new StandIns(mesh);
    float[] before = standIns.positions().clone();
    assertTrue(standIns.accept(before, mesh.tri()));
    assertArrayEquals(before, standIns.positions());
    int[] turned = mesh.tri().clone();
    int swap = turned[300];
    turned[300] = turned[301];
    turned[301] = swap;
    assertFalse(standIns.accept(before, turned));
    Set<Integer> moved = new HashSet<>();
    for (int i = 0; i < mesh.vertexCount(); i++) {
      assertEquals(before[3 * i], standIns.positions()[3 * i], "x is the number of the vertex");
      assertEquals(i, standIns.vertex(before[3 * i]));
      if (before[3 * i + 1] != standIns.positions()[3 * i + 1]) {
        moved.add(i);
      }
    }
    assertEquals(Set.of(mesh.tri()[300], mesh.tri()[301], mesh.tri()[302]), moved);
  }

  @Test
  void aMeshTheKernelChangesComesThroughAtTheSecondTry() {
    // found by trying spheres of 60 to 300 sides: 257 and 258 are changed at first
    TriMesh mesh = Shapes.sphere(50, 257);
    Bindings bindings = new Bindings(ManifoldWasm::create);
    StandIns standIns = new StandIns(mesh);
    assertFalse(comesThrough(bindings, standIns, mesh));
    assertTrue(comesThrough(bindings, standIns, mesh));
    Solid ball = KERNEL.solid("ball", mesh);
    Solid far = KERNEL.solid("far", Shapes.cube(1).translated(new Vec3(60, 60, 60)));
    Solid both = KERNEL.union("both", List.of(ball, far));
    assertEquals(mesh.triangleCount() + 12, both.mesh().triangleCount());
    assertEquals(ball.volume() + 1, both.volume(), 1e-12 * ball.volume());
  }

  private static boolean comesThrough(Bindings bindings, StandIns standIns, TriMesh mesh) {
    try (NativeObject body =
        bindings.make(
            "Manifold",
            Map.of("numProp", 3, "vertProperties", standIns.positions(), "triVerts", mesh.tri()))) {
      Map<?, ?> held = (Map<?, ?>) body.call("_GetMeshJS", -1);
      return standIns.accept((float[]) held.get("vertProperties"), (int[]) held.get("triVerts"));
    }
  }

  private static Set<Vec3> points(TriMesh mesh) {
    Set<Vec3> out = new HashSet<>();
    for (int v : mesh.tri()) {
      out.add(mesh.vertex(v));
    }
    return out;
  }
}
