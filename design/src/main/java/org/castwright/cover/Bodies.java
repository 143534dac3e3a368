package org.castwright.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.survey.Lanes;

/**
 * In how many bodies the pieces fall: the block round the casting is a grid, pull by pull takes all
 * cells it frees of those still there, and cells that touch by their faces are one body. Bodies too
 * small to tell from the grid's own steps are not counted.
 */
final class Bodies {

  // cells along the longest side of the casting
  private static final int CELLS = 48;
  // the block reaches this share of the casting's longest side past it; 12 mm on 100 mm, a common
  // wall (common practice, no source)
  private static final double WALL_SHARE = 0.12;
  // a body of fewer cells is a step of the grid
  private static final int FEWEST_CELLS = 27;
  // up to this many pulls every order is tried
  private static final int ALL_ORDERS = 4;

  private final Trial trial;
  private final SpaceGrid grid;
  private final List<Integer> places;

  /**
   * @param places in the order, from 1, of the pulls that come first in every list, or 0
   */
  Bodies(Trial trial, List<Integer> places) {
    this.trial = trial;
    this.places = places;
    double side = trial.mesh().bounds().longestSide();
    grid = new SpaceGrid(trial.mesh(), side / CELLS, WALL_SHARE * side);
  }

  /** The best order that keeps the places: fewest bodies, then the largest smallest body. */
  PullOrder best(List<Vec3> pulls) {
    byte[] free = free(pulls);
    if (pulls.size() > ALL_ORDERS) {
      return climbed(free, pulls.size());
    }
    PullOrder best = null;
    for (int[] order : orders(pulls.size())) {
      if (!keeps(order)) {
        continue;
      }
      PullOrder o = count(free, order);
      if (best == null || o.betterThan(best)) {
        best = o;
      }
    }
    return best;
  }

  /** Whether each pull with a place is at it; places that there are not bind nothing. */
  private boolean keeps(int[] order) {
    for (int i = 0; i < places.size(); i++) {
      int place = places.get(i);
      if (place > 0 && place <= order.length && order[place - 1] != i) {
        return false;
      }
    }
    return true;
  }

  /** An order that keeps the places; the rest in the order given. */
  private int[] first(int n) {
    int[] out = new int[n];
    boolean[] placed = new boolean[n];
    Arrays.fill(out, -1);
    for (int i = 0; i < places.size(); i++) {
      int place = places.get(i);
      if (place > 0 && place <= n) {
        out[place - 1] = i;
        placed[i] = true;
      }
    }
    int next = 0;
    for (int at = 0; at < n; at++) {
      if (out[at] < 0) {
        while (placed[next]) {
          next++;
        }
        out[at] = next++;
      }
    }
    return out;
  }

  /** For each cell the pulls that free it, one bit each. */
  private byte[] free(List<Vec3> pulls) {
    byte[] out = new byte[grid.size()];
    byte[][] each = new byte[pulls.size()][];
    Lanes.run(
        each.length,
        trial.threads(),
        trial::shade,
        (shade, i) -> each[i] = one(shade, pulls.get(i), i));
    for (byte[] one : each) {
      for (int c = 0; c < out.length; c++) {
        out[c] |= one[c];
      }
    }
    return out;
  }

  private byte[] one(Shade shade, Vec3 pull, int bit) {
    byte[] out = new byte[grid.size()];
    shade.look(pull);
    for (int c = 0; c < out.length; c++) {
      double x = grid.x(c);
      double y = grid.y(c);
      double z = grid.z(c);
      int column = shade.column(x, y, z);
      boolean free = column < 0 || !shade.caughtUp(column, shade.height(x, y, z));
      out[c] = (byte) (free && !grid.solid(c) ? 1 << bit : 0);
    }
    return out;
  }

  /** From the given order by exchanging neighbors while that helps. */
  private PullOrder climbed(byte[] free, int n) {
    PullOrder best = count(free, first(n));
    boolean better = true;
    while (better) {
      better = false;
      for (int i = 0; i + 1 < n; i++) {
        int[] order = best.exchanged(i);
        PullOrder o = keeps(order) ? count(free, order) : best;
        if (o.betterThan(best)) {
          best = o;
          better = true;
        }
      }
    }
    return best;
  }

  /** All orders of so many, in lexicographic order. */
  static List<int[]> orders(int n) {
    List<int[]> out = new ArrayList<>();
    extend(new int[n], 0, out);
    return out;
  }

  private static void extend(int[] order, int n, List<int[]> out) {
    if (n == order.length) {
      out.add(order.clone());
      return;
    }
    for (int i = 0; i < order.length; i++) {
      boolean used = false;
      for (int k = 0; k < n; k++) {
        used |= order[k] == i;
      }
      if (!used) {
        order[n] = i;
        extend(order, n + 1, out);
      }
    }
  }

  private PullOrder count(byte[] free, int[] order) {
    byte[] rank = new byte[1 << order.length];
    for (int mask = 0; mask < rank.length; mask++) {
      rank[mask] = -1;
      for (int i = order.length - 1; i >= 0; i--) {
        if ((mask >> order[i] & 1) != 0) {
          rank[mask] = (byte) i;
        }
      }
    }
    byte[] label = new byte[free.length];
    for (int c = 0; c < label.length; c++) {
      label[c] = rank[free[c] & 0xff];
    }
    return flood(label, order);
  }

  private PullOrder flood(byte[] label, int[] order) {
    int[] bodies = new int[order.length];
    double[] volumes = new double[order.length];
    int smallest = Integer.MAX_VALUE;
    double cell = grid.cell() * grid.cell() * grid.cell();
    int[] queue = new int[label.length];
    for (int s = 0; s < label.length; s++) {
      int piece = label[s];
      if (piece < 0) {
        continue;
      }
      int n = take(label, s, queue);
      volumes[piece] += n * cell;
      if (n >= FEWEST_CELLS) {
        bodies[piece]++;
        smallest = Math.min(smallest, n);
      }
    }
    for (int i = 0; i < bodies.length; i++) {
      bodies[i] = Math.max(1, bodies[i]);
    }
    return new PullOrder(order, bodies, volumes, smallest * cell);
  }

  /** Takes the body of a cell off the labels; returns its number of cells. */
  private int take(byte[] label, int first, int[] queue) {
    byte piece = label[first];
    int nx = grid.nx();
    int slice = nx * grid.ny();
    int end = 0;
    queue[end++] = first;
    label[first] = -1;
    for (int at = 0; at < end; at++) {
      int c = queue[at];
      int i = c % nx;
      int j = c / nx % grid.ny();
      int k = c / slice;
      for (int side = 0; side < 6; side++) {
        int step = side % 2 == 0 ? 1 : -1;
        int along = side / 2 == 0 ? i : side / 2 == 1 ? j : k;
        int size = side / 2 == 0 ? nx : side / 2 == 1 ? grid.ny() : grid.nz();
        int o = c + step * (side / 2 == 0 ? 1 : side / 2 == 1 ? nx : slice);
        if (along + step >= 0 && along + step < size && label[o] == piece) {
          label[o] = -1;
          queue[end++] = o;
        }
      }
    }
    return end;
  }
}
