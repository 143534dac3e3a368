package org.castwright.division;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.progress.Progress;
import org.castwright.side.Drilled;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** A ball with three blind holes, and a plain one in two halves. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DivisionTest {

  private static final double WALL = 8;

  /** Width of catch that counts as free, mm. */
  private static final double RELEASE = 0.05;

  private static final SolidKernel KERNEL = new ManifoldKernel();

  private TriMesh casting;
  private Solid space;
  private Solid body;
  private Division division;
  private List<Solid> pieces;

  @BeforeAll
  void divide() {
    casting = Drilled.threeWayBall(KERNEL);
    TriMesh block = BlockBox.around(casting.bounds(), WALL, WALL).mesh();
    body = KERNEL.solid("casting", casting);
    space = KERNEL.difference("space", KERNEL.solid("block", block), List.of(body));
    division =
        Division.of(
            casting, block.bounds(), Drilled.threeWays(), Asked.nothing(3), RELEASE, Progress.NONE);
    pieces = division.cut(space, KERNEL, Progress.NONE);
  }

  @Test
  void piecesFillTheSpace() {
    double sum = pieces.stream().mapToDouble(Solid::volume).sum();
    assertEquals(3, pieces.size());
    assertEquals(space.volume(), sum, 1e-6 * space.volume());
    for (Solid p : pieces) {
      assertTrue(p.volume() > 0.15 * space.volume(), p + " takes a fair share");
    }
  }

  /** R1 and R2 of what makes a rigid mold open: past the casting and past every later piece. */
  @Test
  void everyPieceLeavesInOrder() {
    for (int i = 0; i < pieces.size(); i++) {
      for (double t : new double[] {0.2, 2, 10}) {
        Vec3 way = division.pulls().get(i).times(t);
        assertEquals(0, KERNEL.overlap(pieces.get(i), way, body), 0.5, "casting after " + t);
        for (Solid later : pieces.subList(i + 1, pieces.size())) {
          assertEquals(0, KERNEL.overlap(pieces.get(i), way, later), 1e-3, "piece after " + t);
        }
      }
    }
  }

  @Test
  void sheetsTellWhichPieceHoldsAPoint() {
    Random random = new Random(7);
    Box3 b = space.bounds();
    double[] share = new double[pieces.size()];
    int n = 0;
    double reach = 17;
    for (int k = 0; k < 20_000; k++) {
      Vec3 p =
          new Vec3(
              b.min().x() + random.nextDouble() * b.size().x(),
              b.min().y() + random.nextDouble() * b.size().y(),
              b.min().z() + random.nextDouble() * b.size().z());
      if (p.length() > reach) {
        share[division.pieceAt(p)]++;
        n++;
      }
    }
    for (int i = 0; i < share.length; i++) {
      assertEquals(pieces.get(i).volume() / space.volume(), share[i] / n, 0.03);
    }
  }

  /** The seam of a ball between two opposite pulls is its equator, where a catch begins. */
  @Test
  void aBallPartsAtItsEquator() {
    double radius = 20;
    TriMesh ball = Primitives.sphere(radius, 96);
    Box3 block = BlockBox.around(ball.bounds(), WALL, WALL).mesh().bounds();
    List<Vec3> pulls = List.of(Vec3.Z, Vec3.Z.negate());
    Division two = Division.of(ball, block, pulls, Asked.nothing(2), RELEASE, Progress.NONE);
    double length = 0;
    for (double[] line : SeamLines.of(two)) {
      for (int i = 3; i < line.length; i += 3) {
        Vec3 a = new Vec3(line[i - 3], line[i - 2], line[i - 1]);
        Vec3 p = new Vec3(line[i], line[i + 1], line[i + 2]);
        length += p.minus(a).length();
        double overhang = radius - Math.sqrt(radius * radius - p.z() * p.z());
        // what is free is told to within a factor of two of the release
        assertTrue(overhang <= 2 * RELEASE, "the seam stands " + p.z() + " off the equator");
      }
    }
    assertTrue(length > 0.95 * 2 * Math.PI * radius, "length " + length);
    assertTrue(length < 1.1 * 2 * Math.PI * radius, "length " + length);
  }

  @Test
  void levelingMakesAPlaceFlat() {
    double radius = 20;
    TriMesh ball = Primitives.sphere(radius, 48);
    Box3 block = BlockBox.around(ball.bounds(), WALL, WALL).mesh().bounds();
    Division two =
        Division.of(
            ball,
            block,
            List.of(Vec3.Z, Vec3.Z.negate()),
            Asked.nothing(2),
            RELEASE,
            Progress.NONE);
    Sheet sheet = two.sheets().get(0);
    sheet.level(22, 22, 3, 2);
    double z = sheet.heightAt(22, 22);
    for (int k = 0; k < 8; k++) {
      double a = Math.PI * k / 4;
      assertEquals(z, sheet.heightAt(22 + 2 * Math.cos(a), 22 + 2 * Math.sin(a)), 1e-9);
    }
  }
}
