package org.castwright.seams;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.IntList;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

/** What the user asks for, on a cylinder whose seam could be anywhere on its wall. */
class WishedSeamsTest {

  private static final List<Vec3> UP_DOWN = List.of(Vec3.Z, Vec3.Z.negate());
  private static final double RADIUS = 15;
  private static final int SIDES = 48;
  private static final TriMesh CYLINDER = Shapes.cylinder(RADIUS, 40, SIDES);
  private static final double AROUND = SIDES * 2 * RADIUS * StrictMath.sin(Math.PI / SIDES);

  private static Region.Box slab(double from, double to) {
    return new Region.Box(new Vec3(-99, -99, from), new Vec3(99, 99, to));
  }

  private static SeamResult seams(Wish... wishes) {
    SeamResult r =
        Seams.of(
            CYLINDER, UP_DOWN, new Wishes(List.of(wishes)), SeamOptions.DEFAULT, Progress.NONE);
    assertTrue(MeshCheck.of(r.mesh()).closedManifold());
    return r;
  }

  private static double lowest(SeamResult r) {
    double z = Double.POSITIVE_INFINITY;
    for (SeamLine line : r.lines()) {
      for (int v : line.vertices()) {
        z = Math.min(z, r.mesh().vertex(v).z());
      }
    }
    return z;
  }

  private static double highest(SeamResult r) {
    double z = Double.NEGATIVE_INFINITY;
    for (SeamLine line : r.lines()) {
      for (int v : line.vertices()) {
        z = Math.max(z, r.mesh().vertex(v).z());
      }
    }
    return z;
  }

  @Test
  void noSeamWhereNoneMayRun() {
    SeamResult r = seams(Wish.of(slab(-15, 99), Mark.NO_SEAM));
    assertEquals(0, r.measures().noSeamMm(), 1e-9);
    assertTrue(highest(r) <= -14, "at " + highest(r));
    assertEquals(AROUND, r.measures().lengthMm(), 0.01 * AROUND);
  }

  @Test
  void aWishThatCannotBeMetIsMeasured() {
    SeamResult r = seams(Wish.of(slab(-99, 99), Mark.NO_SEAM));
    assertEquals(r.measures().lengthMm(), r.measures().noSeamMm(), 1e-9);
    assertEquals(AROUND, r.measures().lengthMm(), 0.01 * AROUND);
  }

  @Test
  void theSeamHidesWhereItMay() {
    SeamResult r = seams(Wish.of(slab(4, 8), Mark.HIDE));
    assertEquals(0, r.measures().visibleMm(), 1e-6);
    assertTrue(lowest(r) >= 3 && highest(r) <= 9);
    assertEquals(AROUND, r.measures().lengthMm(), 0.01 * AROUND);
  }

  @Test
  void showFacesAreLeftAlone() {
    SeamResult r = seams(Wish.of(slab(-99, 12), Mark.SHOW));
    assertEquals(0, r.measures().showMm(), 1e-6);
    assertEquals(0, r.measures().showShare(), 1e-9);
    assertTrue(lowest(r) >= 11);
  }

  @Test
  void aPieceFormsTheRegionItIsWishedFor() {
    SeamResult r = seams(Wish.piece(slab(2, 10), 2), Wish.piece(slab(-10, -6), 2));
    assertEquals(0, r.measures().wishMissedMm2(), 2);
    assertTrue(lowest(r) >= 9, "at " + lowest(r));
  }

  @Test
  void aPieceThatCannotFormARegionIsSaid() {
    // the top is turned away from pull 2: 4 mm round the axis cannot be had
    SeamResult r = seams(Wish.piece(new Region.Ball(new Vec3(0, 0, 20), 4), 2));
    assertEquals(Math.PI * 16, r.measures().wishMissedMm2(), 0.15 * Math.PI * 16);
    assertEquals(0, r.measures().caughtMm2(), 1e-9);
  }

  @Test
  void paintedFacetsAreTheCastingsOwn() {
    // paint the wall's facets between two planes of a cylinder with rings at many heights
    double[] profile = new double[42];
    for (int i = 0; i < 21; i++) {
      profile[2 * i] = RADIUS;
      profile[2 * i + 1] = 2 * i;
    }
    TriMesh ringed = Primitives.revolve(profile, SIDES);
    IntList painted = new IntList();
    for (int f = 0; f < ringed.triangleCount(); f++) {
      double z = 0;
      for (int k = 0; k < 3; k++) {
        z += ringed.vertex(ringed.tri()[3 * f + k]).z() / 3;
      }
      if (z > 6 && z < 40) {
        painted.add(f);
      }
    }
    Wishes wishes =
        new Wishes(List.of(Wish.of(new Region.Painted(painted.toArray()), Mark.NO_SEAM)));
    SeamResult r = Seams.of(ringed, UP_DOWN, wishes, SeamOptions.DEFAULT, Progress.NONE);
    assertEquals(0, r.measures().noSeamMm(), 1e-9);
    assertTrue(highest(r) <= 6 + 1e-9);
    MeshException e =
        assertThrows(
            MeshException.class,
            () -> Seams.of(CYLINDER, UP_DOWN, wishes, SeamOptions.DEFAULT, Progress.NONE));
    assertTrue(e.getMessage().contains("paints facet"));
  }

  @Test
  void wishesMayBeMadeInAnotherFrame() {
    Wishes moved =
        new Wishes(List.of(Wish.of(slab(104, 108), Mark.HIDE)))
            .placed(p -> p.plus(new Vec3(0, 0, 100)));
    SeamResult r = Seams.of(CYLINDER, UP_DOWN, moved, SeamOptions.DEFAULT, Progress.NONE);
    assertEquals(0, r.measures().visibleMm(), 1e-6);
    assertTrue(lowest(r) >= 3 && highest(r) <= 9);
  }
}
