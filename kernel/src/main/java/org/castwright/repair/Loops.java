package org.castwright.repair;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * The holes of a mesh: closed chains of open edges, each listed the way a patch over the hole must
 * run. Expects neighbors that agree and vertices with one fan each, so that chains never touch.
 */
final class Loops {

  private final TriMesh mesh;
  private final List<int[]> loops = new ArrayList<>();

  Loops(TriMesh mesh, EdgeTable edges) {
    this.mesh = mesh;
    int[] following = new int[mesh.vertexCount()];
    Arrays.fill(following, -1);
    for (int e = 0; e < edges.count(); e++) {
      if (edges.size(e) == 1) {
        int h = edges.half(e, 0);
        following[edges.to(h)] = edges.from(h);
      }
    }
    boolean[] seen = new boolean[following.length];
    int[] chain = new int[following.length];
    for (int v = 0; v < following.length; v++) {
      int n = 0;
      int at = v;
      while (at >= 0 && !seen[at] && following[at] >= 0) {
        seen[at] = true;
        chain[n++] = at;
        at = following[at];
      }
      if (n > 2 && at == v) {
        loops.add(Arrays.copyOf(chain, n));
      }
    }
  }

  int count() {
    return loops.size();
  }

  /** The vertices of loop {@code i}. */
  int[] loop(int i) {
    return loops.get(i);
  }

  double[] points(int i) {
    int[] loop = loops.get(i);
    double[] out = new double[3 * loop.length];
    for (int k = 0; k < loop.length; k++) {
      System.arraycopy(mesh.xyz(), 3 * loop[k], out, 3 * k, 3);
    }
    return out;
  }

  /** The width of a loop: the diagonal of its box, mm. */
  double width(int i) {
    return Box3.of(points(i)).diagonal();
  }

  Vec3 center(int i) {
    return Box3.of(points(i)).center();
  }

  /**
   * How far the loop leaves a plane, mm: the one through its mean point along its area vector
   * (Newell's normal). Not a number for a loop without area.
   */
  double unevenness(int i) {
    double[] p = points(i);
    int n = p.length / 3;
    Vec3 mean = Vec3.ZERO;
    for (int k = 0; k < n; k++) {
      mean = mean.plus(at(p, k).times(1.0 / n));
    }
    Vec3 normal = Vec3.ZERO;
    for (int k = 0; k < n; k++) {
      normal = normal.plus(at(p, k).minus(mean).cross(at(p, (k + 1) % n).minus(mean)));
    }
    double length = normal.length();
    double farthest = 0;
    for (int k = 0; k < n; k++) {
      farthest = Math.max(farthest, Math.abs(at(p, k).minus(mean).dot(normal)));
    }
    return farthest / length;
  }

  private static Vec3 at(double[] p, int k) {
    return new Vec3(p[3 * k], p[3 * k + 1], p[3 * k + 2]);
  }
}
