package org.castwright.repair;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

/** The surface rebuilt from winding numbers, and the winding numbers themselves. */
class RebuildTest {

  private static final double CELL = 0.8;

  /** Rebuilds whatever is open, whatever its size. */
  private static final RepairOptions REBUILD =
      new RepairOptions(HealMode.REMESH, false, 1e-4, 1000, 0, 0, 1e-6, CELL);

  @Test
  void sphereWithAHoleStaysWithinTheBound() {
    TriMesh ball = Shapes.sphere(20, 96);
    double rim = 4;
    TriMesh open =
        Broken.without(
            ball,
            f -> {
              Vec3 p = Broken.middle(ball, f);
              return p.x() > 0 && Math.hypot(p.y(), p.z()) < rim;
            });
    RepairResult r = Repair.heal(open, REBUILD, new BoxKernel(false), Progress.NONE);
    assertEquals(1, r.steps().size());
    assertTrue(MeshCheck.of(r.mesh()).closedManifold());
    assertEquals(0, MeshCheck.of(r.mesh()).genus());
    double bound = Math.sqrt(3) * CELL;
    assertTrue(r.steps().get(0).largestMovementMm() <= bound);
    SurfaceQueries old = new SurfaceQueries(new TriangleTree(open));
    SurfaceQueries made = new SurfaceQueries(new TriangleTree(r.mesh()));
    for (int f = 0; f < r.mesh().triangleCount(); f++) {
      Vec3 p = Broken.middle(r.mesh(), f);
      if (p.x() < 0 || Math.hypot(p.y(), p.z()) > rim) {
        assertTrue(old.distance(p.x(), p.y(), p.z(), 10) <= bound);
      }
    }
    for (int f = 0; f < open.triangleCount(); f++) {
      Vec3 p = Broken.middle(open, f);
      assertTrue(made.distance(p.x(), p.y(), p.z(), 10) <= bound);
    }
    // the cap over the hole: h = 20 - sqrt(400 - 16), V = pi h^2 (60 - h) / 3 = 10 mm³; chords of
    // cells in the sphere lose under 0.1 mm of radius
    assertEquals(ball.volume(), r.mesh().volume(), 10 + 0.1 * 4 * Math.PI * 400);
  }

  @Test
  void sameInputSameNumbers() {
    TriMesh open = Broken.without(Shapes.torus(20, 6, 40, 20), f -> f < 7);
    TriMesh a = Repair.heal(open, REBUILD, new BoxKernel(false), Progress.NONE).mesh();
    TriMesh b = Repair.heal(open, REBUILD, new BoxKernel(false), Progress.NONE).mesh();
    assertArrayEquals(a.xyz(), b.xyz());
    assertArrayEquals(a.tri(), b.tri());
    assertEquals(1, MeshCheck.of(a).genus());
  }

  @Test
  void tooSmallACellIsRefused() {
    TriMesh open = Broken.without(Shapes.sphere(50, 12), f -> f == 0);
    MeshException e =
        assertThrows(
            MeshException.class,
            () ->
                Repair.heal(
                    open, REBUILD.withRemeshCell(0.01), new BoxKernel(false), Progress.NONE));
    assertTrue(e.getMessage().contains("larger cell"), e.getMessage());
  }

  @Test
  void windingNumbers() {
    TriMesh ball = Shapes.sphere(10, 100);
    TriMesh two = Broken.together(ball, Shapes.cube(4));
    WindingTree winding = new WindingTree(two);
    SplittableRandom random = new SplittableRandom(2);
    for (int i = 0; i < 2000; i++) {
      double x = random.nextDouble(-15, 15);
      double y = random.nextDouble(-15, 15);
      double z = random.nextDouble(-15, 15);
      double r = Math.sqrt(x * x + y * y + z * z);
      double box = Math.max(Math.abs(x), Math.max(Math.abs(y), Math.abs(z)));
      if (Math.abs(r - 10) > 0.1 && Math.abs(box - 2) > 0.01) {
        double expected = (r < 10 ? 1 : 0) + (box < 2 ? 1 : 0);
        // dipoles at two radii: Barill et al. 2018 report errors of a few hundredths
        assertEquals(expected, winding.at(x, y, z), 0.05);
      }
    }
    // half of a sphere seen from its center fills half of the view; the same dipoles
    TriMesh half = Broken.without(ball, f -> Broken.middle(ball, f).z() > 0);
    assertEquals(0.5, new WindingTree(half).at(0, 0, 0), 0.05);
  }
}
