package org.castwright.seams;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

/** Seams of bodies whose best seams are known. */
class SeamsTest {

  private static final List<Vec3> UP_DOWN = List.of(Vec3.Z, Vec3.Z.negate());

  private static final SeamOptions COARSE =
      new SeamOptions(0.1, 1000, 3, 1, 0.2, 0.4, 35, 0.2, 5, 1e4, 20, 10, 1);

  /** Sums of some ten thousand facets in doubles. */
  private static final double ROUNDING = 1e-9;

  private static SeamResult seams(TriMesh mesh, List<Vec3> pulls, SeamOptions options) {
    SeamResult r = Seams.of(mesh, pulls, Wishes.NONE, options, Progress.NONE);
    tiles(mesh, r);
    return r;
  }

  /** The same surface: closed, area and volume kept, every facet exactly tiled by its children. */
  private static void tiles(TriMesh mesh, SeamResult r) {
    MeshCheck check = MeshCheck.of(r.mesh());
    assertTrue(check.closedManifold(), () -> check.faults().toString());
    assertEquals(1, r.mesh().volume() / mesh.volume(), ROUNDING);
    double[] area = new double[mesh.triangleCount()];
    for (int f = 0; f < r.parents().length; f++) {
      Vec3 a = r.mesh().areaVector(f);
      Vec3 whole = mesh.areaVector(r.parents()[f]);
      assertTrue(a.dot(whole) > 0, "a flipped or empty part");
      area[r.parents()[f]] += a.length();
    }
    for (int f = 0; f < area.length; f++) {
      assertEquals(1, area[f] / mesh.areaVector(f).length(), ROUNDING);
    }
  }

  private static double length(SeamResult r) {
    double sum = 0;
    for (SeamLine line : r.lines()) {
      int[] v = line.vertices();
      for (int i = 0; i + (line.closed() ? 0 : 1) < v.length; i++) {
        sum += r.mesh().vertex(v[i]).minus(r.mesh().vertex(v[(i + 1) % v.length])).length();
      }
    }
    assertEquals(r.measures().lengthMm(), sum, ROUNDING * sum);
    return sum;
  }

  @Test
  void aSphereInAnyPositionPartsNearAGreatCircle() {
    double radius = 20;
    double release = 0.2;
    TriMesh sphere = Shapes.sphere(radius, 96).toLocal(Frame.along(new Vec3(1, 2, 3)));
    SeamResult r = seams(sphere, UP_DOWN, SeamOptions.DEFAULT.withRelease(release));
    // closed form: the free band reaches down to where the sphere is two columns narrower; every
    // closed line in it that parts top from bottom is about as long as the parallels at its rims
    double rim = radius - 2 * release;
    double circle = 2 * Math.PI * radius;
    assertTrue(length(r) <= circle * 1.001, "mm: " + length(r) + " of " + circle);
    assertTrue(length(r) >= 2 * Math.PI * rim * 0.995, "mm: " + length(r));
    assertEquals(1, r.lines().size());
    assertEquals(0, r.junctions().length);
    assertTrue(r.measures().lengthMm() < 0.97 * r.measures().firstLengthMm());
    double reach = Math.sqrt(radius * radius - rim * rim);
    for (int v : r.lines().get(0).vertices()) {
      assertTrue(Math.abs(r.mesh().vertex(v).z()) <= reach);
    }
    assertEquals(List.of(1, 1), r.measures().patches());
  }

  @Test
  void aCylinderPartsAlongAShortestLoop() {
    int sides = 60;
    SeamResult r = seams(Shapes.cylinder(15, 40, sides), UP_DOWN, SeamOptions.DEFAULT);
    // perimeter of the regular polygon
    double polygon = sides * 2 * 15 * StrictMath.sin(Math.PI / sides);
    assertEquals(polygon, length(r), 1e-6 * polygon);
    assertEquals(0, r.measures().caughtMm2(), 1e-9);
  }

  @Test
  void aCubePartsAlongFourEdges() {
    SeamResult r = seams(Shapes.cube(30), UP_DOWN, SeamOptions.DEFAULT);
    assertEquals(120, length(r), 1e-6);
    assertEquals(List.of(1, 1), r.measures().patches());
  }

