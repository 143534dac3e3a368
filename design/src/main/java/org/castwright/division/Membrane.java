package org.castwright.division;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * A sheet as a membrane: drawn to what its columns ask for, smooth where they ask for nothing,
 * between its bounds, and no steeper than the draft allows where it climbs out of a piece's share.
 * Solved by relaxation with projection (methods for obstacle problems: Glowinski, Lions and
 * Trémolières, Numerical Analysis of Variational Inequalities, 1981).
 */
final class Membrane {

  /** Steepest rise where nothing asks for one, from the plane across the pull: 5° of draft. */
  private static final double STEEPEST = 1 / StrictMath.tan(Math.toRadians(5));

  private static final int ROUNDS = 300;

  /** How far a sheet stays clear of columns that one piece has to itself, mm. */
  private static final double OVER = 4;

  /** Columns away from a piece's share from which on its sheet may not be among later shares. */
  private static final int AWAY = 4;

  /** What it keeps from them, mm. */
  private static final double CLEAR = 0.5;

  /** How firmly a contact holds a column that asks for nothing else any more. */
  private static final double GIVES = 0.25;

  /** Rounds after which contacts are looked for, and after how many anew. */
  private static final int SETTLED = 40;

  private static final int RENEWED = 10;

  /** Push of a column that a later piece is to have, up only. */
  private static final double HELD = 0.1;

  /** Pull of the casting on a sheet that should run inside it. */
  private static final double DRAWN = 0.5;

  /** Room beside what must leave with the piece, columns. */
  private static final int LAND = 2;

  /** Columns in a square of nine below which they are noise. */
  private static final int COMPANY = 4;

  private final SheetColumns ask;
  private final int nx;
  private final int ny;
  private final double top;
  private final double[] most;
  private final double[] x;
  private final double[] least;
  private final double[] ceiling;

  /** Whether a later piece holds the sheet up there and nothing draws it down. */
  private final boolean[] held;

  private double[] target;

  /** Columns to the nearest that the piece does not take wholly. */
  private int[] fromEnd;

  private final Contacts contacts;

  private Membrane(SheetColumns ask, Contacts contacts) {
    this.ask = ask;
    this.contacts = contacts;
    nx = ask.nx;
    ny = ask.ny;
    top = ask.view.high + 1;
    most = new double[nx * ny];
    x = new double[nx * ny];
    least = new double[nx * ny];
    ceiling = new double[nx * ny];
    held = new boolean[nx * ny];
  }

  /** Heights of the sheet over all columns, mm. */
  static double[] of(SheetColumns ask, Contacts contacts) {
    Membrane m = new Membrane(ask, contacts);
    m.begin();
    m.land();
    for (int r = 0; r < ROUNDS; r++) {
      if (r >= SETTLED && r % RENEWED == 0) {
        contacts.find(m.x);
      }
      for (int color = 0; color < 2; color++) {
        int c = color;
        IntStream.range(0, m.ny).parallel().forEach(j -> m.relax(j, c));
      }
    }
    return m.x;
  }

  private void begin() {
    int n = nx * ny;
    boolean[] known = new boolean[n];
    double[] cone = new double[n];
    for (int o = 0; o < n; o++) {
      known[o] = !Double.isNaN(ask.target[o]);
      cone[o] = known[o] ? ask.target[o] : Double.POSITIVE_INFINITY;
    }
    lower(cone, STEEPEST * ask.view.raster.pixel());
    for (int o = 0; o < n; o++) {
      if (known[o]) {
        x[o] = Math.min(ask.target[o], cone[o]);
      } else if (!ask.through[o] && ask.later[o] > Double.NEGATIVE_INFINITY) {
        x[o] = Math.min(top, Math.min(cone[o], ask.later[o] + OVER));
        held[o] = true;
      } else {
        x[o] = Double.NEGATIVE_INFINITY;
      }
    }
    spread(known);
    target = x.clone();
    boolean[] share = new boolean[n];
    boolean[] end = new boolean[n];
    for (int o = 0; o < n; o++) {
      target[o] = ask.through[o] ? ask.bottom[o] - OVER : target[o];
      share[o] = known[o] || ask.through[o];
      end[o] = (known[o] && !ask.inside(o)) || held[o];
    }
    int[] fromShare = steps(share);
    fromEnd = steps(end);
    for (int o = 0; o < n; o++) {
      least[o] = ask.least[o];
      ceiling[o] = Double.POSITIVE_INFINITY;
      if (held[o] && fromShare[o] > AWAY) {
        least[o] = Math.max(least[o], Math.min(x[o], ask.later[o] + CLEAR));
      } else if (ask.through[o] && fromEnd[o] > AWAY) {
        ceiling[o] = ask.bottom[o] - CLEAR;
      }
    }
  }

  /** Steps from each column to the nearest that is set, many where none is. */
  private int[] steps(boolean[] set) {
    int[] from = nearest(set);
    int[] d = new int[from.length];
    for (int o = 0; o < d.length; o++) {
      int row = o / nx;
      d[o] =
          from[o] < 0
              ? Integer.MAX_VALUE
              : Math.abs(o % nx - from[o] % nx) + Math.abs(row - from[o] / nx);
    }
    return d;
  }

