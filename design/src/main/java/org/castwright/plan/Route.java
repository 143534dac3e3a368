package org.castwright.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Ways for a channel over the seam surface, seen along the pull: never downward (air must rise),
 * never nearer to the casting than a bore needs.
 */
final class Route {

  private static final double STEP = 1;

  /** How far a place is from what a way keeps clear of, mm. */
  @FunctionalInterface
  interface Clearance {
    double at(double x, double y);
  }

  private final Clearance clearance;
  private final double top;

  /**
   * @param clearance from the casting and all else in the way
   * @param top the y at which the block ends
   */
  Route(Clearance clearance, double top) {
    this.clearance = clearance;
    this.top = top;
  }

  /** Whether the straight way up from a point on the seam is clear for a bore of that radius. */
  boolean straightUp(double x, double y, double radius) {
    for (double t = radius + 2; y + t < top; t += STEP / 2) {
      if (clearance.at(x, y + t) < Math.min(radius + 1, t - 0.75)) {
        return false;
      }
    }
    return true;
  }

  /**
   * A way round the casting from a point on the seam to the block's top: corner points {@code x,
   * y}, the first the point itself; or null when there is none.
   *
   * @param x0 least x a way may take
   * @param x1 greatest
   */
  List<double[]> around(double x, double y, double radius, double x0, double x1) {
    int nx = (int) Math.floor((x1 - x0) / STEP) + 1;
    int ny = (int) Math.floor((top - y) / STEP) + 2;
    double[] cost = new double[nx * ny];
    int[] from = new int[nx * ny];
    Arrays.fill(cost, Double.POSITIVE_INFINITY);
    Arrays.fill(from, -1);
    PriorityQueue<Node> queue = new PriorityQueue<>();
    int goal = -1;
    seed(x, y, radius, x0, nx, cost, queue);
    while (!queue.isEmpty() && goal < 0) {
      Node node = queue.poll();
      if (node.cost > cost[node.index]) {
        continue;
      }
      int row = node.index / nx;
      if (y + row * STEP >= top - radius) {
        goal = node.index;
      } else {
        relax(node, y, radius, x0, nx, ny, cost, from, queue);
      }
    }
    return goal < 0 ? null : corners(goal, from, x, y, x0, nx, radius);
  }

  /** Nodes next to the start count as reached straight from it. */
  private void seed(
      double x, double y, double radius, double x0, int nx, double[] cost, PriorityQueue<Node> q) {
    double reach = 2 * radius + 3;
    for (int j = 0; j * STEP <= reach; j++) {
      for (int i = 0; i < nx; i++) {
        double px = x0 + i * STEP;
        double d = Math.hypot(px - x, j * STEP);
        if (d <= reach && j * nx + i < cost.length && clear(px, y + j * STEP, radius)) {
          cost[j * nx + i] = d;
          q.add(new Node(d, j * nx + i));
        }
      }
    }
  }

  private void relax(
      Node node,
      double y,
      double radius,
      double x0,
      int nx,
      int ny,
      double[] cost,
      int[] from,
      PriorityQueue<Node> queue) {
    int i = node.index % nx;
    int j = node.index / nx;
    for (int dj = 0; dj <= 1; dj++) {
      for (int di = -1; di <= 1; di++) {
        int p = i + di;
        int q = j + dj;
        if ((di == 0 && dj == 0) || p < 0 || p >= nx || q >= ny) {
          continue;
        }
        if (!clear(x0 + p * STEP, y + q * STEP, radius)) {
          continue;
        }
        // level stretches drain badly: they cost half more than rising ones
        double c = node.cost + Math.hypot(di, dj) * STEP * (dj == 0 ? 1.5 : 1);
        if (c < cost[q * nx + p] - 1e-9) {
          cost[q * nx + p] = c;
          from[q * nx + p] = node.index;
          queue.add(new Node(c, q * nx + p));
        }
      }
    }
  }

  private boolean clear(double x, double y, double radius) {
    return clearance.at(x, y) >= radius + 1;
  }

  private List<double[]> corners(
      int goal, int[] from, double x, double y, double x0, int nx, double radius) {
    List<double[]> way = new ArrayList<>();
    for (int n = goal; n >= 0; n = from[n]) {
      int row = n / nx;
      way.add(new double[] {x0 + (n % nx) * STEP, y + row * STEP});
    }
    Collections.reverse(way);
    List<double[]> out = new ArrayList<>();
    out.add(new double[] {x, y});
    int at = 0;
    out.add(way.get(0));
    while (at < way.size() - 1) {
      int next = at + 1;
      for (int k = way.size() - 1; k > next; k--) {
        if (seen(way.get(at), way.get(k), radius)) {
          next = k;
          break;
        }
      }
      out.add(way.get(next));
      at = next;
    }
    double[] last = out.get(out.size() - 1);
    out.add(new double[] {last[0], top});
    return out;
  }

  private boolean seen(double[] a, double[] b, double radius) {
    double l = Math.hypot(b[0] - a[0], b[1] - a[1]);
    int n = Math.max(1, (int) Math.ceil(l / (STEP / 2)));
    for (int k = 0; k <= n; k++) {
      double s = (double) k / n;
      if (!clear(a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]), radius)) {
        return false;
      }
    }
    return true;
  }

  private record Node(double cost, int index) implements Comparable<Node> {
    @Override
    public int compareTo(Node o) {
      int c = Double.compare(cost, o.cost);
      return c != 0 ? c : Integer.compare(index, o.index);
    }
  }
}
