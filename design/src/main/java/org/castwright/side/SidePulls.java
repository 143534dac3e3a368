package org.castwright.side;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.Roof;
import org.castwright.progress.Progress;
import org.castwright.survey.EndsImage;
import org.castwright.survey.Lanes;
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
  private static final double NEARLY = 0.95;

  /** Standing this close beside a wall counts as free of it, mm. */
  private static final double HAIR = 0.05;

  /** Axes closer to the main pull free nothing that it does not, cosine of 2 degrees. */
  private static final double MAIN = 0.9994;

  /** Share of the points that clean axes may leave to be preferred. */
  private static final double LEFT = 0.01;

  /** Points that pulls are compared by, about. */
  private static final int COMPARED = 6000;

  private final TriMesh casting;
  private final TrappedSpace space;
  private final List<Vec3> pulls = new ArrayList<>();

  /** So many pulls at the start of the list run along clean axes. */
  private final int clean;

  /** So many pulls at the start of the list are chosen from. */
  private int allowed;

  /** Every how many-th point is compared. */
  private final int stride;

  /** For each pull which of the compared points it frees. */
  private final boolean[][] frees;

  SidePulls(TriMesh casting, TrappedSpace space, Progress p) {
    this.casting = casting;
    this.space = space;
    clean = 2 * (int) PullAxes.of(casting, 0).stream().filter(a -> Math.abs(a.z()) < MAIN).count();
    stride = Math.max(1, space.size() / COMPARED);
    List<Vec3> axes =
        PullAxes.of(casting, SPREAD).stream().filter(a -> Math.abs(a.z()) < MAIN).toList();
    for (Vec3 a : axes) {
      pulls.add(a);
      pulls.add(a.negate());
    }
    frees = new boolean[pulls.size()][];
    Lanes.run(
        axes.size(),
        Runtime.getRuntime().availableProcessors(),
        EndsImage::new,
        (image, k) -> {
          p.at("side pieces: pulls", (double) k / axes.size());
          look(k, axes.get(k), image);
        });
    allowed = needed(clean) <= needed(frees.length) ? clean : frees.length;
  }

  /** How many points so many plugs leave at least, one or two; zero where that is not known. */
  int leftBy(int plugs) {
    if (plugs < 1 || plugs > 2) {
      return 0;
    }
    PlugReach reach = PlugReach.of(space, stride, pulls, frees);
    return (frees[0].length - reach.most(plugs)) * stride;
  }

  /** How many of the first pulls, taken greedily, free all but a little. */
  private int needed(int among) {
    boolean[] done = new boolean[among == 0 ? 0 : frees[0].length];
    int left = done.length;
    int n = 0;
    while (left > LEFT * done.length) {
      int best = Freed.best(frees, done, among);
      if (best < 0) {
        return Integer.MAX_VALUE;
      }
      left -= Freed.count(frees[best], done);
      for (int i = 0; i < done.length; i++) {
        done[i] |= frees[best][i];
      }
      n++;
    }
    return among == 0 ? Integer.MAX_VALUE : n;
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
    Choice choice = best(done, allowed);
    if (choice == null && allowed < frees.length) {
      allowed = frees.length;
      choice = best(done, allowed);
    }
    return choice;
  }

  private Choice best(boolean[] done, int among) {
    boolean[] compared = new boolean[frees[0].length];
    for (int i = 0; i < compared.length; i++) {
      compared[i] = done[i * stride];
    }
    int best = Freed.best(frees, compared, among);
    if (best < 0) {
      return null;
    }
    double enough = NEARLY * Freed.count(frees[best], compared);
    int k = 0;
    while (Freed.count(frees[k], compared) < enough) {
      k++;
    }
    return new Choice(k, pulls.get(k), exactly(pulls.get(k), done));
  }

  /** The points not done that a pull frees, or would if they stood a hair to the side. */
  private int[] exactly(Vec3 pull, boolean[] done) {
    Frame frame = Frame.along(pull);
    Roof roof = new Roof(casting.toLocal(frame));
    return IntStream.range(0, done.length)
        .parallel()
        .filter(
            i -> {
              if (done[i]) {
                return false;
              }
              Vec3 q = frame.toLocal(point(i));
              double h = q.z() + HAIR;
              return roof.at(q.x() + HAIR, q.y()) <= h
                  || roof.at(q.x() - HAIR, q.y()) <= h
                  || roof.at(q.x(), q.y() + HAIR) <= h
                  || roof.at(q.x(), q.y() - HAIR) <= h;
            })
        .toArray();
  }

  /** Points that a plug cut for a choice did not take are not freed by its pull after all. */
  void learn(Choice choice, boolean[] done) {
    boolean[] freed = frees[choice.number];
    for (int i = 0; i < freed.length; i++) {
      freed[i] &= done[i * stride];
    }
  }

  /**
   * Which points an axis frees, pulled along it and against it. Beside a wall along the pull half
   * of the columns near it stand in the wall: a point counts as free if one of them leaves it so,
   * and what that grants too much lies within a column of the wall.
   */
  private void look(int number, Vec3 axis, EndsImage image) {
    Frame frame = Frame.along(axis);
    image.look(casting, frame, PIXELS, LEAST_PIXEL);
    int n = (space.size() + stride - 1) / stride;
    boolean[][] two = Freed.bothWays(image, frame, n, k -> point(k * stride), 1);
    frees[2 * number] = two[0];
    frees[2 * number + 1] = two[1];
  }

  private Vec3 point(int i) {
    return new Vec3(space.x(i), space.y(i), space.z(i));
  }
}