  @Test
  void threePullsMeetInCleanJunctions() {
    TriMesh sphere = Shapes.sphere(20, 64).toLocal(Frame.along(new Vec3(3, 1, 2)));
    List<Vec3> pulls =
        List.of(
            new Vec3(0, 0, 1),
            new Vec3(StrictMath.sqrt(0.75), 0, -0.5),
            new Vec3(-StrictMath.sqrt(0.75), 0, -0.5));
    SeamResult r = seams(sphere, pulls, SeamOptions.DEFAULT);
    // every point of a convex body is free along at least one of three pulls that span the plane,
    // save near the two poles of the plane's normal, where all three graze
    assertEquals(2, r.junctions().length);
    assertEquals(3, r.lines().size());
    // three half great circles, as short as they can be: 3 pi R
    assertEquals(3 * Math.PI * 20, length(r), 0.06 * 3 * Math.PI * 20);
  }

  @Test
  void sameInputGivesTheSameNumbers() {
    TriMesh torus = Shapes.torus(20, 7, 48, 24).toLocal(Frame.along(new Vec3(2, 1, 5)));
    SeamResult a = seams(torus, UP_DOWN, SeamOptions.DEFAULT);
    SeamResult b = seams(torus, UP_DOWN, SeamOptions.DEFAULT);
    assertArrayEquals(a.mesh().xyz(), b.mesh().xyz());
    assertArrayEquals(a.mesh().tri(), b.mesh().tri());
    assertArrayEquals(a.pieces(), b.pieces());
    // a torus castable along d has genus + 1 = 2 silhouette loops (Elber, Chen, Cohen 2005)
    assertTrue(a.lines().size() >= 2);
  }

  @Test
  void whatNoPullFreesIsMeasured() {
    // a cap on a stem on a disc: along its axis the stem, the cap's underside and the disc below
    // the cap are caught; areas of regular prisms and rings
    int sides = 64;
    TriMesh mushroom =
        Primitives.revolve(new double[] {20, 0, 20, 5, 5, 5, 5, 15, 12, 15, 12, 20}, sides);
    double disc = sides * StrictMath.sin(2 * Math.PI / sides) / 2;
    double stem = sides * 2 * 5 * StrictMath.sin(Math.PI / sides) * 10;
    double caught = 2 * disc * (12 * 12 - 5 * 5) + stem;
    SeamResult r = seams(mushroom, UP_DOWN, SeamOptions.DEFAULT);
    assertEquals(caught, r.measures().hiddenMm2(), 0.02 * caught);
    assertEquals(caught, r.measures().caughtMm2(), 0.02 * caught);
    // from the side all of it is free: a piece to the left, one to the right
    SeamResult free = seams(mushroom, List.of(Vec3.X, Vec3.X.negate()), SeamOptions.DEFAULT);
    assertEquals(0, free.measures().hiddenMm2(), 0.01 * caught);
    assertEquals(0, free.measures().caughtMm2(), 0.01 * caught);
    assertEquals(List.of(1, 1), free.measures().patches());
  }

  @Test
  void shorteningNeverRaisesTheCost() {
    TriMesh mesh = Shapes.ellipsoid(25, 14, 9, 60).toLocal(Frame.along(new Vec3(1, -2, 1)));
    SeamOptions options = SeamOptions.DEFAULT.withRelease(0.15);
    Freedom freedom = ShadowFreedom.of(mesh, UP_DOWN, 0.15, 2000);
    FacetFacts facts =
        Refinement.of(
            Tiling.whole(mesh), null, UP_DOWN, freedom, Wishes.NONE, options, Progress.NONE);
    SurfaceEdges edges = SurfaceEdges.of(facts.mesh());
    byte[] label = FacetLabels.of(facts, edges, options, Progress.NONE);
    SeamCurve curve = CurveStart.of(facts, label, freedom, options);
    double[] last = {Double.POSITIVE_INFINITY};
    int[] rounds = {0};
    CurveShortening.run(
        curve,
        (stage, share) -> {
          double cost = 0;
          for (int f = 0; f < curve.base.length; f++) {
            cost += curve.cost(f);
          }
          for (double c : curve.caught) {
            cost += c;
          }
          assertTrue(cost <= last[0] + 1e-9);
          last[0] = cost;
          rounds[0]++;
        });
    assertTrue(rounds[0] > 3);
  }

