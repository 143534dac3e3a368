package org.castwright.side;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.parting.PartingOptions;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

/** Side pieces of shapes whose number can be told by argument. */
class SidePiecesTest {

  private static final double WALL = 8;
  private static final SolidKernel KERNEL = new ManifoldKernel();

  private static SidePieces of(TriMesh casting, int most) {
    return of(casting, most, false);
  }

  private static SidePieces of(TriMesh casting, int most, boolean early) {
    BlockBox box = BlockBox.around(casting.bounds(), WALL, WALL);
    PartingOptions o = PartingOptions.DEFAULT;
    return SidePieces.of(casting, box, most, 1, early, o, KERNEL, Progress.NONE);
  }

  /** Every piece leaves past the casting and all later ones, and takes nothing twice. */
  private static void comesApart(SidePieces sides, TriMesh casting) {
    Solid body = KERNEL.solid("casting", casting);
    for (int i = 0; i < sides.pieces().size(); i++) {
      SidePiece p = sides.pieces().get(i);
      for (double t : new double[] {0, 0.1, 1, 5, 20}) {
        Vec3 way = p.pull().times(t);
        assertEquals(0, KERNEL.overlap(p.body(), way, body), 0.01, "piece " + i + " after " + t);
        for (SidePiece later : sides.pieces().subList(i + 1, sides.pieces().size())) {
          assertEquals(0, KERNEL.overlap(p.body(), way, later.body()), 0.01);
        }
      }
    }
  }

  /** Holes along x are open to ±x only: with main pieces along z, one core for each direction. */
  @Test
  void aThroughHoleTakesOneCore() {
    TriMesh casting = Drilled.twoHoles(KERNEL);
    SidePieces sides = of(casting, 6);
    assertEquals(1, sides.pieces().size());
    assertEquals(1, Math.abs(sides.pieces().get(0).pull().x()), 1e-9);
    // the hole along x: a 48-gon of radius 5 over 60 mm, area of the unit polygon 24 sin 7.5°
    double hole = 60 * 25 * 24 * Math.sin(Math.toRadians(7.5));
    assertEquals(hole, sides.trappedMm3(), 0.02 * hole);
    assertTrue(sides.leftMm3() <= 1, "left " + sides.leftMm3());
    assertTrue(sides.pieces().get(0).body().volume() > hole);
    comesApart(sides, casting);
  }

  /** Each blind hole opens one way only, and the main pieces free the two along z. */
  @Test
  void fourBlindHolesTakeFourPieces() {
    TriMesh casting = Drilled.sixBlindHoles(KERNEL);
    SidePieces sides = of(casting, 6);
    assertEquals(4, sides.pieces().size());
    double x = 0;
    double y = 0;
    for (SidePiece p : sides.pieces()) {
      x += Math.abs(p.pull().x());
      y += Math.abs(p.pull().y());
    }
    assertEquals(2, x, 1e-9);
    assertEquals(2, y, 1e-9);
    assertTrue(sides.leftMm3() <= 1, "left " + sides.leftMm3());
    comesApart(sides, casting);
  }

  /**
   * Two plugs cannot free four blind holes: then none is cut. One or two that can are cut alike.
   */
  @Test
  void aHopelessSearchDoesNotBegin() {
    SidePieces none = of(Drilled.sixBlindHoles(KERNEL), 2, true);
    assertEquals(0, none.pieces().size());
    assertEquals(none.trappedMm3(), none.leftMm3(), 1e-9);
    assertEquals(4, of(Drilled.sixBlindHoles(KERNEL), 4, true).pieces().size());
    for (int most = 1; most <= 2; most++) {
      SidePieces one = of(Drilled.twoHoles(KERNEL), most, true);
      assertEquals(of(Drilled.twoHoles(KERNEL), most).leftMm3(), one.leftMm3(), 1e-9);
      assertEquals(1, one.pieces().size());
    }
  }

  @Test
  void noMoreThanAskedAndWhatIsLeftIsSaid() {
    TriMesh casting = Drilled.sixBlindHoles(KERNEL);
    SidePieces sides = of(casting, 2);
    assertEquals(2, sides.pieces().size());
    assertEquals(sides.trappedMm3() / 2, sides.leftMm3(), 0.02 * sides.trappedMm3());
  }

  @Test
  void aFreeCastingHasNone() {
    TriMesh ball = org.castwright.mesh.Primitives.sphere(20, 32);
    SidePieces sides = of(ball, 6);
    assertEquals(List.of(), sides.pieces());
    assertEquals(0, sides.trappedMm3());
  }

  /** A vase with a hollow foot: halves to the sides and a plug below (common practice). */
  @Test
  void aVaseLiesDownAndGetsAFootPlug() {
    TriMesh vase = Drilled.vase();
    Vec3 axis = MainAxis.of(vase, new Vec3(0.07, 0.69, 0.72).unit(), 0.05, Progress.NONE);
    assertEquals(0, axis.z(), 1e-6, "halves leave to the sides");
    Frame frame = Frame.along(axis);
    TriMesh lying = org.castwright.mesh.FloatGrid.snap(vase.toLocal(frame));
    SidePieces sides = of(lying, 6);
    assertEquals(1, sides.pieces().size());
    assertEquals(-1, frame.toWorld(sides.pieces().get(0).pull()).z(), 1e-6);
    comesApart(sides, lying);
  }

  @Test
  void theCubeWithSixHolesIsPulledAlongAnAxis() {
    TriMesh casting = Drilled.sixBlindHoles(KERNEL);
    Vec3 axis = MainAxis.of(casting, new Vec3(1, 1, 1).unit(), 0.05, Progress.NONE);
    double most = Math.max(Math.abs(axis.x()), Math.max(Math.abs(axis.y()), Math.abs(axis.z())));
    assertEquals(1, most, 1e-6);
  }
}
