package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.Random;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Chords of bodies whose chords are known in closed form. */
class LevelSectionTest {

  @Test
  void chordsOfASphereFollowTheCircle() {
    double[] profile = new double[2 * 181];
    for (int i = 0; i <= 180; i++) {
      double a = Math.toRadians(i - 90.0);
      profile[2 * i] = i % 180 == 0 ? 0 : 10 * Math.cos(a);
      profile[2 * i + 1] = 10 * Math.sin(a);
    }
    TriMesh sphere = Primitives.revolve(profile, 360);
    Random random = new Random(7);
    for (int k = 0; k < 200; k++) {
      double z = 16 * random.nextDouble() - 8;
      double y = 5 * random.nextDouble() - 2.5;
      LevelSection.Stretch s = LevelSection.of(sphere, z).first(-12, y, 1, 0, 100);
      double chord = 2 * Math.sqrt(100 - z * z - y * y);
      assertEquals(chord, s.width(), 0.01);
      assertEquals(12 - chord / 2, s.from(), 0.01);
    }
  }

  @Test
  void aRayFromTheSurfaceMeasuresTheWallAheadOfIt() {
    TriMesh wall = Primitives.box(new Vec3(0, -50, -20), new Vec3(3, 50, 20));
    // the height of the corners themselves, where the plane meets vertices
    for (double z : new double[] {-20 + 1e-9, 0, 20}) {
      LevelSection section = LevelSection.of(wall, z);
      LevelSection.Stretch through = section.first(0, 0, 1, 0, 0.5);
      assertNotNull(through, "at " + z);
      assertEquals(3, through.width(), 1e-9);
      assertEquals(50, section.first(1, 0, 0, 1, 0.5).to(), 1e-9);
    }
  }

  @Test
  void aRayBesideTheBodyOrTooFarFromItMeasuresNothing() {
    TriMesh wall = Primitives.box(new Vec3(0, -50, -20), new Vec3(3, 50, 20));
    assertNull(LevelSection.of(wall, 0).first(-1, 0, 1, 0, 0.5));
    assertNull(LevelSection.of(wall, 0).first(-1, 0, -1, 0, 5));
    assertNull(LevelSection.of(wall, 30).first(-0.1, 0, 1, 0, 5));
  }
}
