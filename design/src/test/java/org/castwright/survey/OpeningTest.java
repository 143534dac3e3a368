package org.castwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

class OpeningTest {

  private static SurveyResult along(TriMesh mesh, Vec3 d) {
    return Survey.along(mesh, d, SurveyOptions.DEFAULT, Progress.NONE);
  }

  /**
   * The part of a sphere with draft under δ is the zone of height 2 R sin δ, by Archimedes' theorem
   * the share sin δ of the whole.
   */
  @Test
  void draftOfASphere() {
    TriMesh sphere = Shapes.sphere(50, 480);
    for (long seed = 1; seed <= 3; seed++) {
      DraftShares s = along(sphere, Turned.frame(seed).w()).best().draft();
      assertEquals(0.00873, s.underHalf(), 2e-4);
      assertEquals(0.01745, s.underOne(), 2e-4);
      assertEquals(0.03490, s.underTwo(), 2e-4);
      assertEquals(0.05234, s.underThree(), 2e-4);
      assertEquals(0.08716, s.underFive(), 2e-4);
    }
  }

  /** A rigid motion of model and pull together changes nothing. */
  @Test
  void draftAndHeightsTurnWithTheModel() {
    TriMesh mesh = Primitives.frustum(30, 0, 29, 60, 64);
    Opening a = along(mesh, Vec3.Z).best();
    for (long seed = 1; seed <= 5; seed++) {
      Frame f = Turned.frame(seed);
      Opening b = along(Turned.by(mesh, f), f.w()).best();
      assertEquals(a.draft().underHalf(), b.draft().underHalf(), 1e-9);
      assertEquals(a.draft().underOne(), b.draft().underOne(), 1e-9);
      assertEquals(a.drawDepth(), b.drawDepth(), 1e-9);
      assertEquals(a.shadowArea(), b.shadowArea(), 5e-3 * a.shadowArea());
      assertTrue(b.free());
      assertEquals(0.0, b.trappedVolume());
    }
    // the wall leans by atan(1 / 60) = 0.955 degrees
    assertEquals(0, a.draft().underHalf());
    assertTrue(a.draft().underOne() > 0.6);
  }

  /**
   * A cylinder with a groove turned into it: along the axis the groove is a caught ring, as wide as
   * it is deep into the wall and as high as it is along the axis.
   */
  @Test
  void widthDepthAndAreaOfAGroove() {
    for (double cut : new double[] {0.2, 0.5, 2, 6}) {
      double[] profile = {20, 0, 20, 10, 20 - cut, 10, 20 - cut, 14, 20, 14, 20, 30};
      TriMesh mesh = Primitives.revolve(profile, 360);
      SurveyResult r = along(mesh, Vec3.Z);
      Opening o = r.best();
      assertFalse(o.free());
      // the facets of a 360-gon sag by 20 (1 - cos 0.5°) = 0.0008
      assertEquals(cut, o.caughtWidth(), 1.5 * o.widthResolution(), "cut " + cut);
      assertEquals(4, o.caughtDepth(), 1e-6);
      double ring = Math.PI * (400 - (20 - cut) * (20 - cut));
      assertEquals(4 * ring, o.trappedVolume(), 0.02 * 4 * ring);
      // two rings, floor and roof, and the wall between
      double surface = 2 * ring + 2 * Math.PI * (20 - cut) * 4;
      assertEquals(surface, o.caughtArea(), 0.05 * surface, "cut " + cut);
      assertEquals(1, r.caught().places().size());
      CaughtPlace place = r.caught().places().get(0);
      assertEquals(0, place.center().minus(new Vec3(0, 0, 12)).length(), 0.3);
      assertEquals(4, place.depth(), 1e-5);
    }
  }

  /** The release tolerance decides: a lip 0.03 mm wide slips off, one of 0.08 mm does not. */
  @Test
  void thinLipsAreFree() {
    for (double cut : new double[] {0.01, 0.03, 0.08}) {
      double[] profile = {20, 0, 20, 10, 20 - cut, 10, 20 - cut, 28, 20, 28, 20, 30};
      SurveyResult r = along(Primitives.revolve(profile, 720), Vec3.Z);
      assertEquals(cut < 0.05, r.best().free(), "cut " + cut);
      assertEquals(cut, r.best().caughtWidth(), 1.5 * r.best().widthResolution(), "cut " + cut);
      assertEquals(cut < 0.05, r.caught().places().isEmpty());
    }
  }

  /** A groove too low to hold anything counts as little as one too narrow. */
  @Test
  void flatSlitsAreFree() {
    for (double high : new double[] {0.03, 0.2}) {
      double[] profile = {20, 0, 20, 10, 15, 10, 15, 10 + high, 20, 10 + high, 20, 30};
      Opening o = along(Primitives.revolve(profile, 180), Vec3.Z).best();
      assertEquals(high < 0.05, o.free(), "height " + high);
    }
  }

