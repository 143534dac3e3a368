package org.castwright.division;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * In which order pieces leave. A piece that leaves takes with it whatever of what is left lies
 * ahead of its own share; the order is the one in which pieces stay whole and take least from each
 * other.
 */
final class Order {

  /** A body of fewer cells is no body. */
  private static final int CRUMB = 30;

  private final Closure closure;
  private final byte[] label;
  private final Cells cells;

  private Order(Closure closure, byte[] label) {
    this.closure = closure;
    this.label = label;
    cells = closure.cells();
  }

  /** Piece numbers in the order they leave. */
  static int[] best(Closure closure, byte[] label, int pieces) {
    Order o = new Order(closure, label);
    int[] best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int[] order : orders(pieces)) {
      double cost = o.cost(order);
      if (cost < least) {
        least = cost;
        best = order;
      }
    }
    return best;
  }

  private static List<int[]> orders(int k) {
    List<int[]> out = new ArrayList<>();
    int[] first = new int[k];
    Arrays.setAll(first, i -> i);
    if (k > 5) {
      for (int turn = 0; turn < k; turn++) {
        int[] o = new int[k];
        for (int i = 0; i < k; i++) {
          o[i] = (i + turn) % k;
        }
        out.add(o);
      }
      return out;
    }
    permute(first, 0, out);
    return out;
  }

  private static void permute(int[] a, int from, List<int[]> out) {
    if (from == a.length) {
      out.add(a.clone());
      return;
    }
    for (int i = from; i < a.length; i++) {
      int[] b = a.clone();
      int t = b[from];
      b[from] = b[i];
      b[i] = t;
      permute(b, from + 1, out);
    }
  }

  private double cost(int[] order) {
    byte[] taken = new byte[cells.size()];
    int stolen = closure.run(label, order, taken);
    return 1e7 * Math.max(0, bodies(taken) - order.length) + stolen;
  }

  private int bodies(byte[] taken) {
    int[] steps = cells.steps();
    boolean[] seen = new boolean[taken.length];
    int[] queue = new int[taken.length];
    int bodies = 0;
    for (int start = 0; start < taken.length; start++) {
      if (seen[start] || taken[start] < 0) {
        continue;
      }
      int from = 0;
      int to = 0;
      queue[to++] = start;
      seen[start] = true;
      while (from < to) {
        int c = queue[from++];
        for (int s = 0; s < 6; s++) {
          if (cells.has(c, s)) {
            int d = c + steps[s];
            if (!seen[d] && taken[d] == taken[start]) {
              seen[d] = true;
              queue[to++] = d;
            }
          }
        }
      }
      bodies += to >= CRUMB ? 1 : 0;
    }
    return bodies;
  }
}
