package org.castwright.parting;

import java.util.Arrays;
import org.castwright.geom.Box3;
import org.castwright.mesh.TriMesh;

/**
 * Exact queries along vertical lines through a mesh. Facets lie in square bins of the plane; a line
 * crosses a facet by half-open intervals whose ends are computed alike for both facets of an edge,
 * so a line through a closed mesh never slips between facets nor counts one twice. Facets that
 * project to a segment are never crossed. Safe for many threads.
 */
final class Columns {

  /** Smallest bin, mm: below this bins hold mostly copies of facets they share. */
  private static final double MIN_BIN_MM = 0.1;

  /** Bins per facet: about one, so a bin holds a handful of facets where the mesh is even. */
  private static final double FACETS_PER_BIN = 1.5;

  private final double[] xyz;
  private final int[] tri;
  private final double x0;
  private final double y0;
  private final double bin;
  private final int nx;
  private final int ny;
  private final int[] start;
  private final int[] facets;
  private final float[] extent;
  private final boolean topRun;

  Columns(TriMesh mesh) {
    this(mesh, false);
  }

  /**
   * @param topRun whether the lowest crossing told is not that of the whole column, but the lower
   *     end of its topmost run of solid
   */
  Columns(TriMesh mesh, boolean topRun) {
    this.topRun = topRun;
    xyz = mesh.xyz();
    tri = mesh.tri();
    Box3 b = mesh.bounds();
    double w = b.size().x();
    double h = b.size().y();
    double cell = Math.sqrt(Math.max(w, MIN_BIN_MM) * Math.max(h, MIN_BIN_MM) * FACETS_PER_BIN);
    bin = Math.max(MIN_BIN_MM, cell / Math.sqrt(Math.max(1, mesh.triangleCount())));
    x0 = b.min().x() - bin;
    y0 = b.min().y() - bin;
    nx = (int) ((b.max().x() - x0) / bin) + 2;
    ny = (int) ((b.max().y() - y0) / bin) + 2;
    start = new int[nx * ny + 1];
    int n = mesh.triangleCount();
    for (int f = 0; f < n; f++) {
      visit(f, start, null);
    }
    for (int i = 0; i < nx * ny; i++) {
      start[i + 1] += start[i];
    }
    facets = new int[start[nx * ny]];
    int[] next = new int[nx * ny + 1];
    System.arraycopy(start, 0, next, 1, nx * ny);
    for (int f = 0; f < n; f++) {
      visit(f, next, facets);
    }
    extent = extents();
  }

  /** Counts facet f in its bins, or puts it there; the count of bin i is at i + 1. */
  private void visit(int f, int[] next, int[] into) {
    int a = 3 * tri[3 * f];
    int b = 3 * tri[3 * f + 1];
    int c = 3 * tri[3 * f + 2];
    int i0 = (int) ((min(xyz[a], xyz[b], xyz[c]) - x0) / bin);
    int i1 = (int) ((max(xyz[a], xyz[b], xyz[c]) - x0) / bin);
    int j0 = (int) ((min(xyz[a + 1], xyz[b + 1], xyz[c + 1]) - y0) / bin);
    int j1 = (int) ((max(xyz[a + 1], xyz[b + 1], xyz[c + 1]) - y0) / bin);
    for (int j = j0; j <= j1; j++) {
      for (int i = i0; i <= i1; i++) {
        int k = next[j * nx + i + 1]++;
        if (into != null) {
          into[k] = f;
        }
      }
    }
  }

  /** Per bin entry the facet's extent x0, x1, y0, y1, rounded outward: a cheap first refusal. */
  private float[] extents() {
    float[] e = new float[4 * facets.length];
    for (int k = 0; k < facets.length; k++) {
      int f = facets[k];
      int a = 3 * tri[3 * f];
      int b = 3 * tri[3 * f + 1];
      int c = 3 * tri[3 * f + 2];
      e[4 * k] = Math.nextDown((float) min(xyz[a], xyz[b], xyz[c]));
      e[4 * k + 1] = Math.nextUp((float) max(xyz[a], xyz[b], xyz[c]));
      e[4 * k + 2] = Math.nextDown((float) min(xyz[a + 1], xyz[b + 1], xyz[c + 1]));
      e[4 * k + 3] = Math.nextUp((float) max(xyz[a + 1], xyz[b + 1], xyz[c + 1]));
    }
    return e;
  }

