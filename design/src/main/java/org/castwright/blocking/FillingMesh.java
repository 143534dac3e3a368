package org.castwright.blocking;

import java.util.Arrays;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;

/**
 * The surface of a filling: squares of the grid inside its outline, cut along the outline (W. E.
 * Lorensen and H. E. Cline, Marching cubes, SIGGRAPH 1987, in the plane), twice, as top and bottom,
 * which meet in the seam at the outline; walls where it ends within the solid.
 */
final class FillingMesh {

  /** The outline keeps this share of an edge from its ends: no needles. */
  private static final double LEAST = 0.15;

  /** Squares that it goes on all round, to end within the solid and to join what is close. */
  private static final int ROUND = 3;

  private final Filling f;
  private final int nx;
  private final boolean[] kept;
  private final MeshBuilder out = new MeshBuilder();

  /** Top and bottom corner of each place; on edges to the right and up, where the outline is. */
  private final int[] top;

  private final int[] bottom;
  private final int[] right;
  private final int[] up;

  /**
   * Directed edges of the pieces of squares, as pairs of places; an outline's point is negative.
   */
  private long[] edges = new long[1024];

  private int count;

  FillingMesh(Filling filling) {
    f = filling;
    nx = f.nx();
    int n = f.size();
    kept = new boolean[n];
    top = new int[n];
    bottom = new int[n];
    right = new int[n];
    up = new int[n];
    Arrays.fill(top, -1);
    Arrays.fill(right, -1);
    Arrays.fill(up, -1);
  }

  TriMesh mesh() {
    keep();
    for (int o = 0; o < kept.length; o++) {
      if (kept[o]) {
        square(o);
      }
    }
    walls();
    return out.build();
  }

  private int[] corners(int o) {
    return new int[] {o, o + 1, o + nx + 1, o + nx};
  }

  private boolean in(int o) {
    return f.reach(o) > 0;
  }

  private void keep() {
    boolean[] wanted = new boolean[kept.length];
    for (int o = nx + 1; o + 2 * nx + 2 < kept.length; o++) {
      boolean any = false;
      boolean inside = false;
      for (int p : corners(o)) {
        any |= f.needed(p);
        inside |= in(p);
      }
      wanted[o] = any && inside;
    }
    for (int k = 0; k < ROUND; k++) {
      boolean[] was = k == 0 ? wanted : kept.clone();
      for (int o = nx + 1; o + nx + 2 < kept.length; o++) {
        boolean any = false;
        for (int j = -nx; j <= nx; j += nx) {
          any |= was[o + j - 1] || was[o + j] || was[o + j + 1];
        }
        boolean inside = false;
        for (int p : corners(o)) {
          inside |= in(p);
        }
        kept[o] = any && inside;
      }
    }
    boolean more = true;
    while (more) {
      more = false;
      for (int o = nx + 1; o + nx + 1 < kept.length; o++) {
        more |= in(o) && pinched(o);
      }
    }
  }

  /** Fills up squares that meet in a corner only; all four at an inner corner can be kept. */
  private boolean pinched(int o) {
    boolean a = kept[o];
    boolean b = kept[o - 1];
    boolean c = kept[o - nx];
    boolean d = kept[o - nx - 1];
    if ((a && d && !b && !c) || (b && c && !a && !d)) {
      kept[o] = true;
      kept[o - 1] = true;
      kept[o - nx] = true;
      kept[o - nx - 1] = true;
      return true;
    }
    return false;
  }

  private void square(int o) {
    int[] c = corners(o);
    int inside = 0;
    for (int k = 0; k < 4; k++) {
      inside |= in(c[k]) ? 1 << k : 0;
    }
    float middle = 0;
    for (int p : c) {
      middle += f.reach(p);
    }
    if ((inside == 5 || inside == 10) && middle <= 0) {
      int k = inside == 5 ? 0 : 1;
      piece(c, 1 << k);
      piece(c, 1 << (k + 2));
    } else {
      piece(c, inside);
    }
  }

  /** The part of a square about the corners given. */
  private void piece(int[] c, int inside) {
    int[] ring = new int[8];
    int n = 0;
    for (int k = 0; k < 4; k++) {
      boolean a = (inside & 1 << k) != 0;
      boolean b = (inside & 1 << (k + 1) % 4) != 0;
      if (a) {
        ring[n++] = place(c[k]);
      }
      if (a != b) {
        ring[n++] = -1 - outline(c[k], c[(k + 1) % 4]);
      }
    }
    for (int k = 0; k < n; k++) {
      edge(ring[k], ring[(k + 1) % n]);
    }
    // from a corner of the square: two points of the outline are joined once only
    int first = ring[0] < 0 ? 1 : 0;
    for (int k = 1; k + 1 < n; k++) {
      int p = ring[(first + k) % n];
      int q = ring[(first + k + 1) % n];
      out.triangle(upper(ring[first]), upper(p), upper(q));
      out.triangle(lower(ring[first]), lower(q), lower(p));
    }
  }

  private int upper(int p) {
    return p < 0 ? -1 - p : top[p];
  }

  private int lower(int p) {
    return p < 0 ? -1 - p : bottom[p];
  }

  private int place(int o) {
    if (top[o] < 0) {
      top[o] = out.vertex(f.x(o), f.y(o), f.top(o));
      bottom[o] = out.vertex(f.x(o), f.y(o), f.bottom(o));
    }
    return o;
  }

  /** The corner where the outline crosses the edge between two places, in the seam. */
  private int outline(int a, int b) {
    int o = Math.min(a, b);
    int p = Math.max(a, b);
    int[] at = p == o + 1 ? right : up;
    if (at[o] < 0) {
      double t = f.reach(o) / (f.reach(o) - f.reach(p));
      t = Double.isNaN(t) || Double.isInfinite(f.reach(o)) ? 0.5 : t;
      t = Math.max(LEAST, Math.min(1 - LEAST, t));
      at[o] =
          out.vertex(
              f.x(o) + t * (f.x(p) - f.x(o)), f.y(o) + t * (f.y(p) - f.y(o)), f.seam(o, p, t));
    }
    return at[o];
  }

  private static long key(int a, int b) {
    return ((long) a << 32) | (b & 0xffffffffL);
  }

  private void edge(int a, int b) {
    if (count == edges.length) {
      edges = Arrays.copyOf(edges, 2 * count);
    }
    edges[count++] = key(a, b);
  }

  /** Edges that only one piece of a square has, and that are not of the outline, get a wall. */
  private void walls() {
    long[] all = Arrays.copyOf(edges, count);
    Arrays.sort(all);
    for (int k = 0; k < count; k++) {
      int a = (int) (edges[k] >> 32);
      int b = (int) edges[k];
      boolean rim = a < 0 && b < 0;
      if (!rim && Arrays.binarySearch(all, key(b, a)) < 0) {
        if (a >= 0) {
          out.triangle(lower(a), lower(b), upper(a));
        }
        if (b >= 0) {
          out.triangle(upper(a), lower(b), upper(b));
        }
      }
    }
  }
}
