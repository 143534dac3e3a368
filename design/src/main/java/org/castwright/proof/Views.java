package org.castwright.proof;

import java.util.List;
import java.util.stream.IntStream;
import org.castwright.geom.Vec3;

/**
 * The views that the proof needs, made when they are asked for. Each holds columns of every body in
 * it, so only the first, which shows all bodies, and the latest are kept.
 */
final class Views {

  private final Body block;
  private final List<Body> bodies;
  private final int firstPiece;
  private final PullView first;
  private PullView latest;
  private int latestFrom;

  /**
   * Makes the first view.
   *
   * @param bodies the casting, the channels if there are any, then the pieces in order
   * @param firstPiece number of the first piece among them
   * @param pull of the first piece
   */
  Views(Body block, List<Body> bodies, int firstPiece, Vec3 pull) {
    this.block = block;
    this.bodies = bodies;
    this.firstPiece = firstPiece;
    this.first = new PullView(pull, block, bodies);
    this.latest = first;
    this.latestFrom = 0;
  }

  /** All bodies along the pull of the first piece. */
  PullView first() {
    return first;
  }

  /** A view along a pull in which pieces before body {@code from} may be missing. */
  PullView along(Vec3 pull, int from) {
    if (first.sign(pull) != 0) {
      return first;
    }
    if (latest.sign(pull) == 0 || latestFrom > from) {
      latest = new PullView(pull, block, bodies, left(bodies, firstPiece, from), PullView.FINE);
      latestFrom = from;
    }
    return latest;
  }

  /** Numbers of casting, channels, and the pieces from body {@code from} on. */
  static int[] left(List<Body> bodies, int firstPiece, int from) {
    return IntStream.range(0, bodies.size()).filter(i -> i < firstPiece || i >= from).toArray();
  }
}
