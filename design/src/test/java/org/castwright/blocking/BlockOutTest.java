package org.castwright.blocking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.repair.MeshHealth;
import org.castwright.side.Drilled;
import org.castwright.side.SidePieces;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.castwright.survey.Survey;
import org.castwright.survey.SurveyOptions;
import org.junit.jupiter.api.Test;

/** What is filled against closed forms, and that what comes of it opens in two pieces. */
class BlockOutTest {

  private static final double RELEASE = 0.05;
  private static final SolidKernel KERNEL = new ManifoldKernel();

  /** Fills along an axis and checks all that must hold of any filling. */
  private static BlockOut filled(TriMesh model, Vec3 pull) {
    BlockOut b = BlockOut.of(model, pull, model.volume(), KERNEL, Progress.NONE);
    TriMesh out = FloatGrid.snap(b.mesh());
    assertEquals(1, MeshCheck.of(out).components());
    assertTrue(MeshCheck.of(out).closedManifold());
    assertEquals(0, MeshHealth.of(out, Progress.NONE).selfIntersectingPairs());
    Solid body = KERNEL.solid("filled", out);
    Solid outside = KERNEL.difference("lost", KERNEL.solid("model", model), List.of(body));
    // but for splinters at the ends of fillings, whose corners were drawn together
    assertEquals(0, outside.volume(), 1e-6 * model.volume(), "it holds all of the model");
    assertEquals(out.volume() - model.volume(), b.addedMm3(), 1e-2);
    assertTrue(SidePieces.trapped(out.toLocal(Frame.along(pull)), RELEASE) < 1, "it opens");
    return b;
  }

  /** The caught space of an hourglass along its axis is the cylinder round it less itself. */
  @Test
  void theWaistOfAnHourglassIsFilled() {
    int sides = 64;
    TriMesh glass = Shapes.hourglass(12, 7, 30, sides);
    double cylinder = 30 * 12 * 12 * sides / 2.0 * Math.sin(2 * Math.PI / sides);
    BlockOut b = filled(glass, Vec3.Z);
    double caught = cylinder - glass.volume();
    assertEquals(caught, b.caughtMm3(), 0.005 * caught);
    assertEquals(1, b.places().size());
    FilledPlace place = b.places().get(0);
    assertEquals(0, place.center().length(), 0.05);
    assertEquals(30, place.heightMm(), 0.3, "the gap is as high as the glass at the rim");
    // the filling goes four columns and up to a step of three past the rim, and its walls lean by
    // half
    // a degree toward the middle
    double skin = 7 * 0.03 + 15 * Math.tan(Math.toRadians(0.5)) / 2;
    double slope = 2 * Math.PI * 12 * 30 * skin;
    assertTrue(b.addedMm3() > caught && b.addedMm3() < caught + slope, b.addedMm3() + " mm³");
  }

  /** A hole of 10 mm along x through 60 mm is caught along z, the one along z is not. */
  @Test
  void aHoleAcrossThePullIsFilledAndOneAlongItIsNot() {
    BlockOut b = filled(Drilled.twoHoles(KERNEL), Vec3.Z);
    double hole = 60 * 25 * 24 * Math.sin(Math.toRadians(7.5));
    assertEquals(hole, b.caughtMm3(), 0.005 * hole);
    assertEquals(1, MeshCheck.of(b.mesh()).genus());
  }

  /**
   * A block with a hole across the pull, which is to be filled, and two slots from its top: what
   * would stand in the narrow one as a blade of the mold is filled too.
   */
  @Test
  void aNarrowSlotIsFilledAndAWideOneStays() {
    TriMesh block = Drilled.twoHoles(KERNEL);
    for (double wide : new double[] {0.5, 2.5}) {
      TriMesh slot =
          Primitives.box(new Vec3(-20 - wide / 2, -15, 5), new Vec3(-20 + wide / 2, 15, 20));
      TriMesh model =
          FloatGrid.snap(
              KERNEL
                  .difference(
                      "slotted", KERNEL.solid("block", block), List.of(KERNEL.solid("slot", slot)))
                  .mesh());
      Solid out = KERNEL.solid("filled", filled(model, Vec3.Z).mesh());
      double open =
          slot.volume() * 10 / 15 - KERNEL.overlap(KERNEL.solid("slot", slot), Vec3.ZERO, out);
      double share = open / (slot.volume() * 10 / 15);
      // a crease stays as a cone of slope 3 fits in, two places of 0.09 mm drawn back, and so much
      // at both ends
      double crease = (3 * wide / 4 + 2 * 0.09 * 3) / 10 + 4 * 0.09 / 30;
      assertTrue(wide < 1 ? share < crease : share > 0.7, share + " of " + wide + " mm is open");
    }
  }

