package org.castwright.repair;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.castwright.mesh.TriMesh;

/**
 * The border between inside and outside of a grid as triangles: each cell is cut into the six
 * tetrahedra round its diagonal (H. W. Kuhn, 1960), each tetrahedron gives none, one or two
 * triangles (A. Doi, A. Koide, 1991). The cut is the same in all cells, so the triangles always
 * close. A vertex lies where its grid edge crosses the surface.
 */
final class Tetrahedra {

  /** The corners of each tetrahedron, as bits of x, y, z; every one of positive volume. */
  private static final int[][] CUT = {
    {0, 1, 3, 7}, {0, 2, 6, 7}, {0, 4, 5, 7}, {0, 3, 2, 7}, {0, 6, 4, 7}, {0, 5, 1, 7}
  };

  /**
   * For each set of inside corners (bits) the corners in an order of even parity, inside ones first
   * (one outside corner: that one first).
   */
  private static final int[][] ORDER = {
    {0, 1, 2, 3}, {0, 1, 2, 3}, {1, 0, 3, 2}, {0, 1, 2, 3},
    {2, 3, 0, 1}, {0, 2, 3, 1}, {1, 2, 0, 3}, {3, 2, 1, 0},
    {3, 2, 1, 0}, {0, 3, 1, 2}, {1, 3, 2, 0}, {2, 3, 0, 1},
    {2, 3, 0, 1}, {1, 0, 3, 2}, {0, 1, 2, 3}, {0, 1, 2, 3}
  };

  /**
   * Vertices keep this share of an edge away from its ends, so that no triangle shrinks to nothing;
   * it moves them by at most 0.02 · √3 cells.
   */
  private static final double KEEP_OFF = 0.02;

  private final WindingGrid grid;
  private final EdgeNumbers edges = new EdgeNumbers();
  private int[] list = new int[3 * 1024];
  private int size;

  private Tetrahedra(WindingGrid grid) {
    this.grid = grid;
  }

  /** Where an edge from inside to outside, or back, crosses the surface. */
  interface Crossing {
    /** The share of the way from p to q, 0 to 1. */
    double share(double[] p, double[] q);
  }

  static TriMesh surface(WindingGrid grid, Crossing crossing) {
    Tetrahedra work = new Tetrahedra(grid);
    for (int c : grid.crossedCells()) {
      work.cell(c);
    }
    return new TriMesh(work.vertices(crossing), Arrays.copyOf(work.list, work.size));
  }

  private void cell(int c) {
    for (int[] t : CUT) {
      int in = 0;
      for (int i = 0; i < 4; i++) {
        in |= grid.inside(grid.corner(c, t[i])) ? 1 << i : 0;
      }
      int[] o = ORDER[in];
      int a = t[o[0]];
      int b = t[o[1]];
      int d = t[o[2]];
      int e = t[o[3]];
      switch (Integer.bitCount(in)) {
        case 1 -> triangle(vertex(c, a, b), vertex(c, a, d), vertex(c, a, e));
        case 3 -> triangle(vertex(c, a, b), vertex(c, a, e), vertex(c, a, d));
        case 2 -> {
          triangle(vertex(c, a, d), vertex(c, a, e), vertex(c, b, e));
          triangle(vertex(c, a, d), vertex(c, b, e), vertex(c, b, d));
        }
        default -> {}
      }
    }
  }

  private void triangle(int a, int b, int c) {
    if (size + 3 > list.length) {
      list = Arrays.copyOf(list, 2 * list.length);
    }
    list[size++] = a;
    list[size++] = b;
    list[size++] = c;
  }

  /** The vertex on the edge between two corners of a cell, one above the other in bits. */
  private int vertex(int c, int p, int q) {
    int low = p & q;
    return edges.of(((long) grid.corner(c, low) << 3) | (p ^ q));
  }

  private double[] vertices(Crossing crossing) {
    long[] keys = edges.keys();
    double[] xyz = new double[3 * keys.length];
    IntStream.range(0, keys.length)
        .parallel()
        .forEach(
            i -> {
              int low = (int) (keys[i] >>> 3);
              int high = grid.corner(low, (int) (keys[i] & 7));
              double[] p = {grid.at(low, 0), grid.at(low, 1), grid.at(low, 2)};
              double[] q = {grid.at(high, 0), grid.at(high, 1), grid.at(high, 2)};
              double t = Math.max(KEEP_OFF, Math.min(1 - KEEP_OFF, crossing.share(p, q)));
              for (int k = 0; k < 3; k++) {
                xyz[3 * i + k] = p[k] + t * (q[k] - p[k]);
              }
            });
    return xyz;
  }
}