  @Test
  void freedomMayComeFromElsewhere() {
    // a piece may have only its half: the seam is then the border itself
    Freedom halves =
        new Freedom() {
          @Override
          public int pieces() {
            return 2;
          }

          @Override
          public int at(double x, double y, double z) {
            return z >= 3 ? 1 : 2;
          }
        };
    TriMesh cylinder = Shapes.cylinder(15, 40, 48);
    SeamResult r =
        Seams.of(cylinder, UP_DOWN, halves, Wishes.NONE, SeamOptions.DEFAULT, Progress.NONE);
    tiles(cylinder, r);
    assertEquals(1, r.lines().size());
    for (int v : r.lines().get(0).vertices()) {
      assertEquals(3, r.mesh().vertex(v).z(), 0.05);
    }
  }

  @Test
  void everySplitIsAnExactTilingWhateverThePulls() {
    SplittableRandom random = new SplittableRandom(97);
    List<TriMesh> shapes =
        List.of(
            Shapes.cube(20),
            Shapes.cone(12, 25, 20),
            Shapes.hourglass(12, 5, 30, 24),
            Shapes.torus(14, 5, 30, 14),
            Shapes.trefoil(6, 2, 70, 8),
            Shapes.ellipsoid(14, 9, 20, 26));
    int junctions = 0;
    for (int i = 0; i < 18; i++) {
      List<Vec3> pulls = new ArrayList<>();
      for (int k = 1 + random.nextInt(5); k >= 0; k--) {
        Vec3 d =
            new Vec3(
                random.nextDouble() - 0.5, random.nextDouble() - 0.5, random.nextDouble() - 0.5);
        pulls.add(d.unit());
      }
      SeamResult r = seams(shapes.get(i % shapes.size()), pulls, COARSE);
      length(r);
      junctions += r.junctions().length;
      for (SeamLine line : r.lines()) {
        assertTrue(line.left() != line.right());
      }
    }
    assertTrue(junctions > 15, junctions + " junctions");
  }

  @Test
  void facetsFarFromTheSeamsStayAsTheyWere() {
    TriMesh torus = Shapes.torus(20, 7, 48, 24).toLocal(Frame.along(new Vec3(2, 1, 5)));
    SeamResult r = seams(torus, UP_DOWN, SeamOptions.DEFAULT);
    int[] children = new int[torus.triangleCount()];
    for (int p : r.parents()) {
      children[p]++;
    }
    // what lies between two facets' distance of a seam may be split, no more
    int split = 0;
    for (int p = 0; p < children.length; p++) {
      split += children[p] > 1 ? 1 : 0;
    }
    int seamVertices = 0;
    for (SeamLine line : r.lines()) {
      seamVertices += line.vertices().length;
    }
    assertTrue(split < 4 * seamVertices && split < children.length / 2, split + " split");
    for (int f = 0; f < r.parents().length; f++) {
      int p = r.parents()[f];
      if (children[p] == 1) {
        assertEquals(torus.areaVector(p).length(), r.mesh().areaVector(f).length(), ROUNDING);
      }
    }
  }

  @Test
  void refusesOpenMeshesAndStopsWhenAsked() {
    TriMesh cube = Shapes.cube(10);
    TriMesh open = new TriMesh(cube.xyz(), Arrays.copyOf(cube.tri(), cube.tri().length - 3));
    assertThrows(
        MeshException.class,
        () -> Seams.of(open, UP_DOWN, Wishes.NONE, SeamOptions.DEFAULT, Progress.NONE));
    Progress stop =
        (stage, share) -> {
          throw new Progress.CancelledException();
        };
    assertThrows(
        Progress.CancelledException.class,
        () -> Seams.of(cube, UP_DOWN, Wishes.NONE, SeamOptions.DEFAULT, stop));
  }
}
