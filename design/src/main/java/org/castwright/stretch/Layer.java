package org.castwright.stretch;

import java.util.Arrays;
import org.castwright.mesh.IntList;

/**
 * One layer of a space: its bodies of casting, what surrounds what, and the ways to clear cells.
 */
final class Layer {

  /** Runs of fewer cells than this are no side. */
  private static final int SIDE = 3;

  private final Grid grid;
  private final int across;
  private final byte[] state;
  private final int[] body;
  private int bodies;

  /** For each cell the row of the nearest clear cell of its column, or −1. */
  private final int[] clearRow;

  /** The same of cells that are clear along any pull. */
  private final int[] openRow;

  private final boolean[][] outside;

  Layer(Space space, int layer) {
    this.grid = space.grid();
    this.across = grid.across();
    this.state = new byte[grid.cells()];
    for (int c = 0; c < state.length; c++) {
      state[c] = space.state(layer, c);
    }
    clearRow = rows(false);
    openRow = rows(true);
    body = new int[state.length];
    for (int c = 0; c < state.length; c++) {
      if (state[c] == Space.CASTING && body[c] == 0) {
        flood(c, Space.CASTING, body, ++bodies);
      }
    }
    outside = new boolean[bodies + 1][];
  }

  byte state(int c) {
    return state[c];
  }

  /** The number of a cell's body of casting, from 1; 0 where there is none. */
  int body(int c) {
    return body[c];
  }

  int bodies() {
    return bodies;
  }

  /** Whether a caught cell touches the casting; the margin of the grid is clear, so it has room. */
  boolean besideCasting(int c) {
    return state[c - 1] == Space.CASTING
        || state[c + 1] == Space.CASTING
        || state[c - across] == Space.CASTING
        || state[c + across] == Space.CASTING;
  }

  /** From a cell to the nearest clear one: cells along both axes, and their distance. */
  double[] way(int c) {
    return way(c, nearestClear(c));
  }

  /** Cells from a cell to the nearest one that is clear along any pull. */
  double toOpen(int c) {
    return way(c, nearest(c, openRow))[2];
  }

  private double[] way(int c, int q) {
    double du = q % across - c % across;
    double dv = q / across - c / across;
    return new double[] {du, dv, Math.hypot(du, dv)};
  }

  Hull hull(int b) {
    return hull(body, b);
  }

  /** Room with the casting ahead along the pull. */
  boolean held(int c) {
    return state[c] == Space.CAUGHT || state[c] == Space.OTHER;
  }

  private Hull hull(int[] labels, int label) {
    Hull h = new Hull();
    for (int c = 0; c < labels.length; c++) {
      if (labels[c] == label) {
        h.add(grid.u(c % across), grid.v(c / across));
      }
    }
    return h;
  }

  /** The hull of all the clear cells joined to one. */
  Hull opening(int q) {
    int[] seen = new int[state.length];
    flood(q, Space.CLEAR, seen, 1);
    return hull(seen, 1);
  }

  /** Cells that can be reached from the border without crossing a body. */
  boolean[] outside(int b) {
    if (outside[b] == null) {
      boolean[] seen = new boolean[state.length];
      IntList todo = new IntList();
      seen[0] = true;
      todo.add(0);
      while (todo.size() > 0) {
        int c = todo.pop();
        int u = c % across;
        spread(todo, seen, b, c, u > 0, -1);
        spread(todo, seen, b, c, u < across - 1, 1);
        spread(todo, seen, b, c, c >= across, -across);
        spread(todo, seen, b, c, c < state.length - across, across);
      }
      outside[b] = seen;
    }
    return outside[b];
  }

  private void spread(IntList todo, boolean[] seen, int b, int c, boolean exists, int step) {
    if (exists && !seen[c + step] && body[c + step] != b) {
      seen[c + step] = true;
      todo.add(c + step);
    }
  }

  /** How many separate runs of cells with a way out a patch touches. */
  int sides(IntList cells) {
    boolean[] touched = new boolean[state.length];
    IntList rim = new IntList();
    for (int k = 0; k < cells.size(); k++) {
      int c = cells.get(k);
      for (int step : new int[] {-1, 1, -across, across}) {
        if (open(c + step, true) && !touched[c + step]) {
          touched[c + step] = true;
          rim.add(c + step);
        }
      }
    }
    int sides = 0;
    for (int k = 0; k < rim.size(); k++) {
      sides += touched[rim.get(k)] && run(rim.get(k), touched) >= SIDE ? 1 : 0;
    }
    return sides;
  }

  /** Counts the touched cells joined to one, corners too, and takes their marks off. */
  private int run(int from, boolean[] touched) {
    int[] around = {-1, 1, -across, across, -across - 1, -across + 1, across - 1, across + 1};
    IntList todo = new IntList();
    touched[from] = false;
    todo.add(from);
    int size = 0;
    while (todo.size() > 0) {
      int c = todo.pop();
      size++;
      for (int step : around) {
        if (c + step >= 0 && c + step < touched.length && touched[c + step]) {
          touched[c + step] = false;
          todo.add(c + step);
        }
      }
    }
    return size;
  }

  /** Labels all cells of a kind joined to one, and lists them. */
  IntList flood(int from, byte kind, int[] labels, int label) {
    IntList all = new IntList();
    IntList todo = new IntList();
    labels[from] = label;
    todo.add(from);
    while (todo.size() > 0) {
      int c = todo.pop();
      all.add(c);
      int u = c % across;
      reach(todo, c, u > 0, -1, kind, labels, label);
      reach(todo, c, u < across - 1, 1, kind, labels, label);
      reach(todo, c, c >= across, -across, kind, labels, label);
      reach(todo, c, c < state.length - across, across, kind, labels, label);
    }
    return all;
  }

  private void reach(
      IntList todo, int c, boolean exists, int step, byte kind, int[] labels, int label) {
    if (exists && state[c + step] == kind && labels[c + step] == 0) {
      labels[c + step] = label;
      todo.add(c + step);
    }
  }

  private boolean open(int c, boolean anyPull) {
    return state[c] == Space.CLEAR || (anyPull && state[c] == Space.OTHER);
  }

  private int[] rows(boolean anyPull) {
    int[] out = new int[state.length];
    Arrays.fill(out, -1);
    int count = grid.along();
    for (int i = 0; i < across; i++) {
      int last = -1;
      for (int j = 0; j < count; j++) {
        last = open(j * across + i, anyPull) ? j : last;
        out[j * across + i] = last;
      }
      last = -1;
      for (int j = count - 1; j >= 0; j--) {
        int c = j * across + i;
        last = open(c, anyPull) ? j : last;
        if (last >= 0 && (out[c] < 0 || last - j < j - out[c])) {
          out[c] = last;
        }
      }
    }
    return out;
  }

  int nearestClear(int c) {
    return nearest(c, clearRow);
  }

  /** The nearest cell of a kind: over the columns outward, each with its nearest one. */
  private int nearest(int c, int[] row) {
    int i = c % across;
    int j = c / across;
    int best = -1;
    long least = Long.MAX_VALUE;
    for (int d = 0; d < across && (long) d * d < least; d++) {
      for (int k = i - d; k <= i + d; k += Math.max(1, 2 * d)) {
        if (k < 0 || k >= across || row[j * across + k] < 0) {
          continue;
        }
        long dj = (long) row[j * across + k] - j;
        if (d * (long) d + dj * dj < least) {
          least = d * (long) d + dj * dj;
          best = (int) (j + dj) * across + k;
        }
      }
    }
    return best;
  }
}
