package org.castwright.division;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.progress.Progress;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

/** A ball hung over a slab: beside its shadow the slab is the topmost run of solid. */
class StepTest {

  private static final double RADIUS = 10;
  private static final int PLACES = 2000;

  @Test
  void theFloorBesideAStepIsTheOverhangItself() {
    try (ManifoldKernel kernel = new ManifoldKernel()) {
      TriMesh casting =
          kernel
              .union(
                  "ball over slab",
                  List.of(
                      kernel.solid("ball", Primitives.sphere(RADIUS, 96)),
                      kernel.solid("stem", Primitives.frustum(3, -16, 3, 0, 48)),
                      kernel.solid(
                          "slab", Primitives.box(new Vec3(-20, -20, -18), new Vec3(20, 20, -15)))))
              .mesh();
      Box3 block = BlockBox.around(casting.bounds(), 8, 8).mesh().bounds();
      List<Vec3> pulls = List.of(Vec3.Z, Vec3.X, Vec3.X.negate());
      Asked asked = Asked.nothing(3).with(List.of(0, -1, -1));
      Division division = Division.of(casting, block, pulls, asked, 0.05, Progress.NONE);
      Sheet first = division.sheets().get(0);
      Frame f = first.frame();
      // the underside just inside the ball's outline, where a lip would hold the piece
      double worst = 0;
      double r = RADIUS - 0.15;
      for (int k = 0; k < PLACES; k++) {
        double a = 2 * Math.PI * k / PLACES;
        double half = Math.sqrt(RADIUS * RADIUS - r * r);
        Vec3 q = f.toLocal(new Vec3(r * Math.cos(a), r * Math.sin(a), -half));
        worst = Math.max(worst, q.z() - first.heightAt(q.x(), q.y()));
      }
      assertEquals(0, worst, 0.2);
    }
  }
}
