package org.castwright.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** The box tree against brute force and closed forms. */
class BvhTest {

  @Test
  void closestPointsAgreeWithBruteForce() {
    TriMesh m = Shapes.trefoil(5, 1.5, 60, 10);
    Bvh tree = new Bvh(m);
    SplittableRandom random = new SplittableRandom(3);
    for (int i = 0; i < 500; i++) {
      Vec3 p =
          new Vec3(
              random.nextDouble(-20, 20), random.nextDouble(-20, 20), random.nextDouble(-9, 9));
      ClosestOnTriangle all = new ClosestOnTriangle(m.xyz(), m.tri(), p);
      for (int f = 0; f < m.triangleCount(); f++) {
        all.to(f);
      }
      assertEquals(Math.sqrt(all.squared()), tree.closest(p).distance(), 0);
    }
  }

  @Test
  void distanceToABoxIsItsClosedForm() {
    Bvh tree = new Bvh(Primitives.box(new Vec3(-1, -2, -3), new Vec3(1, 2, 3)));
    SplittableRandom random = new SplittableRandom(4);
    for (int i = 0; i < 500; i++) {
      Vec3 p =
          new Vec3(random.nextDouble(-6, 6), random.nextDouble(-6, 6), random.nextDouble(-6, 6));
      double dx = Math.abs(p.x()) - 1;
      double dy = Math.abs(p.y()) - 2;
      double dz = Math.abs(p.z()) - 3;
      double out = new Vec3(Math.max(dx, 0), Math.max(dy, 0), Math.max(dz, 0)).length();
      double exact = out > 0 ? out : -Math.max(dx, Math.max(dy, dz));
      assertEquals(exact, tree.closest(p).distance(), 1e-12);
    }
  }
}