  private void relax(int j, int color) {
    for (int i = (j + color) % 2; i < nx; i += 2) {
      int o = j * nx + i;
      double sum = 0;
      double count = 0;
      if (i > 0) {
        sum += x[o - 1];
        count++;
      }
      if (i + 1 < nx) {
        sum += x[o + 1];
        count++;
      }
      if (j > 0) {
        sum += x[o - nx];
        count++;
      }
      if (j + 1 < ny) {
        sum += x[o + nx];
        count++;
      }
      double v = sum / count;
      double w = ask.weight[o];
      if (held[o]) {
        w = v < target[o] ? HELD : 0;
      } else if (ask.through[o]) {
        w = v > target[o] ? HELD : 0;
      }
      double to = target[o];
      double firm = contacts.weight[o];
      if (v > ask.cap[o]) {
        double deep = Math.min(1, fromEnd[o] / (2.0 * AWAY));
        w = HELD + deep * (DRAWN - HELD);
        to = ask.cap[o];
        firm *= 1 - deep;
      }
      w *= Math.max(0, 1 - firm / GIVES);
      double square = firm > 0 ? firm * contacts.aim[o] : 0;
      v = (sum + w * to + square) / (count + w + firm);
      x[o] = Math.max(Math.min(v, Math.min(top, Math.min(most[o], ceiling[o]))), least[o]);
    }
  }

  /** What must leave with the piece keeps some room beside it. */
  private void land() {
    Arrays.fill(most, Double.POSITIVE_INFINITY);
    for (int j = 0; j < ny; j++) {
      for (int i = 0; i < nx; i++) {
        if (ask.most[j * nx + i] == Double.POSITIVE_INFINITY || lone(i, j)) {
          continue;
        }
        for (int b = Math.max(0, j - LAND); b <= Math.min(ny - 1, j + LAND); b++) {
          for (int a = Math.max(0, i - LAND); a <= Math.min(nx - 1, i + LAND); a++) {
            if ((a - i) * (a - i) + (b - j) * (b - j) <= LAND * LAND + 1) {
              most[b * nx + a] = Math.min(most[b * nx + a], ask.most[j * nx + i]);
            }
          }
        }
      }
    }
  }

  /** Whether hardly a column round one must leave with the piece too. */
  private boolean lone(int i, int j) {
    int n = 0;
    for (int b = Math.max(0, j - 1); b <= Math.min(ny - 1, j + 1); b++) {
      for (int a = Math.max(0, i - 1); a <= Math.min(nx - 1, i + 1); a++) {
        n += ask.most[b * nx + a] < Double.POSITIVE_INFINITY ? 1 : 0;
      }
    }
    return n < COMPANY;
  }

  /** The lower envelope of cones that rise so much a column, by two pairs of sweeps. */
  private void lower(double[] d, double rise) {
    double diagonal = rise * Math.sqrt(2);
    for (int pass = 0; pass < 2; pass++) {
      for (int j = 0; j < ny; j++) {
        for (int i = 0; i < nx; i++) {
          lower(d, i, j, -1, 0, rise);
          lower(d, i, j, 0, -1, rise);
          lower(d, i, j, -1, -1, diagonal);
          lower(d, i, j, 1, -1, diagonal);
        }
      }
      for (int j = ny - 1; j >= 0; j--) {
        for (int i = nx - 1; i >= 0; i--) {
          lower(d, i, j, 1, 0, rise);
          lower(d, i, j, 0, 1, rise);
          lower(d, i, j, 1, 1, diagonal);
          lower(d, i, j, -1, 1, diagonal);
        }
      }
    }
  }

  private void lower(double[] d, int i, int j, int di, int dj, double rise) {
    int a = i + di;
    int b = j + dj;
    if (a >= 0 && b >= 0 && a < nx && b < ny) {
      d[j * nx + i] = Math.min(d[j * nx + i], d[b * nx + a] + rise);
    }
  }

  /** Unknown heights begin as that of the nearest known one, where nothing holds them higher. */
  private void spread(boolean[] known) {
    int[] from = nearest(known);
    for (int o = 0; o < x.length; o++) {
      x[o] = from[o] < 0 ? top : from[o] == o ? x[o] : Math.max(x[o], x[from[o]]);
    }
  }

  /** For each column the nearest that is set, by steps to four neighbors; -1 where none is. */
  private int[] nearest(boolean[] set) {
    int[] from = new int[set.length];
    int[] queue = new int[set.length];
    int to = 0;
    Arrays.fill(from, -1);
    for (int o = 0; o < set.length; o++) {
      if (set[o]) {
        from[o] = o;
        queue[to++] = o;
      }
    }
    for (int q = 0; q < to; q++) {
      int o = queue[q];
      int i = o % nx;
      for (int s : new int[] {-1, 1, -nx, nx}) {
        int p = o + s;
        boolean in = p >= 0 && p < set.length && Math.abs(p % nx - i) <= 1;
        if (in && from[p] < 0) {
          from[p] = from[o];
          queue[to++] = p;
        }
      }
    }
    return from;
  }
}
