package org.castwright.heat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;

/**
 * Places that freeze after all round them: the maxima of the times of freezing. Cells join from the
 * last to the first; where two pools meet, the one that freezes sooner is cut off at that time, and
 * what was still liquid in it then can be fed by nothing but a riser of its own (a merge tree:
 * Carr, Snoeyink, Axen, Comput. Geom. 24, 2003).
 */
final class HotSpots {

  /** A pool that is cut off for a lesser share of the whole time is noise of the grid. */
  private static final double LEAST_PERSISTENCE = 0.05;

  /** As is one of fewer cells. */
  private static final int FEWEST_CELLS = 8;

  private final Cells cells;
  private final float[] setS;
  private final BitSet channels;
  private final int[] pool;
  private final List<HeatResult.HotSpot> found = new ArrayList<>();

  private int[] top = new int[64];
  private int[] size = new int[64];
  private int[] parent = new int[64];
  private int pools;

  private HotSpots(Cells cells, float[] setS, BitSet channels) {
    this.cells = cells;
    this.setS = setS;
    this.channels = channels;
    this.pool = new int[setS.length];
    Arrays.fill(pool, -1);
  }

  /**
   * The hot spots, last first.
   *
   * @param setS time of setting of each cell, NaN outside what was poured
   * @param channels cells of gate and vents
   */
  static List<HeatResult.HotSpot> of(Cells cells, float[] setS, BitSet channels) {
    return new HotSpots(cells, setS, channels).run();
  }

  private List<HeatResult.HotSpot> run() {
    long[] order = lastFirst();
    if (order.length == 0) {
      return List.of();
    }
    double last = setS[cell(order[0])];
    for (long o : order) {
      int c = cell(o);
      int own = -1;
      for (int axis = 0; axis < 3; axis++) {
        int s = cells.stride(axis);
        own = meet(c, c + s, own, last);
        own = meet(c, c - s, own, last);
      }
      if (own < 0) {
        own = open(c);
      }
      pool[c] = own;
      size[own]++;
    }
    for (int p = 0; p < pools; p++) {
      if (root(p) == p) {
        close(p, setS[cell(order[order.length - 1])], last);
      }
    }
    found.sort(
        Comparator.comparingDouble((HeatResult.HotSpot h) -> -h.setS())
            .thenComparingDouble(h -> -h.cutOffMm3()));
    return found;
  }

  /** Joins the neighbor's pool, if it has one; the pool of the cell so far, or −1. */
  private int meet(int c, int neighbor, int own, double last) {
    if (neighbor < 0 || neighbor >= pool.length || pool[neighbor] < 0) {
      return own;
    }
    int other = root(pool[neighbor]);
    if (own < 0 || own == other) {
      return other;
    }
    boolean keep = setS[top[own]] >= setS[top[other]];
    int stays = keep ? own : other;
    int ends = keep ? other : own;
    close(ends, setS[c], last);
    parent[ends] = stays;
    size[stays] += size[ends];
    return stays;
  }

  private void close(int p, double atS, double last) {
    double own = setS[top[p]];
    boolean lasts = size[p] >= FEWEST_CELLS && own - atS >= LEAST_PERSISTENCE * last;
    if (lasts || own == last) {
      found.add(
          new HeatResult.HotSpot(
              HeatResult.Place.of(cells.middle(top[p])),
              channels.get(top[p]),
              own,
              atS,
              size[p] * cells.volumeMm3()));
    }
  }

  private int open(int c) {
    if (pools == top.length) {
      top = Arrays.copyOf(top, 2 * pools);
      size = Arrays.copyOf(size, 2 * pools);
      parent = Arrays.copyOf(parent, 2 * pools);
    }
    top[pools] = c;
    parent[pools] = pools;
    return pools++;
  }

  private int root(int p) {
    int r = p;
    while (parent[r] != r) {
      r = parent[r];
    }
    int q = p;
    while (parent[q] != r) {
      int next = parent[q];
      parent[q] = r;
      q = next;
    }
    return r;
  }

  /** Cells of the casting, last first, each packed behind its time so that they sort as numbers. */
  private long[] lastFirst() {
    int n = 0;
    long[] keys = new long[setS.length];
    for (int c = 0; c < setS.length; c++) {
      if (!Float.isNaN(setS[c])) {
        // times are not negative, so their bits sort as they do
        keys[n++] = (long) -Float.floatToIntBits(setS[c]) << Integer.SIZE | c;
      }
    }
    long[] out = Arrays.copyOf(keys, n);
    Arrays.sort(out);
    return out;
  }

  private static int cell(long key) {
    return (int) key;
  }
}
