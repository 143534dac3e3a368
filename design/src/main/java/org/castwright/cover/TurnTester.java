package org.castwright.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.survey.Lanes;

/** Turns all pulls of an answer a little and looks what is caught then. */
final class TurnTester {

  private static final double DEGREES = 0.25;
  private static final int TURNS = 4;
  // a wall at the turned pull leans under when it does so by more than rounding, degrees
  private static final double LEANS_DEGREES = 0.05;
  private static final double TENTH_MORE = 1.1;

  private static final double WALL_SINE = StrictMath.sin(Math.toRadians(1.01 * DEGREES));
  private static final double LEANS_SINE = -StrictMath.sin(Math.toRadians(LEANS_DEGREES));
  private static final double SHIFT = StrictMath.tan(Math.toRadians(DEGREES));

  private final Trial trial;

  TurnTester(Trial trial) {
    this.trial = trial;
  }

  /**
   * @param set columns of the answer
   * @param plain what it leaves
   */
  Turns of(int[] set, Caught plain, CoverTolerance tolerance) {
    long[][] free = new long[TURNS * set.length][];
    Lanes.run(
        free.length,
        trial.threads(),
        trial::shade,
        (shade, i) -> free[i] = turned(set[i / TURNS], i % TURNS, shade));
    List<Caught> left = new ArrayList<>();
    boolean holds = true;
    for (int turn = 0; turn < TURNS; turn++) {
      Caught c = left(free, turn, set.length);
      left.add(c);
      holds &= c.areaMm2() <= Math.max(tolerance.areaMm2(), TENTH_MORE * plain.areaMm2());
      holds &= c.volumeMm3() <= Math.max(tolerance.volumeMm3(), TENTH_MORE * plain.volumeMm3());
    }
    return new Turns(DEGREES, holds, left);
  }

  private Caught left(long[][] free, int turn, int pulls) {
    Samples samples = trial.samples();
    int[] list = new int[samples.count()];
    int n = 0;
    for (int s = 0; s < samples.count(); s++) {
      boolean any = false;
      for (int i = 0; i < pulls; i++) {
        any |= FreeBits.get(free[i * TURNS + turn], s);
      }
      if (!any && trial.freeByAny(s)) {
        list[n++] = s;
      }
    }
    return trial.sum(Arrays.copyOf(list, n));
  }

  /** The samples free along a turned pull, walls that lean under it now left out. */
  private long[] turned(int column, int turn, Shade shade) {
    Vec3 pull = trial.direction(column);
    Vec3 axis = trial.direction(column & ~1);
    Frame frame = Frame.along(axis);
    Vec3 side = (turn < 2 ? frame.u() : frame.v()).times(turn % 2 == 0 ? SHIFT : -SHIFT);
    Vec3 now = column % 2 == 0 ? axis.plus(side).unit() : axis.plus(side).unit().negate();
    Samples samples = trial.samples();
    long[] free = FreeBits.along(now, samples, shade, trial.lean())[0];
    for (int s = samples.cells(); s < samples.count(); s++) {
      int facet = samples.id(s);
      if (Math.abs(trial.lean().sine(facet, pull)) < WALL_SINE
          && trial.lean().sine(facet, now) < LEANS_SINE) {
        FreeBits.clear(free, s);
      }
    }
    return free;
  }
}