  /**
   * A bar that stands out of a block higher up, with a hole across the pull: the seam climbs to it,
   * and no curtain hangs down from its rims to a seam that passes below.
   */
  @Test
  void noCurtainHangsFromABar() {
    double[] bar = {0, -25, 4, -25, 4, 25, 0, 25};
    TriMesh upright = Primitives.revolve(bar, 48);
    double[] v = upright.xyz().clone();
    for (int i = 0; i < v.length; i += 3) {
      double x = v[i];
      v[i] = v[i + 2] + 45;
      v[i + 2] = 10 - x;
    }
    Solid block = KERNEL.solid("block", Drilled.twoHoles(KERNEL));
    Solid rod = KERNEL.solid("bar", FloatGrid.snap(new TriMesh(v, upright.tri())));
    TriMesh model = FloatGrid.snap(KERNEL.union("barred", List.of(block, rod)).mesh());
    double hole = filled(Drilled.twoHoles(KERNEL), Vec3.Z).addedMm3();
    double more = filled(model, Vec3.Z).addedMm3() - hole;
    assertTrue(more < 40, more + " mm³ more than in the block alone");
  }

  /** Clumps of balls along any axis. */
  @Test
  void clumpsOfBallsOpen() {
    SplittableRandom random = new SplittableRandom(41);
    for (int n = 0; n < 6; n++) {
      List<Solid> balls = new ArrayList<>();
      Vec3 at = Vec3.ZERO;
      for (int k = 0; k < 5; k++) {
        double r = 5 + 5 * random.nextDouble();
        balls.add(KERNEL.solid("ball", Shapes.sphere(r, 40).translated(at)));
        at = at.plus(direction(random).times(0.8 * r));
      }
      TriMesh clump = FloatGrid.snap(KERNEL.union("clump", balls).mesh());
      Vec3 pull = direction(random);
      BlockOut b = filled(clump, pull);
      double before =
          Survey.along(clump, pull, SurveyOptions.DEFAULT, Progress.NONE).best().trappedVolume();
      assertEquals(before, b.caughtMm3(), 0.02 * before + 0.2);
    }
  }

  /**
   * The outline of an upright cylinder with uneven walls goes up and down all of them; the seam
   * goes round it.
   */
  @Test
  void unevenWallsDoNotBendTheSeam() {
    TriMesh drum = drum(20, 30, new SplittableRandom(42));
    double round = 2 * Math.PI * 20;
    double before = seam(drum);
    assertTrue(before > 1.5 * round, before + " mm before");
    double after = seam(filled(drum, Vec3.Z).mesh());
    assertTrue(after > 0.9 * round && after < 1.2 * round, after + " mm after");
  }

  /** A cylinder whose corners along its wall stand up to 0.1 mm off. */
  private static TriMesh drum(double radius, double height, SplittableRandom random) {
    int sides = 60;
    int rows = 9;
    MeshBuilder m = new MeshBuilder();
    for (int j = 0; j < rows; j++) {
      for (int i = 0; i < sides; i++) {
        double a = 2 * Math.PI * (i + 0.5 * j) / sides;
        double r = radius + 0.2 * random.nextDouble() - 0.1;
        m.vertex(r * Math.cos(a), r * Math.sin(a), height * (j / (rows - 1.0) - 0.5));
      }
    }
    int low = m.vertex(0, 0, -height / 2);
    int high = m.vertex(0, 0, height / 2);
    int top = (rows - 1) * sides;
    for (int i = 0; i < sides; i++) {
      int next = (i + 1) % sides;
      m.triangle(low, next, i);
      m.triangle(high, top + i, top + next);
      for (int o = 0; o < top; o += sides) {
        m.triangle(o + i, o + next, o + sides + i);
        m.triangle(o + next, o + sides + next, o + sides + i);
      }
    }
    return FloatGrid.snap(m.build());
  }

  /**
   * Length of the edges between facets that look up and facets that look down, half way up a drum.
   */
  private static double seam(TriMesh mesh) {
    Map<Long, Integer> edges = new HashMap<>();
    double sum = 0;
    for (int c = 0; c < 3 * mesh.triangleCount(); c++) {
      int f = c / 3;
      long a = mesh.tri()[c];
      long b = mesh.tri()[3 * f + (c + 1) % 3];
      Integer g = edges.remove(b << 32 | a);
      if (g == null) {
        edges.put(a << 32 | b, f);
      } else if ((mesh.areaVector(f).z() > 0) != (mesh.areaVector(g).z() > 0)) {
        Vec3 p = mesh.vertex((int) a);
        Vec3 q = mesh.vertex((int) b);
        sum += Math.max(Math.abs(p.z()), Math.abs(q.z())) < 5 ? p.minus(q).length() : 0;
      }
    }
    return sum;
  }

  private static Vec3 direction(SplittableRandom random) {
    double z = 2 * random.nextDouble() - 1;
    double a = 2 * Math.PI * random.nextDouble();
    double s = Math.sqrt(1 - z * z);
    return new Vec3(s * Math.cos(a), s * Math.sin(a), z);
  }
}
