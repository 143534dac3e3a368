package org.castwright.repair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

/** Every rung of the ladder on a shape broken for it. */
class RepairTest {

  private final BoxKernel kernel = new BoxKernel(false);

  private RepairResult heal(TriMesh mesh, RepairOptions options) {
    RepairResult r = Repair.heal(mesh, options, kernel, Progress.NONE);
    assertTrue(MeshCheck.of(r.mesh()).closedManifold(), r.toString());
    assertTrue(r.mesh().volume() > 0);
    return r;
  }

  private RepairResult heal(TriMesh mesh) {
    return heal(mesh, RepairOptions.DEFAULT);
  }

  private static String refusal(TriMesh mesh, RepairOptions options) {
    return assertThrows(
            MeshException.class,
            () -> Repair.heal(mesh, options, new BoxKernel(false), Progress.NONE))
        .getMessage();
  }

  private static List<String> names(RepairResult r) {
    return r.steps().stream().map(HealingStep::name).toList();
  }

  private static HealingStep step(RepairResult r, String name) {
    return r.steps().stream().filter(s -> s.name().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void soundMeshesComeBackTheVerySame() {
    TriMesh pair = Broken.together(Shapes.cube(2), Shapes.cube(1).translated(new Vec3(5, 0, 0)));
    TriMesh[] sound = {
      Shapes.sphere(10, 40),
      Shapes.torus(10, 3, 40, 20),
      Shapes.cube(3),
      Shapes.trefoil(10, 3, 200, 16),
      pair
    };
    for (TriMesh mesh : sound) {
      for (HealMode mode : HealMode.values()) {
        RepairResult r = heal(mesh, RepairOptions.DEFAULT.withMode(mode));
        assertSame(mesh, r.mesh());
        assertEquals(List.of(), r.steps());
        assertTrue(r.before().closedManifold());
      }
    }
  }

  @Test
  void weldsVerticesInOnePlace() {
    RepairResult r = heal(Broken.loose(Shapes.cube(2)));
    assertEquals(List.of("weld-exact"), names(r));
    assertEquals(36 - 8, step(r, "weld-exact").count());
    assertEquals(8, r.mesh().vertexCount());
    assertEquals(8, r.mesh().volume(), 1e-12);
  }

  @Test
  void weldsVerticesAlmostInOnePlace() {
    TriMesh loose = Broken.loose(Shapes.sphere(10, 24));
    SplittableRandom random = new SplittableRandom(7);
    double jitter = 1e-4;
    for (int i = 0; i < loose.xyz().length; i++) {
      loose.xyz()[i] += random.nextDouble(-jitter, jitter);
    }
    RepairResult r = heal(loose);
    TriMesh sphere = Shapes.sphere(10, 24);
    assertEquals(sphere.vertexCount(), r.mesh().vertexCount());
    assertEquals(sphere.triangleCount(), r.mesh().triangleCount());
    for (HealingStep s : r.steps()) {
      assertEquals("weld-near", s.name());
      // two copies of a vertex are at most twice the jitter apart along each axis
      assertTrue(s.largestMovementMm() > 0 && s.largestMovementMm() <= 2 * jitter * Math.sqrt(3));
    }
    assertEquals(sphere.volume(), r.mesh().volume(), 4 * Math.PI * 100 * 2 * jitter);
  }

  @Test
  void nearWeldKeepsToSizeAndToShortEdges() {
    // a cube of 100 has no short edge: its size decides
    TriMesh coarse = Broken.without(Shapes.cube(100), f -> f == 0);
    assertEquals(1e-4 * Math.sqrt(3) * 100, tolerance(coarse), 1e-12);
    // a needle of 2 by 2 by 2000: its size allows 0.2, its rings have edges of 0.034 at the poles
    TriMesh needle = Shapes.ellipsoid(1, 1, 1000, 24);
    double ring = 2 * StrictMath.sin(Math.PI / 12) * StrictMath.sin(Math.PI / 24);
    assertEquals(ring / 4, tolerance(Broken.without(needle, f -> f == 100)), 1e-9);
  }

  private static double tolerance(TriMesh mesh) {
    EdgeTable edges = new EdgeTable(mesh.tri(), mesh.vertexCount());
    return NearWeld.tolerance(mesh, edges, RepairOptions.DEFAULT);
  }

  @Test
  void nearWeldNeverMakesAnEdgeOfThreeTriangles() {
    MeshBuilder m = new MeshBuilder();
    for (int i = 0; i < 3; i++) {
      double a = Math.toRadians(120 * i);
      double x = StrictMath.cos(a);
      double y = StrictMath.sin(a);
      m.vertex(1e-5 * x, 1e-5 * y, 0);
      m.vertex(10 * x, 10 * y, 5);
      m.vertex(1e-5 * x, 1e-5 * y, 10);
      m.triangle(3 * i, 3 * i + 1, 3 * i + 2);
    }
    TriMesh sheets = m.build();
    Draft draft = new Draft(sheets);
    NearWeld.apply(draft, RepairOptions.DEFAULT);
    assertSame(sheets, draft.mesh());
    assertEquals(List.of(), draft.steps());
  }

  @Test
  void dropsDegenerateTriangles() {
    RepairResult r = heal(Broken.plus(Shapes.cube(2), 0, 0, 1, 3, 2, 3));
    assertEquals(List.of("drop-degenerate"), names(r));
    assertEquals(2, r.steps().get(0).count());
    assertEquals(12, r.mesh().triangleCount());
  }

  @Test
  void dropsTrianglesWrittenTwice() {
    TriMesh cube = Shapes.cube(2);
    int[] t = cube.tri();
    RepairResult r = heal(Broken.plus(cube, t[1], t[2], t[0], t[3], t[4], t[5]));
    assertEquals(List.of("drop-duplicate"), names(r));
    assertEquals(2, r.steps().get(0).count());
    assertEquals(8, r.mesh().volume(), 1e-12);
  }

  @Test
  void keepsOneOfASurfaceWrittenBothWays() {
    TriMesh ball = Shapes.sphere(5, 16);
    RepairResult r = heal(Broken.welded(ball, ball.reversed()));
    assertEquals(ball.triangleCount(), step(r, "drop-duplicate").count());
    assertEquals(ball.volume(), r.mesh().volume(), 1e-9);
  }

  @Test
  void joinsBodiesThatShareAFace() {
    RepairResult r =
        heal(Broken.welded(Broken.box(0, 0, 0, 1, 1, 1), Broken.box(1, 0, 0, 2, 1, 1)));
    assertEquals(List.of("drop-duplicate"), names(r));
    assertEquals(4, r.steps().get(0).count());
    assertEquals(2, r.mesh().volume(), 1e-12);
    assertEquals(1, MeshCheck.of(r.mesh()).components());
  }

  @Test
  void turnsTrianglesToAgree() {
    TriMesh ball = Shapes.sphere(5, 24);
    SplittableRandom random = new SplittableRandom(3);
    boolean[] wrong = new boolean[ball.triangleCount()];
    int count = 0;
    for (int f = 0; f < wrong.length; f++) {
      wrong[f] = random.nextInt(10) == 0;
      count += wrong[f] ? 1 : 0;
    }
    RepairResult r = heal(Broken.turned(ball, f -> wrong[f]));
    assertEquals(List.of("turn-triangles"), names(r));
    assertEquals(count, r.steps().get(0).count());
    assertEquals(ball.volume(), r.mesh().volume(), 1e-12 * ball.volume());
  }

  @Test
  void turnsAnInsideOutModelWithItsVoid() {
    TriMesh model = Broken.together(Shapes.cube(4).reversed(), Shapes.cube(1));
    RepairResult r = heal(model, RepairOptions.DEFAULT.withFillVoids(true));
    assertEquals(List.of("turn-shells", "fill-voids"), names(r));
    assertEquals(2, step(r, "turn-shells").count());
    assertEquals(64, r.mesh().volume(), 1e-12);
  }

  @Test
  void partsABowTie() {
    RepairResult r =
        heal(Broken.welded(Broken.box(0, 0, 0, 1, 1, 1), Broken.box(1, 1, 1, 2, 2, 2)));
    assertEquals(List.of("split-touching"), names(r));
    assertEquals(1, r.steps().get(0).count());
    assertEquals(2, MeshCheck.of(r.mesh()).components());
  }

  @Test
  void partsBodiesThatTouchAlongAnEdge() {
    RepairResult r =
        heal(Broken.welded(Broken.box(0, 0, 0, 1, 1, 1), Broken.box(1, 1, 0, 2, 2, 1)));
    assertEquals(List.of("split-touching"), names(r));
    assertEquals(2, r.steps().get(0).count());
    Shells shells = new Shells(r.mesh());
    assertEquals(2, shells.count());
    assertEquals(1, shells.volume(0), 1e-12);
    assertEquals(1, shells.volume(1), 1e-12);
  }

  @Test
  void dropsAWallInsideABody() {
    TriMesh left = Broken.without(Broken.box(0, 0, 0, 1, 1, 1), f -> false);
    TriMesh right =
        Broken.without(
            Broken.box(1, 0, 0, 2, 1, 1),
            f -> Broken.middle(Broken.box(1, 0, 0, 2, 1, 1), f).x() == 1);
    RepairResult r = heal(Broken.welded(left, right));
    assertEquals(List.of("drop-walls"), names(r));
    assertEquals(2, r.mesh().volume(), 1e-12);
    assertEquals(20, r.mesh().triangleCount());
  }

  @Test
  void dropsAFin() {
    MeshBuilder fin = new MeshBuilder();
    fin.vertex(0, 0, 1);
    fin.vertex(1, 0, 1);
    fin.vertex(0.5, -1, 2);
    fin.triangle(0, 1, 2);
    RepairResult r = heal(Broken.welded(Broken.box(0, 0, 0, 1, 1, 1), fin.build()));
    assertEquals(List.of("drop-walls"), names(r));
    assertEquals(1, r.mesh().volume(), 1e-12);
  }

  @Test
  void refusesThreeSheetsOnOneEdge() {
    MeshBuilder m = new MeshBuilder();
    int low = m.vertex(0, 0, 0);
    int high = m.vertex(0, 0, 10);
    for (int i = 0; i < 3; i++) {
      double a = Math.toRadians(120 * i);
      int p = m.vertex(10 * StrictMath.cos(a), 10 * StrictMath.sin(a), 0);
      int q = m.vertex(10 * StrictMath.cos(a), 10 * StrictMath.sin(a), 10);
      m.triangle(low, p, q);
      m.triangle(low, q, high);
    }
    String words = refusal(m.build(), RepairOptions.DEFAULT);
    assertTrue(words.contains("6 open edges") && words.contains("--heal remesh"), words);
  }

  @Test
  void dropsSpecks() {
    TriMesh ball = Shapes.sphere(10, 24);
    TriMesh speck = Shapes.cube(0.05).translated(new Vec3(20, 0, 0));
    TriMesh bubble = Shapes.cube(0.05).reversed();
    RepairResult r = heal(Broken.together(ball, speck, bubble));
    assertEquals(List.of("drop-specks"), names(r));
    assertEquals(2, r.steps().get(0).count());
    assertEquals(ball.triangleCount(), r.mesh().triangleCount());
  }

  @Test
  void unitesPartsThatOverlap() {
    TriMesh apart = Broken.box(0, 5, 0, 1, 6, 1);
    RepairResult r =
        heal(Broken.together(Broken.box(0, 0, 0, 2, 1, 1), Broken.box(1, 0, 0, 3, 1, 1), apart));
    assertEquals(List.of("unite-parts"), names(r));
    assertEquals(2, r.steps().get(0).count());
    assertEquals(2, kernel.united.size());
    assertEquals(4, r.mesh().volume(), 1e-12);
  }

  @Test
  void unitesAPartInsideAnother() {
    RepairResult r = heal(Broken.together(Shapes.cube(4), Shapes.cube(1)));
    assertEquals(List.of("unite-parts"), names(r));
    assertEquals(64, r.mesh().volume(), 1e-12);
  }

  @Test
  void saysWhenPartsCannotBeUnited() {
    TriMesh parts =
        Broken.together(Broken.box(0, 0, 0, 20, 10, 10), Broken.box(10, 0, 0, 30, 10, 10));
    MeshException e =
        assertThrows(
            MeshException.class,
            () -> Repair.heal(parts, RepairOptions.DEFAULT, new BoxKernel(true), Progress.NONE));
    assertTrue(e.getMessage().contains("--heal remesh"), e.getMessage());
    RepairOptions remesh = RepairOptions.DEFAULT.withMode(HealMode.REMESH).withRemeshCell(0.5);
    RepairResult r = Repair.heal(parts, remesh, new BoxKernel(true), Progress.NONE);
    assertEquals(List.of("rebuild"), names(r));
    // only edges and corners are cut off, less than a cell's bound deep along 200 mm of them
    assertEquals(3000, r.mesh().volume(), 200 * 0.5 * 0.5);
    assertEquals(1, MeshCheck.of(r.mesh()).components());
  }

  @Test
  void refusesOrFillsVoids() {
    TriMesh hollow =
        Broken.together(
            Shapes.cube(10),
            Shapes.cube(4).reversed().translated(new Vec3(2, 1, 0)),
            Shapes.cube(1).translated(new Vec3(2, 1, 0)));
    String words = refusal(hollow, RepairOptions.DEFAULT);
    assertTrue(words.contains("1 enclosed void of 64.0 mm³"), words);
    assertTrue(words.contains("(2.00, 1.00, 0)") && words.contains("--fill-voids"), words);
    RepairResult r = heal(hollow, RepairOptions.DEFAULT.withFillVoids(true));
    assertEquals(List.of("fill-voids"), names(r));
    assertEquals(1000, r.mesh().volume(), 1e-9);
    assertEquals(1, r.voids().size());
    assertEquals(64, r.voids().get(0).volume(), 1e-9);
    assertEquals(new Vec3(2, 1, 0), r.voids().get(0).center());
  }

  @Test
  void refusesAMoebiusStrip() {
    MeshBuilder m = new MeshBuilder();
    int n = 20;
    for (int i = 0; i < n; i++) {
      double a = 2 * Math.PI * i / n;
      for (int side = -1; side <= 1; side += 2) {
        double r = 10 + side * 2 * StrictMath.cos(a / 2);
        m.vertex(r * StrictMath.cos(a), r * StrictMath.sin(a), side * 2 * StrictMath.sin(a / 2));
      }
    }
    for (int i = 0; i < n; i++) {
      int p = 2 * i;
      int q = i + 1 < n ? p + 2 : 1;
      int q2 = i + 1 < n ? p + 3 : 0;
      m.triangle(p, q, q2);
      m.triangle(p, q2, p + 1);
    }
    for (HealMode mode : List.of(HealMode.STANDARD, HealMode.REMESH)) {
      String words = refusal(m.build(), RepairOptions.DEFAULT.withMode(mode));
      assertTrue(words.contains("only one side"), words);
    }
  }

  @Test
  void refusesWithoutHealing() {
    RepairOptions none = RepairOptions.DEFAULT.withMode(HealMode.NONE);
    String open = refusal(Broken.without(Shapes.cube(2), f -> f == 3), none);
    assertTrue(open.contains("3 open edges") && open.contains("--heal standard"), open);
    String inward = refusal(Shapes.cube(2).reversed(), none);
    assertTrue(inward.contains("outward") && inward.contains("--heal standard"), inward);
    String overlap = refusal(Broken.together(Shapes.cube(2), Shapes.cube(1)), none);
    assertTrue(overlap.contains("2 parts of the model overlap"), overlap);
  }

  @Test
  void refusesWhatIsNoModel() {
    assertFalse(refusal(new TriMesh(new double[0], new int[0]), RepairOptions.DEFAULT).isEmpty());
    TriMesh cube = Shapes.cube(2);
    cube.xyz()[4] = Double.NaN;
    assertTrue(refusal(cube, RepairOptions.DEFAULT).contains("finite"));
    TriMesh sheet = Broken.without(Shapes.cube(2), f -> f > 1);
    assertTrue(refusal(sheet, RepairOptions.DEFAULT).contains("volume"));
  }

  @Test
  void leavesAndCountsCrossingsWithinAShell() {
    // a tube round a trefoil so thick that it runs into itself
    TriMesh knot = Shapes.trefoil(10, 9, 100, 12);
    RepairResult r = heal(knot);
    assertSame(knot, r.mesh());
    assertEquals(List.of("self-intersections"), names(r));
    assertEquals(r.before().selfIntersectingPairs(), r.steps().get(0).count());
  }

  /** Corners of a ball pushed through its surface, each as wide as it is, are cut out. */
  @Test
  void cutsOutSmallCrossings() {
    SplittableRandom random = new SplittableRandom(7);
    for (int n = 0; n < 10; n++) {
      TriMesh ball = Shapes.sphere(20, 40);
      double[] xyz = ball.xyz();
      for (int k = 0; k < 3; k++) {
        int v = random.nextInt(ball.vertexCount());
        for (int i = 0; i < 3; i++) {
          xyz[3 * v + i] += 6 * random.nextDouble() - 3;
        }
      }
      RepairResult r = heal(ball);
      if (r.before().selfIntersectingPairs() > 0) {
        assertEquals(List.of("cut-crossings"), names(r));
        assertEquals(r.before().selfIntersectingPairs(), r.steps().get(0).count());
        assertTrue(r.steps().get(0).largestMovementMm() < 3, r.steps().toString());
      }
      assertEquals(0, MeshHealth.of(r.mesh(), Progress.NONE).selfIntersectingPairs());
      assertTrue(MeshCheck.of(r.mesh()).closedManifold());
      assertEquals(1, MeshCheck.of(r.mesh()).components());
      assertEquals(Shapes.sphere(20, 40).volume(), r.mesh().volume(), 200);
    }
  }
}
