package org.castwright.parting;

import java.util.Arrays;
import java.util.Comparator;

/**
 * Evens the heights of a sheet's points on the outline, as far as the casting just inside of the
 * outline lets them: along steep walls the outline itself goes up and down every facet, and a sheet
 * that follows it there comes out as a row of teeth.
 */
final class OutlineEvening {

  /** Points may lie off the outline by so much of the release tolerance. */
  private static final double OFF_SHARE = 0.6;

  private static final int PROBES = 8;

  /** Points so near are evened with each other, mm; some teeth are half as wide. */
  private static final double NEAR_MM = 0.7;

  private static final int ROUNDS = 3;

  private final SheetNodes nodes;
  private final SheetJob job;
  private final double[] xy;
  private double[] z;

  private OutlineEvening(SheetNodes nodes, SheetJob job) {
    this.nodes = nodes;
    this.job = job;
    xy = nodes.points();
    z = nodes.heights();
  }

  /**
   * Moves nodes up or down.
   *
   * @param nodes none but those of the outline, at its heights
   */
  static void of(SheetNodes nodes, SheetJob job) {
    new OutlineEvening(nodes, job).run();
  }

  private void run() {
    double[] lo = new double[z.length];
    double[] hi = new double[z.length];
    bounds(lo, hi);
    int[] order = byX();
    for (int r = 0; r < ROUNDS; r++) {
      double[] mean = means(order);
      for (int i = 0; i < z.length; i++) {
        z[i] = lo[i] <= hi[i] ? Math.max(lo[i], Math.min(hi[i], mean[i])) : z[i];
      }
    }
    for (int i = 0; i < z.length; i++) {
      nodes.lift(i, z[i]);
    }
  }

  /** Between which heights the casting beside each point lies; empty where that differs. */
  private void bounds(double[] lo, double[] hi) {
    double r = OFF_SHARE * job.options().releaseMm();
    Column c = new Column();
    Arrays.fill(lo, -Double.MAX_VALUE);
    Arrays.fill(hi, Double.MAX_VALUE);
    for (int i = 0; i < z.length; i++) {
      for (int k = 0; k < PROBES; k++) {
        double a = 2 * Math.PI * k / PROBES;
        double x = xy[2 * i] + r * StrictMath.cos(a);
        double y = xy[2 * i + 1] + r * StrictMath.sin(a);
        if (job.columns().at(x, y, c)) {
          lo[i] = Math.max(lo[i], c.lower);
          hi[i] = Math.min(hi[i], c.upper);
        }
      }
    }
  }

  private int[] byX() {
    Integer[] order = new Integer[z.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, Comparator.comparingDouble(i -> xy[2 * i]));
    return Arrays.stream(order).mapToInt(i -> i).toArray();
  }

  /** Mean height about each point, the nearer the more. */
  private double[] means(int[] order) {
    double[] sum = z.clone();
    double[] weight = new double[z.length];
    Arrays.fill(weight, 1);
    for (int a = 0; a < order.length; a++) {
      int i = order[a];
      for (int b = a + 1; b < order.length; b++) {
        int j = order[b];
        double dx = xy[2 * j] - xy[2 * i];
        double dy = xy[2 * j + 1] - xy[2 * i + 1];
        if (dx > NEAR_MM) {
          break;
        }
        double w = 1 - (dx * dx + dy * dy) / (NEAR_MM * NEAR_MM);
        if (w > 0) {
          sum[i] += w * z[j];
          sum[j] += w * z[i];
          weight[i] += w;
          weight[j] += w;
        }
      }
    }
    for (int i = 0; i < sum.length; i++) {
      sum[i] /= weight[i];
    }
    return sum;
  }
}