  /**
   * Roughness well under the release tolerance does not catch: facets about 1.6 mm across, points
   * off the sphere by 0.005 mm (standard deviation).
   */
  @Test
  void roughnessIsFree() {
    TriMesh sphere = Shapes.sphere(50, 200);
    SplittableRandom random = new SplittableRandom(77);
    double[] xyz = sphere.xyz().clone();
    for (int i = 0; i < xyz.length; i += 3) {
      double off = 1 + 0.005 / 50 * random.nextGaussian();
      xyz[i] *= off;
      xyz[i + 1] *= off;
      xyz[i + 2] *= off;
    }
    Opening o = along(new TriMesh(xyz, sphere.tri()), new Vec3(3, 4, 8)).best();
    assertTrue(o.trappedVolume() > 0);
    assertTrue(o.free());
    assertEquals(0, o.caughtArea());
  }

  /** A model is caught where its pocket is, and only there. */
  @Test
  void placesAreWhereThePocketsAre() {
    double[] profile = {20, 0, 20, 5, 15, 5, 15, 8, 20, 8, 20, 40, 17, 40, 17, 41, 20, 41, 20, 50};
    TriMesh mesh = Primitives.revolve(profile, 180);
    CaughtPlaces c = along(mesh, Vec3.Z).caught();
    assertEquals(2, c.places().size());
    assertTrue(c.places().get(0).area() > c.places().get(1).area());
    assertEquals(6.5, c.places().get(0).center().z(), 0.2);
    assertEquals(40.5, c.places().get(1).center().z(), 0.2);
    for (int f = 0; f < mesh.triangleCount(); f++) {
      double z = 0;
      for (int k = 0; k < 3; k++) {
        Vec3 v = mesh.vertex(mesh.tri()[3 * f + k]);
        z += v.z() / 3;
      }
      boolean pocket = (z >= 5 && z <= 8) || (z >= 40 && z <= 41);
      assertEquals(pocket, c.caught(f), "facet " + f + " at height " + z);
      if (pocket) {
        assertEquals(z < 10 ? 0 : 1, c.place(f));
      }
    }
  }

  /**
   * A torus along its axis has genus + 1 = 2 silhouette loops and is free (Elber, Chen, Cohen,
   * "Mold accessibility via Gauss map analysis", JCISE 5(2), 2005); a sphere has 1.
   */
  @Test
  void silhouetteLoops() {
    Opening torus = along(Shapes.torus(30, 10, 90, 45), Vec3.Z).best();
    assertEquals(2, torus.silhouetteLoops());
    assertTrue(torus.free());
    assertEquals(1, along(Shapes.sphere(30, 60), new Vec3(1, 2, 3)).best().silhouetteLoops());
    assertEquals(1, along(Shapes.cylinder(30, 60, 60), Vec3.Z).best().silhouetteLoops());
    Opening across = along(Shapes.torus(30, 10, 90, 45), Vec3.X).best();
    assertFalse(across.free());
  }

  @Test
  void seamLevelAndDraw() {
    Opening cone = along(Shapes.cone(30, 60, 64), Vec3.Z).best();
    double foot = cone.seamLevel();
    // only the foot of a cone can carry the seam
    assertEquals(Shapes.cone(30, 60, 64).bounds().min().z(), foot, 0.2);
    assertEquals(60, cone.drawAbove(), 0.2);
    assertEquals(0, cone.drawBelow(), 0.2);
    assertEquals(0, cone.flatness(), 0.2);
    Opening cube = along(Shapes.cube(40), new Vec3(1, 1, 1)).best();
    // the six rim corners of a cube on its corner lie at +-side / (2 sqrt 3), closed form; the
    // rim's columns stand within a pixel of them
    assertEquals(40 / Math.sqrt(3), cube.flatness(), 1);
    // its rim edges rise by 1/sqrt(3) of their length, over sqrt(2/3): 35.26 degrees
    assertEquals(35.26, cube.seamSlope(), 5);
  }

  @Test
  void unusableModels() {
    TriMesh cube = Shapes.cube(10);
    int[] fewer = Arrays.copyOf(cube.tri(), cube.tri().length - 3);
    TriMesh open = new TriMesh(cube.xyz(), fewer);
    assertTrue(
        assertThrows(MeshException.class, () -> along(open, Vec3.Z))
            .getMessage()
            .contains("not closed"));
    assertThrows(MeshException.class, () -> along(cube.reversed(), Vec3.Z));
    assertThrows(MeshException.class, () -> along(new TriMesh(new double[0], new int[0]), Vec3.Z));
  }
}
