package org.castwright.seams;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Against closed forms and against rays through every triangle. */
class ShadowFreedomTest {

  private static final double RELEASE = 0.1;

  @Test
  void belowItsEquatorASphereIsFreeOnlyWhereTheCatchIsNarrow() {
    double radius = 20;
    Vec3 pull = new Vec3(2, -1, 3).unit();
    ShadowFreedom f =
        ShadowFreedom.of(Shapes.sphere(radius, 256), List.of(pull, pull.negate()), RELEASE, 4000);
    assertEquals(RELEASE, f.pixelMm(0));
    SplittableRandom random = new SplittableRandom(5);
    int[] counts = new int[3];
    for (int i = 0; i < 20_000; i++) {
      Vec3 p =
          new Vec3(random.nextDouble() - 0.5, random.nextDouble() - 0.5, random.nextDouble() - 0.5)
              .unit()
              .times(radius);
      double h = p.dot(pull);
      // closed form: a point h below the equator hangs back by R - sqrt(R^2 - h^2)
      double catchMm = h > 0 ? 0 : radius - Math.sqrt(radius * radius - h * h);
      boolean free = (f.at(p.x(), p.y(), p.z()) & 1) == 1;
      if (catchMm < 0.4 * RELEASE) {
        assertTrue(free, "catch " + catchMm);
        counts[0]++;
      } else if (catchMm > ShadowFreedom.WIDEST_PIXELS * RELEASE) {
        assertTrue(!free, "catch " + catchMm);
        counts[1]++;
      } else {
        counts[2]++;
      }
    }
    assertTrue(counts[0] > 10_000 && counts[1] > 6000 && counts[2] < 3000);
  }

  /** Whether a ray meets a triangle of the mesh farther than a little ahead (Cramer's rule). */
  private static boolean meets(TriMesh mesh, Vec3 from, Vec3 along) {
    for (int f = 0; f < mesh.triangleCount(); f++) {
      Vec3 a = mesh.vertex(mesh.tri()[3 * f]);
      Vec3 u = mesh.vertex(mesh.tri()[3 * f + 1]).minus(a);
      Vec3 v = mesh.vertex(mesh.tri()[3 * f + 2]).minus(a);
      Vec3 s = along.cross(v);
      double det = u.dot(s);
      if (det == 0) {
        continue;
      }
      Vec3 w = from.minus(a);
      double x = w.dot(s) / det;
      Vec3 q = w.cross(u);
      double y = along.dot(q) / det;
      if (x >= 0 && y >= 0 && x + y <= 1 && v.dot(q) / det > 1e-3) {
        return true;
      }
    }
    return false;
  }

  @Test
  void neverHidesWhatARayLetsGoAndFreesOnlyBesideSuchPlaces() {
    TriMesh mesh = Shapes.trefoil(8, 2.5, 90, 16);
    Vec3 pull = new Vec3(1, 2, 4).unit();
    ShadowFreedom freedom = ShadowFreedom.of(mesh, List.of(pull), RELEASE, 4000);
    int free = 0;
    int hidden = 0;
    int lenient = 0;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      Vec3 c =
          mesh.vertex(mesh.tri()[3 * f])
              .plus(mesh.vertex(mesh.tri()[3 * f + 1]))
              .plus(mesh.vertex(mesh.tri()[3 * f + 2]))
              .times(1 / 3.0);
      boolean out = mesh.areaVector(f).dot(pull) > 0 && !meets(mesh, c, pull);
      boolean said = freedom.at(c.x(), c.y(), c.z()) == 1;
      assertTrue(said || !out, "facet " + f);
      free += out ? 1 : 0;
      hidden += out ? 0 : 1;
      if (said && !out) {
        lenient++;
        assertTrue(freeBeside(mesh, c, Frame.along(pull)), "facet " + f);
      }
    }
    assertTrue(free > 1000 && lenient > 50 && hidden > 4 * lenient, free + "/" + lenient);
  }

  /** Whether a ray gets away that starts two columns up and not much more than that beside. */
  private static boolean freeBeside(TriMesh mesh, Vec3 p, Frame frame) {
    double reach = ShadowFreedom.WIDEST_PIXELS * RELEASE;
    for (int i = -4; i <= 4; i++) {
      for (int j = -4; j <= 4; j++) {
        Vec3 side = frame.u().times(i * reach / 4).plus(frame.v().times(j * reach / 4));
        Vec3 start = p.plus(side).plus(frame.w().times(2 * RELEASE));
        if (!meets(mesh, start, frame.w())) {
          return true;
        }
      }
    }
    return false;
  }

  @Test
  void needsPulls() {
    assertThrows(
        IllegalArgumentException.class,
        () -> ShadowFreedom.of(Shapes.cube(1), List.of(), RELEASE, 100));
  }
}
