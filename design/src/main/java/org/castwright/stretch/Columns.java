package org.castwright.stretch;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * The casting in columns through the middles of a grid's cells: where each enters and leaves it.
 * Crossings of shared edges are computed from the same end, so a closed mesh is left as often as it
 * is entered.
 */
final class Columns {

  private final Grid grid;
  private final int[] start;
  private final double[] height;
  private final boolean[] enters;

  private int[] column = new int[1024];
  private double[] found = new double[1024];
  private boolean[] way = new boolean[1024];
  private int size;

  Columns(TriMesh casting, Grid grid) {
    this.grid = grid;
    TriMesh local = casting.toLocal(grid.frame());
    for (int f = 0; f < local.triangleCount(); f++) {
      scan(local.xyz(), local.tri(), 3 * f);
    }
    start = new int[grid.cells() + 1];
    for (int k = 0; k < size; k++) {
      start[column[k] + 1]++;
    }
    for (int c = 0; c < grid.cells(); c++) {
      start[c + 1] += start[c];
    }
    height = new double[size];
    enters = new boolean[size];
    int[] at = Arrays.copyOf(start, grid.cells());
    for (int k = 0; k < size; k++) {
      insert(at[column[k]]++, start[column[k]], found[k], way[k]);
    }
    column = null;
    found = null;
    way = null;
  }

  /** Puts a crossing in order among those of its column so far. */
  private void insert(int end, int first, double w, boolean in) {
    int k = end;
    while (k > first && height[k - 1] > w) {
      height[k] = height[k - 1];
      enters[k] = enters[k - 1];
      k--;
    }
    height[k] = w;
    enters[k] = in;
  }

  private void scan(double[] uvw, int[] tri, int f) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      low = Math.min(low, uvw[3 * tri[f + k] + 1]);
      high = Math.max(high, uvw[3 * tri[f + k] + 1]);
    }
    int first = (int) Math.max(0, Math.floor((low - grid.v0()) / grid.step() - 0.5));
    for (int j = first; j < grid.along() && grid.v(j) <= high; j++) {
      row(uvw, tri, f, j);
    }
  }

  private void row(double[] uvw, int[] tri, int f, int j) {
    double v = grid.v(j);
    double riseU = 0;
    double riseW = 0;
    double fallU = 0;
    double fallW = 0;
    boolean cut = false;
    for (int k = 0; k < 3; k++) {
      int p = 3 * tri[f + k];
      int q = 3 * tri[f + (k + 1) % 3];
      boolean rises = uvw[q + 1] > v;
      if (uvw[p + 1] > v == rises) {
        continue;
      }
      int a = rises ? p : q;
      int b = rises ? q : p;
      double t = (v - uvw[a + 1]) / (uvw[b + 1] - uvw[a + 1]);
      double u = uvw[a] + t * (uvw[b] - uvw[a]);
      double w = uvw[a + 2] + t * (uvw[b + 2] - uvw[a + 2]);
      cut = true;
      if (rises) {
        riseU = u;
        riseW = w;
      } else {
        fallU = u;
        fallW = w;
      }
    }
    if (!cut || riseU == fallU) {
      return;
    }
    double lowU = Math.min(riseU, fallU);
    double highU = Math.max(riseU, fallU);
    int i = (int) Math.max(0, Math.floor((lowU - grid.u0()) / grid.step() - 0.5));
    while (i < grid.across() && grid.u(i) < lowU) {
      i++;
    }
    for (; i < grid.across() && grid.u(i) < highU; i++) {
      double t = (grid.u(i) - riseU) / (fallU - riseU);
      add(j * grid.across() + i, riseW + t * (fallW - riseW), riseU < fallU);
    }
  }

  private void add(int c, double w, boolean in) {
    if (size == column.length) {
      column = Arrays.copyOf(column, 2 * size);
      found = Arrays.copyOf(found, 2 * size);
      way = Arrays.copyOf(way, 2 * size);
    }
    column[size] = c;
    found[size] = w;
    way[size++] = in;
  }

  /** Whether the casting is at this height of a cell. */
  boolean holds(int cell, double w) {
    int inside = 0;
    for (int k = start[cell]; k < start[cell + 1] && height[k] <= w; k++) {
      inside += enters[k] ? 1 : -1;
    }
    return inside > 0;
  }

  /** Whether a column holds any casting above a height. */
  boolean ahead(int cell, double w) {
    return start[cell + 1] > start[cell] && height[start[cell + 1] - 1] > w;
  }
}
