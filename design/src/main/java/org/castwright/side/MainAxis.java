package org.castwright.side;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.survey.EndsImage;
import org.castwright.survey.Lanes;
import org.castwright.survey.PullAxes;
import org.castwright.survey.TrappedSpace;

/**
 * The axis along which the two main pieces should leave so that the fewest side pieces free what
 * they trap. The axis that traps least is often another, an oblique one that traps a little
 * everywhere.
 */
public final class MainAxis {

  /** Axes of side pulls spread over the half sphere besides the clean ones. */
  private static final int SPREAD = 60;

  /** Points of trapped space looked at for each axis, about. */
  private static final int POINTS = 3000;

  /** Cells of trapped space along the longest side. */
  private static final double CELLS = 160;

  /** Share of an axis' trapped space that may be left: what coarse pictures hide beside walls. */
  private static final double LEFT = 0.06;

  /** More side pieces than this are all the same. */
  private static final int MOST = 8;

  /** Of axes that need as many side pieces an earlier one stays unless a later traps this share. */
  private static final double MUCH_LESS = 0.5;

  private static final int PIXELS = 200;
  private static final double LEAST_PIXEL = 0.05;

  private MainAxis() {}

  /** An axis on trial: points it traps, and for each side pull which of them that frees. */
  private static final class Trial {
    final Vec3 axis;
    final double volume;
    final Vec3[] points;
    final boolean[][] freed;
    final List<Vec3> sides;

    Trial(TriMesh mesh, Vec3 axis, List<Vec3> sides, double release) {
      this.axis = axis;
      this.sides = sides;
      freed = new boolean[sides.size()][];
      Frame frame = Frame.along(axis);
      double cell = mesh.bounds().longestSide() / CELLS;
      TrappedSpace space = TrappedSpace.of(mesh.toLocal(frame), cell, release);
      volume = space.size() * space.pointMm3();
      int step = Math.max(1, space.size() / POINTS);
      points = new Vec3[(space.size() + step - 1) / step];
      Arrays.setAll(
          points,
          k -> frame.toWorld(new Vec3(space.x(k * step), space.y(k * step), space.z(k * step))));
    }

    /** Plugs that free all but a little, taken greedily along the first so many side pulls. */
    int plugs(int among) {
      boolean[] done = new boolean[points.length];
      int left = done.length;
      int n = 0;
      while (left > LEFT * done.length && n < MOST) {
        int best = Freed.best(freed, done, among);
        if (best < 0) {
          return MOST;
        }
        int count = Freed.count(freed[best], done);
        n += plugs(sides.get(best), freed[best], done, count);
        left -= count;
      }
      return n;
    }

    /** The plugs along one pull for the points it frees, which are done then. */
    private int plugs(Vec3 pull, boolean[] frees, boolean[] done, int count) {
      Frame frame = Frame.along(pull);
      double[] p = new double[3 * count];
      int at = 0;
      for (int i = 0; i < done.length; i++) {
        if (frees[i] && !done[i]) {
          Vec3 q = frame.toLocal(points[i]);
          p[at++] = q.x();
          p[at++] = q.y();
          p[at++] = q.z();
          done[i] = true;
        }
      }
      return Math.max(1, Footprint.of(p, PlugCutter.SHARED).size());
    }
  }

  /**
   * Chooses.
   *
   * @param mesh closed, mm
   * @param first an axis to try besides the clean ones, as one that traps least
   * @param release width and depth up to which a catch counts as free, mm
   * @return unit vector in the mesh's frame
   */
  public static Vec3 of(TriMesh mesh, Vec3 first, double release, Progress progress) {
    List<Vec3> axes = new ArrayList<>(PullAxes.of(mesh, 0));
    axes.add(first);
    List<Vec3> spread = PullAxes.of(mesh, SPREAD);
    List<Vec3> sides = new ArrayList<>();
    for (Vec3 a : spread) {
      sides.add(a);
      sides.add(a.negate());
    }
    List<Trial> trials =
        axes.parallelStream().map(a -> new Trial(mesh, a, sides, release)).toList();
    Lanes.run(
        spread.size(),
        Runtime.getRuntime().availableProcessors(),
        EndsImage::new,
        (image, k) -> {
          progress.at("side pieces: main pull", (double) k / spread.size());
          Frame frame = Frame.along(spread.get(k));
          image.look(mesh, frame, PIXELS, LEAST_PIXEL);
          trials.forEach(
              t -> {
                boolean[][] two =
                    Freed.bothWays(image, frame, t.points.length, i -> t.points[i], 0);
                t.freed[2 * k] = two[0];
                t.freed[2 * k + 1] = two[1];
              });
        });
    int clean = 2 * (axes.size() - 1);
    Trial best = null;
    int least = Integer.MAX_VALUE;
    for (int t = 0; t < trials.size(); t++) {
      Trial trial = trials.get(t);
      int n = Math.min(trial.plugs(clean), trial.plugs(sides.size()));
      boolean lessTrapped = best != null && trial.volume < MUCH_LESS * best.volume;
      // the axis that traps least comes last, and only if no clean one will do: traps little
      // everywhere means many pieces
      boolean asked = t + 1 < trials.size() || least >= MOST;
      if (asked && (n < least || (n == least && lessTrapped))) {
        least = n;
        best = trial;
      }
    }
    return best == null ? first : best.axis;
  }
}
