package org.castwright.stretch;

import java.util.Arrays;

/**
 * One layer of a space. In every patch of caught cells the mold has to give way sideways to the
 * nearest cell that is clear along the pull; what it has to pass is the casting behind it or, when
 * the casting surrounds it, the opening before it.
 */
final class Section {

  /** A patch that is open on two sides, each of so many cells, reaches through the casting. */
  private static final int SIDE = 3;

  /** Cells that a patch must be wide before that is believed, and before it is taken as shut in. */
  private static final double SURE_THROUGH = 2.5;

  private static final double SURE_SHUT = 4;

  /** Directions are taken from cells this near: one cell's is off by a cell in its length. */
  private static final int NEAR = 4;

  /** Mold that gives way along the casting (cosine to its normal) does not show its width. */
  private static final double OUTWARD = 0.6;

  private final Space space;
  private final Grid grid;
  private final int layer;
  private final int across;
  private final byte[] state;

  /** For each cell the row of the nearest clear cell of its column, or −1. */
  private final int[] clearRow;

  private final int[] patch;
  private final int[] body;
  private int bodies;
  private final boolean[][] outside;

  Section(Space space, int layer) {
    this.space = space;
    this.grid = space.grid();
    this.layer = layer;
    this.across = grid.across();
    this.state = new byte[grid.cells()];
    for (int c = 0; c < state.length; c++) {
      state[c] = space.state(layer, c);
    }
    clearRow = clearRows();
    patch = new int[state.length];
    body = new int[state.length];
    for (int c = 0; c < state.length; c++) {
      if (state[c] == Space.CASTING && body[c] == 0) {
        flood(c, Space.CASTING, body, ++bodies);
      }
    }
    outside = new boolean[bodies + 1][];
  }

  /** Adds what this layer says about each place, {@code tallies} by the number of the place. */
  void measure(Tally[] tallies, double least) {
    int patches = 0;
    for (int c = 0; c < state.length; c++) {
      if (state[c] == Space.CAUGHT && patch[c] == 0) {
        IntList cells = flood(c, Space.CAUGHT, patch, ++patches);
        measure(cells, tallies[space.place(layer, c)], least);
      }
    }
  }

  private void measure(IntList cells, Tally tally, double least) {
    Hull lip = new Hull();
    Hull[] throats = new Hull[bodies + 1];
    Hull[] openings = new Hull[bodies + 1];
    double widest = 0;
    boolean judged = false;
    for (int k = 0; k < cells.size(); k++) {
      int c = cells.get(k);
      lip.add(grid.u(c % across), grid.v(c / across));
      if (besideCasting(c)) {
        double[] way = way(c);
        double give = way[2];
        // the last cell before the clear one
        double last = 1 - 1 / give;
        lip.add(
            grid.u(c % across) + last * way[0] * grid.step(),
            grid.v(c / across) + last * way[1] * grid.step());
        widest = Math.max(widest, give * grid.step());
        judged |= give * grid.step() >= least && widths(c, give, tally, throats, openings);
      }
    }
    if (widest < least) {
      return;
    }
    tally.width(widest);
    int sides = sides(cells);
    boolean through = sides > 1 && widest >= SURE_THROUGH * grid.step();
    boolean shut = (sides == 0 || !judged) && widest >= SURE_SHUT * grid.step();
    if (through || shut) {
      tally.fast(widest);
    }
    for (int b = 1; b <= bodies; b++) {
      compare(throats[b], lip, tally);
      compare(openings[b], lip, tally);
    }
  }

  private void compare(Hull throat, Hull patchHull, Tally tally) {
    if (throat != null) {
      Hull lip = new Hull();
      lip.add(throat);
      lip.add(patchHull);
      tally.girths(lip.girth(grid.step()), throat.girth(grid.step()));
    }
  }

  private boolean besideCasting(int c) {
    // the margin of the grid is clear, so every caught cell has four neighbors
    return state[c - 1] == Space.CASTING
        || state[c + 1] == Space.CASTING
        || state[c - across] == Space.CASTING
        || state[c + across] == Space.CASTING;
  }

  /** From a caught cell to the nearest clear one: cells along both axes, and their distance. */
  private double[] way(int c) {
    int q = nearestClear(c);
    double du = q % across - c % across;
    double dv = q / across - c / across;
    return new double[] {du, dv, Math.hypot(du, dv)};
  }

  /**
   * The widths that pass each other where the mold at a cell gives way, in the direction in which
   * its neighborhood does; false where that runs along the casting and says nothing of its width.
   */
  private boolean widths(int c, double give, Tally tally, Hull[] throats, Hull[] openings) {
    int i = c % across;
    int j = c / across;
    double du = 0;
    double dv = 0;
    double nu = 0;
    double nv = 0;
    for (int b = Math.max(1, j - NEAR); b <= Math.min(grid.along() - 2, j + NEAR); b++) {
      for (int a = Math.max(1, i - NEAR); a <= Math.min(across - 2, i + NEAR); a++) {
        int k = b * across + a;
        if (state[k] == Space.CASTING) {
          nu -= a - i;
          nv -= b - j;
        } else if (patch[k] == patch[c] && besideCasting(k)) {
          double[] way = way(k);
          du += way[0];
          dv += way[1];
        }
      }
    }
    double length = Math.hypot(du, dv);
    if (length == 0 || du * nu + dv * nv < OUTWARD * length * Math.hypot(nu, nv)) {
      return false;
    }
    Walk walk = new Walk(i, j, du / length, dv / length);
    int hit = walk.back();
    if (hit < 0) {
      return false;
    }
    int q = nearestClear(c);
    boolean around = outside(body[hit])[q];
    double[] widths = around ? walk.throat(body[hit]) : walk.opening(give);
    if (widths[0] == 0) {
      return false;
    }
    double throat = widths[0] * grid.step();
    tally.widths(throat + (give + widths[1]) * grid.step(), throat);
    if (around && throats[body[hit]] == null) {
      throats[body[hit]] = hull(body, body[hit]);
    } else if (!around && openings[body[hit]] == null) {
      openings[body[hit]] = opening(q);
    }
    return true;
  }

