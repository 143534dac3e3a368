package org.castwright.division;

import java.util.Arrays;
import java.util.List;

/**
 * The rule of leaving, on cells: a piece takes with it whatever of what is left lies ahead of its
 * own share along its pull.
 */
final class Closure {

  private final Cells cells;
  private final int[][] column;
  private final float[][] height;
  private final int[] columns;

  Closure(Cells cells, List<PullColumns> pulls) {
    this.cells = cells;
    int k = pulls.size();
    column = new int[k][cells.size()];
    height = new float[k][cells.size()];
    columns = new int[k];
    for (int i = 0; i < k; i++) {
      PullColumns p = pulls.get(i);
      int across = (int) (p.raster.nx() * p.raster.pixel() / cells.cell) + 2;
      int along = (int) (p.raster.ny() * p.raster.pixel() / cells.cell) + 2;
      columns[i] = across * along;
      for (int c = 0; c < cells.size(); c++) {
        double x = cells.x(c);
        double y = cells.y(c);
        double z = cells.z(c);
        double u = p.frame.u().x() * x + p.frame.u().y() * y + p.frame.u().z() * z;
        double v = p.frame.v().x() * x + p.frame.v().y() * y + p.frame.v().z() * z;
        int a = (int) ((u - p.raster.x0()) / cells.cell + 0.5);
        int b = (int) ((v - p.raster.y0()) / cells.cell + 0.5);
        column[i][c] = b * across + a;
        height[i][c] = (float) p.height(x, y, z);
      }
    }
  }

  /**
   * Lets pieces leave in an order.
   *
   * @param wanted piece of each cell, -1 in the casting
   * @param taken result: the piece that takes each cell
   * @return cells that go with another piece than wanted
   */
  int run(byte[] wanted, int[] order, byte[] taken) {
    Arrays.fill(taken, (byte) -1);
    int stolen = 0;
    for (int n = 0; n < order.length; n++) {
      stolen += take(wanted, order[n], n == order.length - 1, taken);
    }
    return stolen;
  }

  private int take(byte[] wanted, int i, boolean last, byte[] taken) {
    float[] low = new float[columns[i]];
    Arrays.fill(low, last ? Float.NEGATIVE_INFINITY : Float.POSITIVE_INFINITY);
    int[] col = column[i];
    float[] up = height[i];
    for (int c = 0; c < taken.length && !last; c++) {
      if (taken[c] < 0 && wanted[c] == i) {
        low[col[c]] = Math.min(low[col[c]], up[c]);
      }
    }
    int stolen = 0;
    for (int c = 0; c < taken.length; c++) {
      if (wanted[c] >= 0 && taken[c] < 0 && up[c] >= low[col[c]]) {
        taken[c] = (byte) i;
        stolen += wanted[c] == i ? 0 : 1;
      }
    }
    return stolen;
  }

  /** Cells at or ahead of some that are set along a piece's pull. */
  boolean[] ahead(boolean[] set, int piece) {
    float[] low = new float[columns[piece]];
    Arrays.fill(low, Float.POSITIVE_INFINITY);
    int[] col = column[piece];
    float[] up = height[piece];
    for (int c = 0; c < set.length; c++) {
      if (set[c]) {
        low[col[c]] = Math.min(low[col[c]], up[c]);
      }
    }
    boolean[] ahead = new boolean[set.length];
    for (int c = 0; c < set.length; c++) {
      ahead[c] = up[c] >= low[col[c]];
    }
    return ahead;
  }

  Cells cells() {
    return cells;
  }
}
