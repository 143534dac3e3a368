package org.castwright.repair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
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

/** Holes that may be closed, holes that may not, and the patch of least area. */
class CloseHolesTest {

  private static RepairResult heal(TriMesh mesh) {
    RepairResult r = Repair.heal(mesh, RepairOptions.DEFAULT, new BoxKernel(false), Progress.NONE);
    assertTrue(MeshCheck.of(r.mesh()).closedManifold());
    assertEquals(List.of("close-holes"), r.steps().stream().map(HealingStep::name).toList());
    return r;
  }

  @Test
  void closesSmallHolesInACurvedSurface() {
    TriMesh ball = Shapes.sphere(10, 60);
    RepairResult r = heal(Broken.without(ball, f -> f == 500 || f == 1200 || f == 1201));
    assertEquals(2, r.steps().get(0).count());
    assertEquals(ball.triangleCount(), r.mesh().triangleCount());
    assertEquals(ball.volume(), r.mesh().volume(), 1e-3 * ball.volume());
  }

  @Test
  void closesAFlatSideWhateverItsSize() {
    TriMesh can = Shapes.cylinder(20, 30, 48);
    TriMesh open = Broken.without(can, f -> Broken.middle(can, f).z() == -15);
    RepairResult r = heal(open);
    assertEquals(can.volume(), r.mesh().volume(), 1e-9 * can.volume());
    assertEquals(can.area(), r.mesh().area(), 1e-9 * can.area());
  }

  @Test
  void closesAConcaveFlatSideExactly() {
    TriMesh open = prism(new double[] {0, 0, 4, 0, 4, 1, 1, 1, 1, 5, 0, 5}, 3);
    RepairResult r = heal(open);
    // the L has 4·1 + 1·4 = 8 mm²
    assertEquals(24, r.mesh().volume(), 1e-9);
    assertEquals(2 * 8 + 3 * 18, r.mesh().area(), 1e-9);
  }

  /** A prism with a fan for a bottom and no top; the fan about corner 3 suits the L. */
  private static TriMesh prism(double[] outline, double height) {
    int n = outline.length / 2;
    MeshBuilder m = new MeshBuilder();
    for (int i = 0; i < n; i++) {
      m.vertex(outline[2 * i], outline[2 * i + 1], 0);
      m.vertex(outline[2 * i], outline[2 * i + 1], height);
    }
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      m.triangle(2 * i, 2 * j, 2 * j + 1);
      m.triangle(2 * i, 2 * j + 1, 2 * i + 1);
      if (i != 3 && j != 3) {
        m.triangle(6, 2 * j, 2 * i);
      }
    }
    return m.build();
  }

  @Test
  void refusesAWideUnevenHole() {
    TriMesh ball = Shapes.sphere(10, 60);
    TriMesh open =
        Broken.without(
            ball,
            f -> {
              Vec3 p = Broken.middle(ball, f);
              return p.z() > 7 + 0.2 * p.x();
            });
    MeshException e =
        assertThrows(
            MeshException.class,
            () -> Repair.heal(open, RepairOptions.DEFAULT, new BoxKernel(false), Progress.NONE));
    int edges = MeshCheck.of(open).openEdges();
    assertTrue(e.getMessage().contains(edges + " open edges round a hole"), e.getMessage());
    assertTrue(e.getMessage().contains("--heal remesh"), e.getMessage());
  }

  @Test
  void patchHasTheLeastAreaOfAllTriangulations() {
    SplittableRandom random = new SplittableRandom(11);
    for (int round = 0; round < 40; round++) {
      int n = 4 + round % 5;
      double[] loop = new double[3 * n];
      for (int i = 0; i < n; i++) {
        double a = 2 * Math.PI * i / n;
        loop[3 * i] = 10 * StrictMath.cos(a) + random.nextDouble(-2, 2);
        loop[3 * i + 1] = 10 * StrictMath.sin(a) + random.nextDouble(-2, 2);
        loop[3 * i + 2] = random.nextDouble(-4, 4);
      }
      int[] patch = MinimumAreaPatch.of(loop, new boolean[n * n]);
      double area = 0;
      for (int t = 0; t < patch.length; t += 3) {
        area += area(loop, patch[t], patch[t + 1], patch[t + 2]);
      }
      // needles weigh up to a thousandth of their longest edge squared more than their area
      assertEquals(least(loop, 0, n - 1), area, 0.4);
    }
  }

  /** Brute force: the least area over every way to cut the chain i..k. */
  private static double least(double[] loop, int i, int k) {
    if (k - i < 2) {
      return 0;
    }
    double best = Double.MAX_VALUE;
    for (int j = i + 1; j < k; j++) {
      best = Math.min(best, least(loop, i, j) + least(loop, j, k) + area(loop, i, j, k));
    }
    return best;
  }

  private static double area(double[] loop, int a, int b, int c) {
    return new TriMesh(loop, new int[] {a, b, c}).area();
  }

  @Test
  void patchAvoidsBarredDiagonals() {
    double[] square = {0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0};
    boolean[] barred = new boolean[16];
    barred[2] = true;
    barred[8] = true;
    int[] patch = MinimumAreaPatch.of(square, barred);
    assertEquals(2, patch.length / 3);
    for (int t = 0; t < 6; t += 3) {
      boolean uses0 = patch[t] == 0 || patch[t + 1] == 0 || patch[t + 2] == 0;
      boolean uses2 = patch[t] == 2 || patch[t + 1] == 2 || patch[t + 2] == 2;
      assertTrue(!(uses0 && uses2));
    }
    barred[7] = true;
    barred[13] = true;
    assertNull(MinimumAreaPatch.of(square, barred));
  }
}
