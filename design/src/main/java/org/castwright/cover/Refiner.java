package org.castwright.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.survey.Lanes;

/**
 * Turns the directions of a set a little, one after the other, while less stays caught: six
 * neighbors at a step's distance, the best of them if it is better, else half the step (Hooke,
 * Jeeves, "Direct search", J. ACM 8(2), 1961).
 */
final class Refiner {

  private static final int NEIGHBORS = 6;

  /** First step, radians: half the distance between spread directions. */
  private static final double FIRST_STEP = 0.09;

  // a fortieth of that: 0.13 degrees
  private static final double LAST_STEP = 0.01;
  private static final int MOST_MOVES = 12;

  private final Trial trial;

  /** Those not in use: their large arrays serve again. */
  private final Queue<Shade> shades = new ConcurrentLinkedQueue<>();

  Refiner(Trial trial) {
    this.trial = trial;
  }

  /**
   * Directions that lower what a set leaves, to be put on trial.
   *
   * @param set columns; the first {@code keep} are not turned
   */
  List<Vec3> better(int[] set, int keep) {
    List<Vec3> out = new ArrayList<>();
    for (int i = keep; i < set.length; i++) {
      int[] left = trial.left(Greedy.without(set, i));
      Vec3 start = trial.direction(set[i]);
      Samples own = trial.samples().only(left);
      double before = caught(own, start);
      Vec3 turned = walk(own, start, before);
      if (!turned.equals(start)) {
        out.add(turned);
      }
    }
    return out;
  }

  private Vec3 walk(Samples own, Vec3 start, double before) {
    Vec3 at = start;
    double least = before;
    double step = FIRST_STEP;
    int moves = 0;
    while (step >= LAST_STEP && least > 0 && moves < MOST_MOVES) {
      Vec3[] around = around(at, step);
      double[] caught = new double[NEIGHBORS];
      Lanes.run(
          NEIGHBORS,
          trial.threads(),
          () -> this,
          (same, k) -> caught[k] = same.caught(own, around[k]));
      int best = 0;
      for (int k = 1; k < NEIGHBORS; k++) {
        best = caught[k] < caught[best] ? k : best;
      }
      if (caught[best] < least) {
        least = caught[best];
        at = around[best];
        moves++;
      } else {
        step /= 2;
      }
    }
    return at;
  }

  private static Vec3[] around(Vec3 at, double step) {
    Frame f = Frame.along(at);
    Vec3[] out = new Vec3[NEIGHBORS];
    Arrays.setAll(
        out,
        k -> {
          double a = 2 * Math.PI * k / NEIGHBORS;
          Vec3 side = f.u().times(StrictMath.cos(a)).plus(f.v().times(StrictMath.sin(a)));
          return at.plus(side.times(step)).unit();
        });
    return out;
  }

  /** What a direction leaves of some samples: a share of the model's surface and space. */
  private double caught(Samples own, Vec3 direction) {
    Shade idle = shades.poll();
    Shade shade = idle == null ? trial.shade() : idle;
    long[] free = FreeBits.along(direction, own, shade, trial.lean())[0];
    shades.add(shade);
    double area = 0;
    double volume = 0;
    for (int s = 0; s < own.count(); s++) {
      if (!FreeBits.get(free, s)) {
        if (own.isCell(s)) {
          volume += own.weight(s);
        } else {
          area += own.weight(s);
        }
      }
    }
    return area / trial.surface() + volume / trial.space();
  }
}
