package org.castwright.side;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.survey.DepthImage;
import org.castwright.survey.PullAxes;
import org.castwright.survey.TrappedSpace;

/**
 * Which points of trapped space each of many pulls frees: those above which the casting's depth
 * image along the pull shows nothing.
 */
final class SidePulls {

  /** Axes spread over the half sphere besides the clean ones. */
  private static final int SPREAD = 120;

  /** Columns along the longer side of a depth image. */
  private static final int PIXELS = 300;

  private static final double LEAST_PIXEL = 0.05;

  /** Of pulls that free nearly as much the first is taken: clean axes come before spread ones. */
  private static final double NEARLY = 0.985;

  /** Axes closer to the main pull free nothing that it does not, cosine of 2 degrees. */
  private static final double MAIN = 0.9994;

  /** Points that pulls are compared by, about. */
  private static final int COMPARED = 6000;

  private final TriMesh casting;
  private final TrappedSpace space;
  private final List<Vec3> pulls = new ArrayList<>();

  /** Every how many-th point is compared. */
  private final int stride;

  /** For each pull which of the compared points it frees. */
  private final boolean[][] frees;

  SidePulls(TriMesh casting, TrappedSpace space, Progress p) {
    this.casting = casting;
    this.space = space;
    stride = Math.max(1, space.size() / COMPARED);
    for (Vec3 a : PullAxes.of(casting, SPREAD)) {
      if (Math.abs(a.z()) < MAIN) {
        pulls.add(a);
        pulls.add(a.negate());
      }
    }
    frees = new boolean[pulls.size()][];
    int lanes = Runtime.getRuntime().availableProcessors();
    IntStream.range(0, lanes)
        .parallel()
        .forEach(
            lane -> {
              DepthImage image = new DepthImage();
              for (int k = lane; k < frees.length; k += lanes) {
                p.at("side pieces: pulls", (double) k / frees.length);
                frees[k] = freed(pulls.get(k), image, stride);
              }
            });
  }

  /**
   * A pull and the points it is to free.
   *
   * @param number of the pull
   * @param points indices into the trapped space, ascending
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Choice(int number, Vec3 pull, int[] points) {}

  /** The pull that frees most of the points not done; null when none frees any. */
  Choice best(boolean[] done) {
    int[] counts = new int[frees.length];
    int most = 0;
    for (int k = 0; k < counts.length; k++) {
      for (int i = 0; i < frees[k].length; i++) {
        counts[k] += frees[k][i] && !done[i * stride] ? 1 : 0;
      }
      most = Math.max(most, counts[k]);
    }
    for (int k = 0; k < counts.length && most > 0; k++) {
      if (counts[k] >= NEARLY * most) {
        boolean[] by = freed(pulls.get(k), new DepthImage(), 1);
        return new Choice(
            k,
            pulls.get(k),
            IntStream.range(0, done.length).filter(i -> by[i] && !done[i]).toArray());
      }
    }
    return null;
  }

  /** Points that a plug cut for a choice did not take are not freed by its pull after all. */
  void learn(Choice choice, boolean[] done) {
    boolean[] freed = frees[choice.number];
    for (int i = 0; i < freed.length; i++) {
      freed[i] &= done[i * stride];
    }
  }

  private boolean[] freed(Vec3 pull, DepthImage image, int every) {
    Frame frame = Frame.along(pull);
    image.look(casting, frame, PIXELS, LEAST_PIXEL);
    double slack = image.raster().pixel();
    boolean[] free = new boolean[(space.size() + every - 1) / every];
    for (int k = 0; k < free.length; k++) {
      int i = k * every;
      Vec3 q = frame.toLocal(new Vec3(space.x(i), space.y(i), space.z(i)));
      free[k] = roof(image, q.x(), q.y()) <= q.z() + slack;
    }
    return free;
  }

  /**
   * The lowest roof of the columns round a point. Beside a wall along the pull half of the columns
   * near it stand in the wall: a point counts as free if one of them leaves it so, and what that
   * grants too much lies within a column of the wall.
   */
  static double roof(DepthImage image, double x, double y) {
    double step = image.raster().pixel();
    double least = Double.MAX_VALUE;
    for (int j = -1; j <= 1; j++) {
      for (int i = -1; i <= 1; i++) {
        int c = image.raster().nearest(x + i * step, y + j * step);
        least = Math.min(least, c < 0 || !image.hit(c) ? -Double.MAX_VALUE : image.upper(c));
      }
    }
    return least;
  }
}
