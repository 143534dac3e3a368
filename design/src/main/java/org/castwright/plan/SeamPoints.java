package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.castwright.geom.Vec3;

/** The seam's loops as evenly spaced points, for finding where a channel may join the casting. */
final class SeamPoints {

  private static final double STEP = 0.5;

  private final List<List<Vec3>> loops = new ArrayList<>();

  private final Predicate<Vec3> taken;

  /**
   * @param packedLoops closed polylines as packed {@code x y z}
   * @param taken places where nothing may join, as beside a side piece
   */
  SeamPoints(List<double[]> packedLoops, Predicate<Vec3> taken) {
    this.taken = taken;
    for (double[] p : packedLoops) {
      loops.add(sample(p));
    }
  }

  List<Vec3> all() {
    List<Vec3> all = new ArrayList<>();
    loops.forEach(all::addAll);
    all.removeIf(taken);
    return all;
  }

  /**
   * The place on the seam to join for a peak of the casting: the middle of the stretch of seam
   * round the nearest seam point that lies within {@code below} of the peak's height (y), or null
   * when no seam point within that height is nearer than {@code reach} across.
   */
  Vec3 joinFor(Vec3 peak, double below, double reach) {
    int bestLoop = -1;
    int best = -1;
    double bestDistance = reach;
    for (int l = 0; l < loops.size(); l++) {
      List<Vec3> loop = loops.get(l);
      for (int i = 0; i < loop.size(); i++) {
        Vec3 p = loop.get(i);
        double d = Math.abs(p.x() - peak.x());
        if (p.y() >= peak.y() - below && d < bestDistance && !taken.test(p)) {
          bestDistance = d;
          bestLoop = l;
          best = i;
        }
      }
    }
    return best < 0 ? null : middleOfRun(loops.get(bestLoop), best, peak.y() - below);
  }

  private Vec3 middleOfRun(List<Vec3> loop, int at, double floor) {
    int n = loop.size();
    int back = 0;
    int ahead = 0;
    while (back < n && open(loop.get(Math.floorMod(at - back - 1, n)), floor)) {
      back++;
    }
    while (ahead < n - back && open(loop.get((at + ahead + 1) % n), floor)) {
      ahead++;
    }
    double lo = Double.POSITIVE_INFINITY;
    double hi = Double.NEGATIVE_INFINITY;
    for (int k = -back; k <= ahead; k++) {
      double x = loop.get(Math.floorMod(at + k, n)).x();
      lo = Math.min(lo, x);
      hi = Math.max(hi, x);
    }
    Vec3 best = loop.get(at);
    for (int k = -back; k <= ahead; k++) {
      Vec3 p = loop.get(Math.floorMod(at + k, n));
      if (Math.abs(p.x() - (lo + hi) / 2) < Math.abs(best.x() - (lo + hi) / 2)) {
        best = p;
      }
    }
    return best;
  }

  private boolean open(Vec3 p, double floor) {
    return p.y() >= floor && !taken.test(p);
  }

  private static List<Vec3> sample(double[] p) {
    List<Vec3> out = new ArrayList<>();
    int n = p.length / 3;
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      Vec3 a = new Vec3(p[3 * i], p[3 * i + 1], p[3 * i + 2]);
      Vec3 b = new Vec3(p[3 * j], p[3 * j + 1], p[3 * j + 2]);
      int steps = Math.max(1, (int) Math.ceil(b.minus(a).length() / STEP));
      for (int k = 0; k < steps; k++) {
        out.add(a.plus(b.minus(a).times((double) k / steps)));
      }
    }
    return out;
  }
}
