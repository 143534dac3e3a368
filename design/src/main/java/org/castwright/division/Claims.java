package org.castwright.division;

import java.util.Arrays;

/**
 * Room beside what only one piece frees. A piece that ended right there would end in a feather; so
 * cells near such surface and space are the piece's too, as far as it frees them and none that
 * leaves earlier must pass. And what a piece must pass goes with it or before it.
 */
final class Claims {

  private final Cells cells;
  private final Closure closure;
  private final byte[] mask;
  private final byte[] free;
  private final int pieces;

  /**
   * @param mask pieces that may take a cell
   * @param free pieces that free it at all
   */
  Claims(Cells cells, Closure closure, byte[] mask, byte[] free, int pieces) {
    this.cells = cells;
    this.closure = closure;
    this.mask = mask;
    this.free = free;
    this.pieces = pieces;
  }

  /**
   * Narrows down which pieces may take cells.
   *
   * @param reach steps from cell to cell
   * @param rank place of each piece in the order, or null while it is not known
   */
  byte[] narrowed(int reach, int[] rank) {
    byte[][] near = new byte[pieces][];
    boolean[][] ahead = new boolean[pieces][];
    for (int i = 0; i < pieces; i++) {
      boolean[] only = only(i);
      near[i] = steps(only, reach);
      ahead[i] = closure.ahead(only, i);
    }
    byte[] out = mask.clone();
    for (int c = 0; c < out.length; c++) {
      int m = mask[c] & 0xff;
      if (cells.solid[c] || Integer.bitCount(free[c] & 0xff) < 2) {
        continue;
      }
      int may = may(c, ahead, rank);
      int claims = 0;
      int least = reach + 1;
      for (int i = 0; i < pieces; i++) {
        if ((free[c] & may & 1 << i) != 0 && near[i][c] <= least && near[i][c] <= reach) {
          claims = near[i][c] < least ? 1 << i : claims | 1 << i;
          least = near[i][c];
        }
      }
      out[c] = (byte) (claims != 0 ? claims : (m & may) != 0 ? m & may : m);
    }
    return out;
  }

  /** Pieces that may take a cell past which others must. */
  private int may(int c, boolean[][] ahead, int[] rank) {
    int may = (1 << pieces) - 1;
    for (int j = 0; j < pieces; j++) {
      for (int i = 0; i < pieces && ahead[j][c]; i++) {
        may &= i == j || (rank != null && rank[i] < rank[j]) ? -1 : ~(1 << i);
      }
    }
    return may;
  }

  private boolean[] only(int i) {
    boolean[] only = new boolean[mask.length];
    for (int c = 0; c < only.length; c++) {
      only[c] = !cells.solid[c] && (free[c] & 0xff) == 1 << i;
    }
    return only;
  }

  /** Steps to the nearest cell that is set, through the mold's space; beyond reach more. */
  private byte[] steps(boolean[] set, int reach) {
    byte[] d = new byte[set.length];
    Arrays.fill(d, Byte.MAX_VALUE);
    int[] queue = new int[set.length];
    int to = 0;
    for (int c = 0; c < set.length; c++) {
      if (set[c]) {
        d[c] = 0;
        queue[to++] = c;
      }
    }
    int[] steps = cells.steps();
    for (int q = 0; q < to; q++) {
      int c = queue[q];
      for (int s = 0; s < 6 && d[c] < reach; s++) {
        if (cells.has(c, s) && !cells.solid[c + steps[s]] && d[c + steps[s]] > d[c] + 1) {
          d[c + steps[s]] = (byte) (d[c] + 1);
          queue[to++] = c + steps[s];
        }
      }
    }
    return d;
  }
}
