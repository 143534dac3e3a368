package org.castwright.stretch;

import org.castwright.mesh.IntList;

/**
 * One layer of a space. In every patch of caught cells the mold has to give way sideways to the
 * nearest cell that is clear along the pull; what it has to pass is the casting behind it or, when
 * the casting surrounds it, the opening before it.
 */
final class Section {

  /**
   * Cells that a patch must be wide before it is taken to reach through the casting, and before it
   * is taken as shut in.
   */
  private static final double SURE_THROUGH = 2.5;

  private static final double SURE_SHUT = 4;

  /** Directions are taken from cells this near: one cell's is off by a cell in its length. */
  private static final int NEAR = 4;

  /** Mold that gives way along the casting (cosine to its normal) does not show its width. */
  private static final double OUTWARD = 0.6;

  private final Space space;
  private final Grid grid;
  private final int number;
  private final int across;
  private final Layer layer;
  private final int[] patch;

  Section(Space space, int number) {
    this.space = space;
    this.grid = space.grid();
    this.number = number;
    this.across = grid.across();
    this.layer = new Layer(space, number);
    this.patch = new int[grid.cells()];
  }

  /** Adds what this layer says about each place, {@code tallies} by the number of the place. */
  void measure(Tally[] tallies, double least) {
    int patches = 0;
    for (int c = 0; c < patch.length; c++) {
      if (layer.state(c) == Space.CAUGHT && patch[c] == 0) {
        IntList cells = layer.flood(c, Space.CAUGHT, patch, ++patches);
        measure(cells, tallies[space.place(number, c)], least);
      }
    }
  }

  /** Whether a patch is too narrow to count. */
  private boolean narrow(IntList cells, double least) {
    for (int k = 0; k < cells.size(); k++) {
      if (layer.toOpen(cells.get(k)) * grid.step() >= least) {
        return false;
      }
    }
    return true;
  }

  private void measure(IntList cells, Tally tally, double least) {
    if (narrow(cells, least)) {
      return;
    }
    Hull lip = new Hull();
    Hull[] throats = new Hull[layer.bodies() + 1];
    Hull[] openings = new Hull[layer.bodies() + 1];
    double widest = 0;
    boolean judged = false;
    for (int k = 0; k < cells.size(); k++) {
      int c = cells.get(k);
      lip.add(grid.u(c % across), grid.v(c / across));
      if (layer.besideCasting(c)) {
        double[] way = layer.way(c);
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
    tally.width(widest);
    int sides = layer.sides(cells);
    boolean through = sides > 1 && widest >= SURE_THROUGH * grid.step();
    boolean shut = (sides == 0 || !judged) && widest >= SURE_SHUT * grid.step();
    if (through || shut) {
      tally.fast(widest);
    }
    for (int b = 1; b <= layer.bodies(); b++) {
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

  /**
   * The widths that pass each other where the mold at a cell gives way; false where it gives way
   * along the casting, which says nothing of its width.
   */
  private boolean widths(int c, double give, Tally tally, Hull[] throats, Hull[] openings) {
    Walk walk = leaving(c);
    if (walk == null) {
      return false;
    }
    int hit = walk.back();
    if (hit < 0) {
      return false;
    }
    int q = layer.nearestClear(c);
    boolean around = layer.outside(layer.body(hit))[q];
    double[] widths = around ? walk.throat(layer.body(hit)) : walk.opening(give);
    if (widths[0] == 0) {
      return false;
    }
    double throat = widths[0] * grid.step();
    tally.widths(throat + (give + widths[1]) * grid.step(), throat);
    if (around && throats[layer.body(hit)] == null) {
      throats[layer.body(hit)] = layer.hull(layer.body(hit));
    } else if (!around && openings[layer.body(hit)] == null) {
      openings[layer.body(hit)] = layer.opening(q);
    }
    return true;
  }

  /**
   * The way out of a cell, in the direction in which its neighborhood gives way, or null where that
   * runs along the casting.
   */
  private Walk leaving(int c) {
    int i = c % across;
    int j = c / across;
    double du = 0;
    double dv = 0;
    double nu = 0;
    double nv = 0;
    for (int b = Math.max(1, j - NEAR); b <= Math.min(grid.along() - 2, j + NEAR); b++) {
      for (int a = Math.max(1, i - NEAR); a <= Math.min(across - 2, i + NEAR); a++) {
        int k = b * across + a;
        if (layer.state(k) == Space.CASTING) {
          nu -= a - i;
          nv -= b - j;
        } else if (patch[k] == patch[c] && layer.besideCasting(k)) {
          double[] way = layer.way(k);
          du += way[0];
          dv += way[1];
        }
      }
    }
    double length = Math.hypot(du, dv);
    boolean outward = du * nu + dv * nv >= OUTWARD * length * Math.hypot(nu, nv);
    return length > 0 && outward ? new Walk(i, j, du / length, dv / length) : null;
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
        if (c < 0 || layer.state(c) == Space.CLEAR || layer.state(c) == Space.OTHER) {
          return -1;
        }
        if (layer.state(c) == Space.CASTING) {
          start = t;
          return c;
        }
      }
    }

    /** Cells across the body from where it was hit, and caught cells on its far side. */
    double[] throat(int b) {
      double last = start;
      for (double t = start; at(t) >= 0; t -= 0.5) {
        last = layer.body(at(t)) == b ? t : last;
      }
      return new double[] {start - last + 0.5, caughtFrom(last - 0.5, -0.5)};
    }

    /** Clear cells ahead of the one at {@code distance}, and caught cells beyond them. */
    double[] opening(double distance) {
      double first = distance;
      while (at(first) >= 0 && layer.held(at(first))) {
        first += 0.5;
      }
      double t = first;
      while (at(t) >= 0 && layer.state(at(t)) == Space.CLEAR) {
        t += 0.5;
      }
      return new double[] {t - first, caughtFrom(t, 0.5)};
    }

    /** How far the mold gives way from here on, cells: no farther than to the nearest clear. */
    private double caughtFrom(double from, double step) {
      double t = from;
      while (at(t) >= 0 && layer.held(at(t))) {
        t += step;
      }
      if (t == from) {
        return 0;
      }
      double nearest = Math.max(layer.way(at(from))[2], layer.way(at(t - step))[2]);
      return Math.min(Math.abs(t - from), nearest);
    }
  }
}
