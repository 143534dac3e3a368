package org.castwright.fill;

import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Straight up from a point: the first facet above it. Facets are sorted into a level grid of cells.
 * Whether a point lies under a facet is decided edge by edge, each edge always taken from its lower
 * to its higher vertex number, and a point on an edge counts as moved aside by less than nothing
 * ({@code (ε, ε²)}): so exactly one of the facets at a shared edge is hit.
 */
final class RoofRay {

  private static final int MOST_CELLS = 512;

  private final TriMesh mesh;
  private final double[] u;
  private final double[] w;
  private final double[] height;
  private final double lowU;
  private final double lowW;
  private final double cell;
  private final int across;
  private final int along;
  private final int[] start;
  private final int[] facets;

  /**
   * @param height of every vertex along {@code up}
   */
  RoofRay(TriMesh mesh, Vec3 up, double[] height) {
    this.mesh = mesh;
    this.height = height;
    Frame frame = Frame.along(up);
    int n = mesh.vertexCount();
    u = new double[n];
    w = new double[n];
    double minU = Double.POSITIVE_INFINITY;
    double maxU = Double.NEGATIVE_INFINITY;
    double minW = Double.POSITIVE_INFINITY;
    double maxW = Double.NEGATIVE_INFINITY;
    for (int v = 0; v < n; v++) {
      Vec3 p = mesh.vertex(v);
      u[v] = p.dot(frame.u());
      w[v] = p.dot(frame.v());
      minU = Math.min(minU, u[v]);
      maxU = Math.max(maxU, u[v]);
      minW = Math.min(minW, w[v]);
      maxW = Math.max(maxW, w[v]);
    }
    lowU = minU;
    lowW = minW;
    double cells = Math.max(1, Math.min(MOST_CELLS, Math.sqrt(mesh.triangleCount())));
    double size = Math.max(maxU - minU, maxW - minW);
    cell = size > 0 ? size / cells : 1;
    across = (int) ((maxU - minU) / cell) + 1;
    along = (int) ((maxW - minW) / cell) + 1;
    start = new int[across * along + 1];
    each((c, f) -> start[c + 1]++);
    for (int c = 0; c + 1 < start.length; c++) {
      start[c + 1] += start[c];
    }
    facets = new int[start[start.length - 1]];
    int[] next = start.clone();
    each((c, f) -> facets[next[c]++] = f);
  }

  private interface Visit {
    void at(int cell, int facet);
  }

  private void each(Visit visit) {
    int[] t = mesh.tri();
    for (int f = 0; f < mesh.triangleCount(); f++) {
      int a = t[3 * f];
      int b = t[3 * f + 1];
      int c = t[3 * f + 2];
      int i0 = index(Math.min(u[a], Math.min(u[b], u[c])), lowU, across);
      int i1 = index(Math.max(u[a], Math.max(u[b], u[c])), lowU, across);
      int j0 = index(Math.min(w[a], Math.min(w[b], w[c])), lowW, along);
      int j1 = index(Math.max(w[a], Math.max(w[b], w[c])), lowW, along);
      for (int i = i0; i <= i1; i++) {
        for (int j = j0; j <= j1; j++) {
          visit.at(i * along + j, f);
        }
      }
    }
  }

  private int index(double v, double low, int count) {
    return Math.max(0, Math.min(count - 1, (int) ((v - low) / cell)));
  }

  /**
   * The roof over a vertex.
   *
   * @param vertex all facets at it lie no higher than it
   * @param above mm that a facet must lie above it to count
   * @return the facet hit first when the solid lies between, or -1 when open air does
   */
  int over(int vertex, double above) {
    double pu = u[vertex];
    double pw = w[vertex];
    int c = index(pu, lowU, across) * along + index(pw, lowW, along);
    int best = -1;
    double lowest = Double.POSITIVE_INFINITY;
    int[] t = mesh.tri();
    for (int i = start[c]; i < start[c + 1]; i++) {
      int f = facets[i];
      int x = t[3 * f];
      int y = t[3 * f + 1];
      int z = t[3 * f + 2];
      if (x == vertex || y == vertex || z == vertex) {
        continue;
      }
      if (Math.max(height[x], Math.max(height[y], height[z])) <= height[vertex] + above) {
        continue;
      }
      int s = side(x, y, pu, pw);
      if (s == 0 || s != side(y, z, pu, pw) || s != side(z, x, pu, pw)) {
        continue;
      }
      double h = heightOver(x, y, z, pu, pw);
      if (h > height[vertex] + above && h < lowest) {
        lowest = h;
        best = s > 0 ? f : -1;
      }
    }
    return best;
  }

  /** 1 when the point lies left of the edge, -1 when right; 0 for an edge without length. */
  private int side(int a, int b, double pu, double pw) {
    int first = Math.min(a, b);
    int second = Math.max(a, b);
    double du = u[second] - u[first];
    double dw = w[second] - w[first];
    double d = du * (pw - w[first]) - dw * (pu - u[first]);
    if (d == 0) {
      d = dw != 0 ? -dw : du;
    }
    int sign = d > 0 ? 1 : d < 0 ? -1 : 0;
    return first == a ? sign : -sign;
  }

  private double heightOver(int a, int b, int c, double pu, double pw) {
    double bu = u[b] - u[a];
    double bw = w[b] - w[a];
    double cu = u[c] - u[a];
    double cw = w[c] - w[a];
    double det = bu * cw - bw * cu;
    double qu = pu - u[a];
    double qw = pw - w[a];
    double s = (qu * cw - qw * cu) / det;
    double t = (bu * qw - bw * qu) / det;
    return height[a] + s * (height[b] - height[a]) + t * (height[c] - height[a]);
  }
}
