package org.castwright.proof;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;

/**
 * How a piece comes off in an unsteady hand: whether it also leaves past all that is still there
 * when its pull is turned by 1° and 2° to each of four sides. A direction works when no lip and no
 * spot is caught by more than the opening allows. Straight walls along the pull (bores, walls
 * without draft) never pass, so by default no share is asked and the answer is only reported.
 */
final class ShakeCheck {

  private static final int[] DEGREES = {1, 2};
  private static final int SIDES = 4;

  /**
   * Columns along the longer side of the block: lips are found along edges whatever the grid, so
   * this is only for what no edge shows.
   */
  private static final int ACROSS = 120;

  private final Body block;
  private final List<Body> bodies;
  private final ProofLimits limits;

  ShakeCheck(Body block, List<Body> bodies, ProofLimits limits) {
    this.block = block;
    this.bodies = bodies;
    this.limits = limits;
  }

  /**
   * Shakes one piece.
   *
   * @param piece number of the body that moves
   * @param pull its unit direction
   * @param left numbers of the bodies still there, its own among them
   */
  ProofCheck of(int piece, Vec3 pull, int[] left) {
    List<Try> tries =
        IntStream.range(0, DEGREES.length * SIDES)
            .parallel()
            .mapToObj(i -> attempt(piece, turned(pull, i), left))
            .toList();
    int works = (int) tries.stream().filter(t -> t.by < 0).count();
    StringBuilder words = new StringBuilder(bodies.get(piece).name());
    words.append(" also leaves along ");
    for (int k = 0; k < DEGREES.length; k++) {
      List<Try> ring = tries.subList(k * SIDES, (k + 1) * SIDES);
      long free = ring.stream().filter(t -> t.by < 0).count();
      words
          .append(k == 0 ? "" : " and ")
          .append(String.format(Locale.ROOT, "%d of %d directions %d°", free, SIDES, DEGREES[k]));
    }
    words.append(" off its pull");
    tries.stream()
        .filter(t -> t.by >= 0)
        .findFirst()
        .ifPresent(
            t ->
                words
                    .append("; otherwise it is caught by ")
                    .append(bodies.get(t.by).name())
                    .append(", first near ")
                    .append(Say.place(t.where)));
    double share = (double) works / tries.size();
    words.append(".");
    return new ProofCheck(
        "shake: " + bodies.get(piece).name(),
        share >= limits.shakeShare(),
        share,
        limits.shakeShare(),
        "of the directions at least",
        words.toString());
  }

  /** What catches the piece, or −1, and where. */
  private record Try(int by, Vec3 where) {}

  private static Vec3 turned(Vec3 pull, int i) {
    Frame f = Frame.along(pull);
    Vec3 side = i % 2 == 0 ? f.u() : f.v();
    double angle = Math.toRadians(DEGREES[i / SIDES]) * (i % SIDES < 2 ? 1 : -1);
    return pull.times(StrictMath.cos(angle)).plus(side.times(StrictMath.sin(angle))).unit();
  }

  private Try attempt(int piece, Vec3 direction, int[] left) {
    PullView view = new PullView(direction, block, bodies, left, ACROSS);
    Columns moving = view.columns(piece);
    for (int other : left) {
      if (other == piece) {
        continue;
      }
      Columns still = view.columns(other);
      Vec3 lip = Lip.tooWide(moving, still, 1, limits);
      if (lip != null) {
        return new Try(other, lip);
      }
      Catch caught = Catch.of(moving, still, view.grid(), 1, new double[0], limits);
      // a spot the size of a column is the least that the grid can tell
      if (caught.wideArea() > view.grid().cellArea()) {
        return new Try(other, caught.where());
      }
    }
    return new Try(-1, Vec3.ZERO);
  }
}