  /** A straight walk through the cells, from one cell in the direction in which its mold leaves. */
  private final class Walk {
    private final double u;
    private final double v;
    private final double du;
    private final double dv;
    private double start;

    Walk(int u, int v, double du, double dv) {
      this.u = u;
      this.v = v;
      this.du = du;
      this.dv = dv;
    }

    private int at(double t) {
      int i = (int) Math.rint(u + t * du);
      int j = (int) Math.rint(v + t * dv);
      return i < 0 || j < 0 || i >= across || j >= grid.along() ? -1 : j * across + i;
    }

    /** The casting's cell behind, or −1 if there is room instead. */
    int back() {
      for (double t = -0.5; ; t -= 0.5) {
        int c = at(t);
        if (c < 0 || state[c] == Space.CLEAR || state[c] == Space.OTHER) {
          return -1;
        }
        if (state[c] == Space.CASTING) {
          start = t;
          return c;
        }
      }
    }

    /** Cells across the body from where it was hit, and caught cells on its far side. */
    double[] throat(int b) {
      double last = start;
      for (double t = start; at(t) >= 0; t -= 0.5) {
        last = body[at(t)] == b ? t : last;
      }
      return new double[] {start - last + 0.5, caughtFrom(last - 0.5, -0.5)};
    }

    /** Clear cells ahead of the one at {@code distance}, and caught cells beyond them. */
    double[] opening(double distance) {
      double first = distance;
      while (at(first) >= 0 && held(at(first))) {
        first += 0.5;
      }
      double t = first;
      while (at(t) >= 0 && state[at(t)] == Space.CLEAR) {
        t += 0.5;
      }
      return new double[] {t - first, caughtFrom(t, 0.5)};
    }

    /** How far the mold gives way from here on, cells: no farther than to the nearest clear. */
    private double caughtFrom(double from, double step) {
      double t = from;
      while (at(t) >= 0 && held(at(t))) {
        t += step;
      }
      if (t == from) {
        return 0;
      }
      double nearest = Math.max(way(at(from))[2], way(at(t - step))[2]);
      return Math.min(Math.abs(t - from), nearest);
    }
  }

  /** Room with the casting ahead along the pull. */
  private boolean held(int c) {
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
  private Hull opening(int q) {
    int[] seen = new int[state.length];
    flood(q, Space.CLEAR, seen, 1);
    return hull(seen, 1);
  }

  /** Cells that can be reached from the border without crossing a body. */
  private boolean[] outside(int b) {
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
  private int sides(IntList cells) {
    boolean[] touched = new boolean[state.length];
    IntList rim = new IntList();
    for (int k = 0; k < cells.size(); k++) {
      int c = cells.get(k);
      for (int step : new int[] {-1, 1, -across, across}) {
        if ((state[c + step] == Space.CLEAR || state[c + step] == Space.OTHER)
            && !touched[c + step]) {
          touched[c + step] = true;
          rim.add(c + step);
        }
      }
    }
    int sides = 0;
    int[] around = {-1, 1, -across, across, -across - 1, -across + 1, across - 1, across + 1};
    for (int k = 0; k < rim.size(); k++) {
      if (!touched[rim.get(k)]) {
        continue;
      }
      IntList todo = new IntList();
      touched[rim.get(k)] = false;
      todo.add(rim.get(k));
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
      sides += size >= SIDE ? 1 : 0;
    }
    return sides;
  }

  private IntList flood(int from, byte kind, int[] labels, int label) {
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

  private int[] clearRows() {
    int[] out = new int[state.length];
    Arrays.fill(out, -1);
    int rows = grid.along();
    for (int i = 0; i < across; i++) {
      int last = -1;
      for (int j = 0; j < rows; j++) {
        last = state[j * across + i] == Space.CLEAR ? j : last;
        out[j * across + i] = last;
      }
      last = -1;
      for (int j = rows - 1; j >= 0; j--) {
        int c = j * across + i;
        last = state[c] == Space.CLEAR ? j : last;
        if (last >= 0 && (out[c] < 0 || last - j < j - out[c])) {
          out[c] = last;
        }
      }
    }
    return out;
  }

  /** The nearest clear cell: over the columns outward, each with its nearest one. */
  private int nearestClear(int c) {
    int i = c % across;
    int j = c / across;
    int best = -1;
    long least = Long.MAX_VALUE;
    for (int d = 0; d < across && (long) d * d < least; d++) {
      for (int k = i - d; k <= i + d; k += Math.max(1, 2 * d)) {
        if (k < 0 || k >= across || clearRow[j * across + k] < 0) {
          continue;
        }
        long dj = (long) clearRow[j * across + k] - j;
        if (d * (long) d + dj * dj < least) {
          least = d * (long) d + dj * dj;
          best = (int) (j + dj) * across + k;
        }
      }
    }
    return best;
  }
}
