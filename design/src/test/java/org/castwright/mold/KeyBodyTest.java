package org.castwright.mold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.Key;
import org.castwright.plan.KeyShape;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class KeyBodyTest {

  private static final double GAP = 0.3;

  private static Key key(KeyShape shape) {
    return new Key("k", shape, new Vec3(12, -7, 3), 5, 5 * 0.9, GAP);
  }

  @ParameterizedTest
  @EnumSource(KeyShape.class)
  void socketLiesTheGapOutsideTheKeyAlongItsNormal(KeyShape shape) {
    TriMesh key = KeyBody.key(key(shape));
    TriMesh socket = KeyBody.socket(key(shape));
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    for (int f = 0; f < key.triangleCount(); f++) {
      Vec3 a = key.areaVector(f);
      Vec3 c = center(key, f);
      // the part above the sheet only; facets of the flank and of the top
      if (c.z() < 3.3 || a.length() == 0) {
        continue;
      }
      double d = along(c, a.unit(), socket);
      least = Math.min(least, d);
      most = Math.max(most, d);
    }
    // chords of 48-sided rings and of the dome's arcs lie a little inside the true surfaces
    assertEquals(GAP, least, 0.02);
    assertEquals(GAP, most, 0.02);
  }

  @ParameterizedTest
  @EnumSource(KeyShape.class)
  void entersAlongThePull(KeyShape shape) {
    for (TriMesh m : new TriMesh[] {KeyBody.key(key(shape)), KeyBody.socket(key(shape))}) {
      assertTrue(MeshCheck.of(m).closedManifold());
      assertTrue(m.volume() > 0);
      for (int f = 0; f < m.triangleCount(); f++) {
        Vec3 a = m.areaVector(f);
        // above the sheet nothing faces down: the socket slides off
        if (center(m, f).z() > 3.01 && a.length() > 0) {
          assertTrue(a.z() > 0, "facet faces down or stands upright above the sheet");
        }
      }
    }
  }

  @ParameterizedTest
  @EnumSource(KeyShape.class)
  void standsAlongAnyPull(KeyShape shape) {
    Vec3 foot = new Vec3(12, -7, 3);
    Frame frame = Frame.along(new Vec3(2, 1, -1));
    TriMesh upright = KeyBody.key(key(shape));
    TriMesh slanted = KeyBody.key(new Key("k", shape, foot, frame.w(), 5, 5 * 0.9, GAP, 3, 2));
    assertEquals(upright.vertexCount(), slanted.vertexCount());
    for (int i = 0; i < upright.vertexCount(); i++) {
      Vec3 expected = frame.toWorld(upright.vertex(i).minus(foot)).plus(foot);
      assertEquals(0, expected.minus(slanted.vertex(i)).length(), 1e-12);
    }
  }

  private static Vec3 center(TriMesh m, int f) {
    int[] t = m.tri();
    return m.vertex(t[3 * f])
        .plus(m.vertex(t[3 * f + 1]))
        .plus(m.vertex(t[3 * f + 2]))
        .times(1 / 3.0);
  }

  /** Distance from a point along a direction to a mesh (Möller and Trumbore 1997). */
  private static double along(Vec3 from, Vec3 direction, TriMesh mesh) {
    double best = Double.POSITIVE_INFINITY;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      Vec3 a = mesh.vertex(mesh.tri()[3 * f]);
      Vec3 e1 = mesh.vertex(mesh.tri()[3 * f + 1]).minus(a);
      Vec3 e2 = mesh.vertex(mesh.tri()[3 * f + 2]).minus(a);
      Vec3 p = direction.cross(e2);
      double det = e1.dot(p);
      if (Math.abs(det) < 1e-15) {
        continue;
      }
      Vec3 s = from.minus(a);
      double u = s.dot(p) / det;
      Vec3 q = s.cross(e1);
      double v = direction.dot(q) / det;
      double t = e2.dot(q) / det;
      if (u >= -1e-9 && v >= -1e-9 && u + v <= 1 + 1e-9 && t > 0) {
        best = Math.min(best, t);
      }
    }
    return best;
  }
}
