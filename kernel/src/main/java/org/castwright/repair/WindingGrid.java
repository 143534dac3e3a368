package org.castwright.repair;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * A cubic grid round a mesh whose corners near the surface are known to be inside (winding number
 * above one half) or outside. Starts in the cells the triangles pass through and follows the border
 * between inside and outside from cell to cell, also across holes, so only cells near the surface
 * are looked at. Cells and corners are numbered x fastest; a cell has the number of its low corner.
 */
final class WindingGrid {

  private static final byte UNKNOWN = 0;
  private static final byte ASKED = 1;
  private static final byte OUTSIDE = 2;
  private static final byte INSIDE = 3;

  /** Empty cells round the model. */
  private static final int MARGIN = 2;

  /** Corners are bytes in one array: 128 MB. */
  private static final long MOST_CORNERS = 1L << 27;

  private final WindingTree winding;
  private final double cell;
  private final Vec3 origin;
  private final int nx;
  private final int ny;
  private final int nz;
  private final byte[] state;
  private int[] crossed = new int[1024];
  private int crossedCount;

  WindingGrid(TriMesh mesh, WindingTree winding, double cell, Progress progress) {
    this.winding = winding;
    this.cell = cell;
    Box3 box = mesh.bounds();
    Vec3 margin = new Vec3(MARGIN, MARGIN, MARGIN).times(cell);
    // a share of a cell off the box, so that flat sides of the model miss the grid planes
    this.origin = box.min().minus(margin).minus(new Vec3(0.37, 0.41, 0.43).times(cell));
    this.nx = corners(box.size().x());
    this.ny = corners(box.size().y());
    this.nz = corners(box.size().z());
    if ((long) nx * ny * nz > MOST_CORNERS) {
      throw new MeshException(
          "a rebuild with cells of "
              + Draft.number(cell)
              + " mm needs a grid of "
              + nx
              + " x "
              + ny
              + " x "
              + nz
              + " corners, too many: choose a larger cell");
    }
    this.state = new byte[nx * ny * nz];
    follow(seeds(mesh), progress);
  }

  private int corners(double side) {
    return (int) Math.ceil(side / cell) + 2 * MARGIN + 2;
  }

  /** The cells with corners on both sides, ascending. */
  int[] crossedCells() {
    int[] out = Arrays.copyOf(crossed, crossedCount);
    Arrays.sort(out);
    return out;
  }

  boolean inside(int corner) {
    return state[corner] == INSIDE;
  }

  /** The corner of a cell whose offsets along x, y, z are the bits of {@code which}. */
  int corner(int c, int which) {
    return c + (which & 1) + ((which >> 1) & 1) * nx + (which >> 2) * nx * ny;
  }

  /** A coordinate of a corner, mm. */
  double at(int corner, int axis) {
    int steps = axis == 0 ? corner % nx : axis == 1 ? corner / nx % ny : corner / nx / ny;
    double start = axis == 0 ? origin.x() : axis == 1 ? origin.y() : origin.z();
    return start + cell * steps;
  }

  /** The cells that hold points of the surface, sampled no wider than a cell. */
  private int[] seeds(TriMesh mesh) {
    long[] seen = new long[(state.length + 63) >>> 6];
    int[] out = new int[1024];
    int n = 0;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      Vec3 a = mesh.vertex(mesh.tri()[3 * f]);
      Vec3 u = mesh.vertex(mesh.tri()[3 * f + 1]).minus(a);
      Vec3 v = mesh.vertex(mesh.tri()[3 * f + 2]).minus(a);
      double longest = Math.max(u.length(), Math.max(v.length(), u.minus(v).length()));
      int steps = Math.max(1, (int) Math.ceil(longest / cell));
      for (int i = 0; i <= steps; i++) {
        for (int j = 0; i + j <= steps; j++) {
          int c = cellOf(a.plus(u.times((double) i / steps)).plus(v.times((double) j / steps)));
          if (((seen[c >>> 6] >>> c) & 1) == 0) {
            seen[c >>> 6] |= 1L << c;
            out = n == out.length ? Arrays.copyOf(out, 2 * n) : out;
            out[n++] = c;
          }
        }
      }
    }
    return Arrays.copyOf(out, n);
  }

  private int cellOf(Vec3 p) {
    int i = (int) ((p.x() - origin.x()) / cell);
    int j = (int) ((p.y() - origin.y()) / cell);
    int k = (int) ((p.z() - origin.z()) / cell);
    return (k * ny + j) * nx + i;
  }

  private void follow(int[] first, Progress progress) {
    long[] visited = new long[(state.length + 63) >>> 6];
    int[] wave = first;
    for (int c : wave) {
      visited[c >>> 6] |= 1L << c;
    }
    while (wave.length > 0) {
      progress.at("rebuilding the surface", 0.3);
      ask(wave);
      int[] next = new int[wave.length];
      int n = 0;
      for (int c : wave) {
        if (!note(c)) {
          continue;
        }
        for (int side = 0; side < 6; side++) {
          if (!mixed(c, side)) {
            continue;
          }
          int step = side % 3 == 0 ? 1 : side % 3 == 1 ? nx : nx * ny;
          int d = side < 3 ? c - step : c + step;
          if (((visited[d >>> 6] >>> d) & 1) == 0) {
            visited[d >>> 6] |= 1L << d;
            next = n == next.length ? Arrays.copyOf(next, 2 * n) : next;
            next[n++] = d;
          }
        }
      }
      wave = Arrays.copyOf(next, n);
    }
  }

  /** Finds the side of every corner of the cells given that is not known yet. */
  private void ask(int[] cells) {
    int[] asked = new int[8 * cells.length];
    int n = 0;
    for (int c : cells) {
      for (int w = 0; w < 8; w++) {
        int p = corner(c, w);
        if (state[p] == UNKNOWN) {
          state[p] = ASKED;
          asked[n++] = p;
        }
      }
    }
    IntStream.range(0, n).parallel().forEach(i -> state[asked[i]] = sideOf(asked[i]));
  }

  private byte sideOf(int p) {
    int i = p % nx;
    int j = p / nx % ny;
    int k = p / nx / ny;
    if (i == 0 || j == 0 || k == 0 || i == nx - 1 || j == ny - 1 || k == nz - 1) {
      return OUTSIDE;
    }
    return winding.at(at(p, 0), at(p, 1), at(p, 2)) > 0.5 ? INSIDE : OUTSIDE;
  }

  /** Keeps a cell if it has corners on both sides. */
  private boolean note(int c) {
    int in = 0;
    for (int w = 0; w < 8; w++) {
      in += inside(corner(c, w)) ? 1 : 0;
    }
    if (in == 0 || in == 8) {
      return false;
    }
    crossed = crossedCount == crossed.length ? Arrays.copyOf(crossed, 2 * crossedCount) : crossed;
    crossed[crossedCount++] = c;
    return true;
  }

  /** Whether a side of a cell (low x, y, z, then high) has corners both inside and outside. */
  private boolean mixed(int c, int side) {
    int bit = 1 << side % 3;
    int in = 0;
    for (int w = 0; w < 8; w++) {
      if (((w & bit) != 0) == (side >= 3)) {
        in += inside(corner(c, w)) ? 1 : 0;
      }
    }
    return in > 0 && in < 4;
  }
}