  /** Whether the vertical line at x, y meets the mesh; {@code out} receives where. */
  boolean at(double x, double y, Column out) {
    out.hits = 0;
    out.lower = Double.POSITIVE_INFINITY;
    out.upper = Double.NEGATIVE_INFINITY;
    int i = (int) Math.floor((x - x0) / bin);
    int j = (int) Math.floor((y - y0) / bin);
    if (i < 0 || j < 0 || i >= nx || j >= ny) {
      return false;
    }
    int end = start[j * nx + i + 1];
    for (int k = start[j * nx + i]; k < end; k++) {
      int e = 4 * k;
      if (x >= extent[e] && x <= extent[e + 1] && y >= extent[e + 2] && y <= extent[e + 3]) {
        cross(facets[k], x, y, out);
      }
    }
    if (topRun && out.hits > 2) {
      out.lower = endOfTopRun(out);
    }
    return out.hits > 0;
  }

  /** Whether these columns tell of the topmost run of solid only. */
  boolean topRun() {
    return topRun;
  }

  /** Going down from the top, the height at which as many surfaces were left as entered. */
  private static double endOfTopRun(Column c) {
    for (int i = 1; i < c.hits; i++) {
      double h = c.heights[i];
      boolean u = c.up[i];
      int j = i;
      // of two surfaces at one height the entering one counts first
      while (j > 0 && (c.heights[j - 1] < h || (c.heights[j - 1] == h && u && !c.up[j - 1]))) {
        c.heights[j] = c.heights[j - 1];
        c.up[j] = c.up[j - 1];
        j--;
      }
      c.heights[j] = h;
      c.up[j] = u;
    }
    int depth = 0;
    for (int i = 0; i < c.hits; i++) {
      depth += c.up[i] ? 1 : -1;
      if (depth <= 0) {
        return c.heights[i];
      }
    }
    return c.lower;
  }

  private void keep(int f, double z, Column out) {
    if (out.hits >= out.heights.length) {
      int n = Math.max(8, 2 * out.hits);
      out.heights = Arrays.copyOf(out.heights, n);
      out.up = Arrays.copyOf(out.up, n);
    }
    int a = 3 * tri[3 * f];
    int b = 3 * tri[3 * f + 1];
    int c = 3 * tri[3 * f + 2];
    out.heights[out.hits] = z;
    out.up[out.hits] =
        (xyz[b] - xyz[a]) * (xyz[c + 1] - xyz[a + 1])
            > (xyz[c] - xyz[a]) * (xyz[b + 1] - xyz[a + 1]);
  }

  private void cross(int f, double x, double y, Column out) {
    int a = tri[3 * f];
    int b = tri[3 * f + 1];
    int c = tri[3 * f + 2];
    boolean sa = xyz[3 * a + 1] <= y;
    boolean sb = xyz[3 * b + 1] <= y;
    boolean sc = xyz[3 * c + 1] <= y;
    if (sa == sb && sb == sc) {
      return;
    }
    double p;
    double q;
    if (sa == sb) {
      p = crossing(xyz, b, c, y);
      q = crossing(xyz, a, c, y);
    } else if (sb == sc) {
      p = crossing(xyz, a, b, y);
      q = crossing(xyz, a, c, y);
    } else {
      p = crossing(xyz, a, b, y);
      q = crossing(xyz, b, c, y);
    }
    if (x < Math.min(p, q) || x >= Math.max(p, q)) {
      return;
    }
    double z = height(xyz, a, b, c, x, y);
    if (topRun) {
      keep(f, z, out);
    }
    out.hits++;
    if (z < out.lower) {
      out.lower = z;
    }
    if (z > out.upper) {
      out.upper = z;
      out.upperFacet = f;
    }
  }

  /** Where edge a b meets the line of this y; the same number whichever end is named first. */
  static double crossing(double[] xyz, int a, int b, double y) {
    int p = 3 * Math.min(a, b);
    int q = 3 * Math.max(a, b);
    return xyz[p] + (xyz[q] - xyz[p]) * ((y - xyz[p + 1]) / (xyz[q + 1] - xyz[p + 1]));
  }

  /** The height of the plane of a facet, kept within the facet's own heights. */
  static double height(double[] xyz, int a, int b, int c, double x, double y) {
    double ax = xyz[3 * a];
    double ay = xyz[3 * a + 1];
    double az = xyz[3 * a + 2];
    double ux = xyz[3 * b] - ax;
    double uy = xyz[3 * b + 1] - ay;
    double uz = xyz[3 * b + 2] - az;
    double vx = xyz[3 * c] - ax;
    double vy = xyz[3 * c + 1] - ay;
    double vz = xyz[3 * c + 2] - az;
    double d = ux * vy - vx * uy;
    double z =
        d == 0
            ? az + (uz + vz) / 3
            : az + ((uz * vy - vz * uy) * (x - ax) + (ux * vz - vx * uz) * (y - ay)) / d;
    double lo = min(0, uz, vz) + az;
    double hi = max(0, uz, vz) + az;
    return Math.max(lo, Math.min(hi, z));
  }

  private static double min(double a, double b, double c) {
    return Math.min(a, Math.min(b, c));
  }

  private static double max(double a, double b, double c) {
    return Math.max(a, Math.max(b, c));
  }
}
