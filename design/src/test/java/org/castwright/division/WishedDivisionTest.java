package org.castwright.division;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.progress.Progress;
import org.castwright.seams.Mark;
import org.castwright.seams.Region;
import org.castwright.seams.Wish;
import org.castwright.seams.Wishes;
import org.junit.jupiter.api.Test;

/** A ball and three pulls in a plane, 120° apart: each sees half of it, so seams have room. */
class WishedDivisionTest {

  private static final double RADIUS = 20;
  private static final double RELEASE = 0.05;
  private static final TriMesh BALL = Primitives.sphere(RADIUS, 64);
  private static final Box3 BLOCK = BlockBox.around(BALL.bounds(), 10, 10).mesh().bounds();

  private static Vec3 at(double degrees) {
    double a = Math.toRadians(degrees);
    return new Vec3(StrictMath.cos(a), StrictMath.sin(a), 0);
  }

  private static final List<Vec3> PULLS = List.of(at(0), at(120), at(240));

  private static Division divide(List<Integer> places, Wish... wishes) {
    Asked asked = new Asked(places, BALL, new Wishes(List.of(wishes)));
    return Division.of(BALL, BLOCK, PULLS, asked, RELEASE, Progress.NONE);
  }

  /** Share of the points round a place of the equator, within degrees of it, formed by a pull. */
  private static double formed(Division d, double degrees, double within, Vec3 pull) {
    int count = 0;
    int hits = 0;
    for (double a = -within; a <= within; a += 1) {
      for (double z = -3; z <= 3; z += 1) {
        Vec3 p = at(degrees + a).times(Math.sqrt(RADIUS * RADIUS - z * z)).plus(Vec3.Z.times(z));
        hits += d.pulls().get(d.pieceAt(p)).equals(pull) ? 1 : 0;
        count++;
      }
    }
    return (double) hits / count;
  }

  private static final List<Integer> ANY = List.of(-1, -1, -1);

  /** Left alone, a seam runs halfway between two pulls. */
  private static Region place(double degrees, double radius) {
    return new Region.Ball(at(degrees).times(RADIUS), radius);
  }

  @Test
  void noSeamRunsWhereNoneIsWished() {
    Division plain = divide(ANY);
    double first = formed(plain, 60, 8, PULLS.get(0));
    double second = formed(plain, 60, 8, PULLS.get(1));
    assertTrue(first > 0.1 && second > 0.1, "a seam there: " + first + ", " + second);
    assertEquals(1, first + second, 1e-9);

    Division wished = divide(ANY, Wish.of(place(60, 5), Mark.NO_SEAM));
    double most =
        Math.max(formed(wished, 60, 8, PULLS.get(0)), formed(wished, 60, 8, PULLS.get(1)));
    assertEquals(1, most, "one piece forms it all");
  }

  @Test
  void aFaceToBeShownKeepsTheSeamAway() {
    Division wished = divide(ANY, Wish.of(place(60, 5), Mark.SHOW));
    double most =
        Math.max(formed(wished, 60, 8, PULLS.get(0)), formed(wished, 60, 8, PULLS.get(1)));
    assertTrue(most > 0.95, "formed by one piece: " + most);
  }

  /** A preference for one piece would only draw the seams out. */
  @Test
  void aFaceThatNoPieceCanTakeWholeLeavesTheSeamsAlone() {
    Wish all = Wish.of(new Region.Ball(Vec3.ZERO, 2 * RADIUS), Mark.SHOW);
    assertEquals(border(divide(ANY)), border(divide(ANY, all)));
  }

  @Test
  void aPieceIsAskedForByItsPlaceInTheOrder() {
    // both pulls see the place; each in turn is asked for
    for (int n = 1; n <= 2; n++) {
      List<Integer> places = List.of(0, 1, -1);
      Division d = divide(places, Wish.piece(place(60, 5), n));
      assertEquals(PULLS.get(0), d.pulls().get(0));
      assertEquals(1, formed(d, 60, 8, PULLS.get(n - 1)), "piece " + n);
    }
  }

  /** Only the pull at 0° sees the place at 0° straight: so that pull has to leave third. */
  @Test
  void aPieceAskedForIsPutAtItsPlace() {
    Division d = divide(ANY, Wish.piece(place(0, 6), 3));
    assertEquals(PULLS.get(0), d.pulls().get(2));
    assertNotEquals(PULLS.get(0), d.pulls().get(0));
    assertEquals(1, formed(d, 0, 8, PULLS.get(0)));
  }

  @Test
  void seamsAreDrawnToWhereTheyMayHide() {
    // beside the seam at 60°, where both pulls still see the ball
    double side = 78;
    Wish hide = Wish.of(place(side, 4), Mark.HIDE);
    double before = border(divide(ANY));
    double after = border(divide(ANY, hide));
    assertTrue(Math.abs(before - 60) < 8, "left alone it runs at " + before);
    assertTrue(Math.abs(after - side) < Math.abs(before - side) - 3, before + " to " + after);
  }

  /** Degrees at which the piece of the pull at 0° ends on the equator. */
  private static double border(Division d) {
    double a = 20;
    while (a < 120 && d.pulls().get(d.pieceAt(at(a).times(RADIUS))).equals(PULLS.get(0))) {
      a += 0.5;
    }
    return a;
  }
}
