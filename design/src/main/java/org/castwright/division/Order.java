package org.castwright.division;

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

  /**
   * Piece numbers in the order they leave.
   *
   * @param places for each piece its place, from 0, or -1
   */
  static int[] best(Closure closure, byte[] label, List<Integer> places) {
    Order o = new Order(closure, label);
    int[] best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int[] order : Orders.of(places)) {
      double cost = o.cost(order);
      if (cost < least) {
        least = cost;
        best = order;
      }
    }
    return best;
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
