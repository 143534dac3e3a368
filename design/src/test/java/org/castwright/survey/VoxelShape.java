package org.castwright.survey;

import java.util.SplittableRandom;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;

/** A shape of unit cubes, and the slow way to tell whether two pieces open it. */
public final class VoxelShape {

  public final int n;
  private final boolean[] solid;

  public VoxelShape(int n) {
    this.n = n;
    solid = new boolean[n * n * n];
  }

  /** A connected shape grown from the middle. */
  public static VoxelShape grown(int n, int cells, SplittableRandom random) {
    VoxelShape s = new VoxelShape(n);
    s.set(n / 2, n / 2, n / 2);
    int left = cells - 1;
    while (left > 0) {
      int[] c = {random.nextInt(n), random.nextInt(n), random.nextInt(n)};
      boolean touches = false;
      for (int k = 0; k < 6; k++) {
        int[] o = c.clone();
        o[k / 2] += k % 2 == 0 ? 1 : -1;
        touches |= s.solid(o[0], o[1], o[2]);
      }
      if (touches && !s.solid(c[0], c[1], c[2])) {
        s.set(c[0], c[1], c[2]);
        left--;
      }
    }
    return s;
  }

  public void set(int x, int y, int z) {
    solid[(z * n + y) * n + x] = true;
  }

  public boolean solid(int x, int y, int z) {
    return x >= 0 && y >= 0 && z >= 0 && x < n && y < n && z < n && solid[(z * n + y) * n + x];
  }

  private boolean solid(int[] c) {
    return solid(c[0], c[1], c[2]);
  }

  /** The faces between solid and empty cells, outward, corners shared. */
  public TriMesh mesh() {
    MeshBuilder m = new MeshBuilder();
    for (int z = 0; z <= n; z++) {
      for (int y = 0; y <= n; y++) {
        for (int x = 0; x <= n; x++) {
          m.vertex(x, y, z);
        }
      }
    }
    for (int c = 0; c < n * n * n; c++) {
      int[] at = {c % n, c / n % n, c / (n * n)};
      for (int k = 0; k < 6 && solid(at); k++) {
        int[] o = at.clone();
        o[k / 2] += k % 2 == 0 ? 1 : -1;
        if (!solid(o)) {
          face(m, at, k / 2, k % 2 == 0);
        }
      }
    }
    return m.build();
  }

  private void face(MeshBuilder m, int[] at, int axis, boolean far) {
    int[] q = new int[4];
    for (int k = 0; k < 4; k++) {
      int[] p = at.clone();
      p[axis] += far ? 1 : 0;
      p[(axis + 1) % 3] += k == 1 || k == 2 ? 1 : 0;
      p[(axis + 2) % 3] += k >= 2 ? 1 : 0;
      q[k] = (p[2] * (n + 1) + p[1]) * (n + 1) + p[0];
    }
    m.triangle(q[0], far ? q[1] : q[2], far ? q[2] : q[1]);
    m.triangle(q[0], far ? q[2] : q[3], far ? q[3] : q[2]);
  }

  /**
   * Whether the empty cells of the block can be dealt to an upper and a lower piece that slide off
   * along an axis cell by cell: up goes what can, the rest must be able to go down. The slide of
   * the upper piece is then tried step by step, against the shape and against the other piece.
   */
  boolean opens(int axis) {
    boolean[] upper = new boolean[n * n * n];
    for (int c = 0; c < n * n * n; c++) {
      int[] at = {c % n, c / n % n, c / (n * n)};
      upper[c] = !solid(at) && slides(at, axis, 1);
      if (!solid(at) && !upper[c] && !slides(at, axis, -1)) {
        return false;
      }
    }
    for (int step = 1; step <= n; step++) {
      for (int c = 0; c < n * n * n; c++) {
        int[] at = {c % n, c / n % n, c / (n * n)};
        at[axis] += step;
        boolean inside = at[axis] < n;
        boolean hits = inside && (solid(at) || !upper[(at[2] * n + at[1]) * n + at[0]]);
        if (upper[c] && hits) {
          return false;
        }
      }
    }
    return true;
  }

  private boolean slides(int[] from, int axis, int way) {
    int[] at = from.clone();
    for (int step = 0; step < n; step++) {
      at[axis] += way;
      if (solid(at)) {
        return false;
      }
    }
    return true;
  }

  /** Cells shut in between solid cells along an axis. */
  int shutIn(int axis) {
    int count = 0;
    for (int c = 0; c < n * n * n; c++) {
      int[] at = {c % n, c / n % n, c / (n * n)};
      count += !solid(at) && !slides(at, axis, 1) && !slides(at, axis, -1) ? 1 : 0;
    }
    return count;
  }
}
