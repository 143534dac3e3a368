package org.castwright.pictures;

import java.util.HashMap;
import java.util.Map;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;

/** Cuts the facets of a mesh at level planes, so that each lies between two of them. */
final class Terraces {

  private final TriMesh mesh;
  private final Vec3 up;
  private final MeshBuilder out = new MeshBuilder();
  private final Map<Long, Integer> cut = new HashMap<>();

  private Terraces(TriMesh mesh, Vec3 up) {
    this.mesh = mesh;
    this.up = up;
  }

  /**
   * The same surface with its facets cut.
   *
   * @param levels heights along {@code up}, rising
   */
  static TriMesh of(TriMesh mesh, Vec3 up, double[] levels) {
    TriMesh m = mesh;
    for (double level : levels) {
      m = new Terraces(m, up).at(level);
    }
    return m;
  }

  private TriMesh at(double level) {
    double[] h = new double[mesh.vertexCount()];
    for (int v = 0; v < h.length; v++) {
      Vec3 p = mesh.vertex(v);
      h[v] = p.dot(up) - level;
      out.vertex(p.x(), p.y(), p.z());
    }
    for (int f = 0; f < mesh.triangleCount(); f++) {
      split(f, h);
    }
    return out.build();
  }

  private void split(int f, double[] h) {
    int[] t = {mesh.tri()[3 * f], mesh.tri()[3 * f + 1], mesh.tri()[3 * f + 2]};
    boolean above = h[t[0]] > 0 || h[t[1]] > 0 || h[t[2]] > 0;
    boolean below = h[t[0]] < 0 || h[t[1]] < 0 || h[t[2]] < 0;
    if (!above || !below) {
      out.triangle(t[0], t[1], t[2]);
      return;
    }
    int[] loop = new int[5];
    int n = 0;
    int first = -1;
    for (int k = 0; k < 3; k++) {
      int a = t[k];
      int b = t[(k + 1) % 3];
      loop[n++] = a;
      if (h[a] == 0 && first < 0) {
        first = n - 1;
      }
      if (h[a] * h[b] < 0) {
        loop[n++] = between(a, b, h);
        first = n - 1;
      }
    }
    // fanned from a point on the level, no facet reaches over it
    for (int i = 1; i + 1 < n; i++) {
      out.triangle(loop[first], loop[(first + i) % n], loop[(first + i + 1) % n]);
    }
  }

  private int between(int a, int b, double[] h) {
    int lo = Math.min(a, b);
    int hi = Math.max(a, b);
    return cut.computeIfAbsent(
        (long) lo << Integer.SIZE | hi,
        k -> {
          double s = h[lo] / (h[lo] - h[hi]);
          Vec3 p = mesh.vertex(lo).plus(mesh.vertex(hi).minus(mesh.vertex(lo)).times(s));
          return out.vertex(p.x(), p.y(), p.z());
        });
  }
}
