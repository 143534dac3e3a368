package org.castwright.repair;

import java.util.Arrays;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Takes the splinters out of a closed mesh that cutting left: edges shorter than a length are drawn
 * together, and triangles flatter than it get their longest edge turned. What is left keeps its
 * shape when its corners are rounded. An edge is drawn together only where the surface stays one
 * (the ends have two neighbors in common: H. Hoppe et al., Mesh optimization, SIGGRAPH 1993) and no
 * triangle turns over.
 */
public final class ShortEdges {

  private static final int PASSES = 8;

  /** Cosine between a triangle before and after: 60°. */
  private static final double TURNED = 0.5;

  /** A triangle flatter than this share of the length is turned. */
  private static final double FLAT = 0.3;

  private final double length;
  private double[] xyz;
  private int[] tri;
  private int[] start;
  private int[] around;

  private ShortEdges(TriMesh mesh, double length) {
    this.length = length;
    xyz = mesh.xyz().clone();
    tri = mesh.tri().clone();
  }

  /**
   * The mesh without splinters.
   *
   * @param mesh closed, manifold
   * @param mm length below which edges go; no corner moves farther
   */
  public static TriMesh without(TriMesh mesh, double mm) {
    ShortEdges work = new ShortEdges(mesh, mm);
    boolean more = true;
    for (int p = 0; p < PASSES && more; p++) {
      more = work.pass();
    }
    return Draft.compact(work.xyz, work.tri);
  }

  private boolean pass() {
    adjacency();
    boolean[] settled = new boolean[xyz.length / 3];
    boolean[] gone = new boolean[tri.length / 3];
    boolean any = false;
    for (int h = 0; h < tri.length; h++) {
      if (gone[h / 3]) {
        continue;
      }
      int a = tri[h];
      int b = tri[EdgeTable.next(h)];
      if (a < b && !settled[a] && !settled[b] && distance(a, b) < length && mayJoin(a, b)) {
        settle(a, settled);
        settle(b, settled);
        join(a, b, gone);
        any = true;
      }
    }
    for (int f = 0; f < gone.length; f++) {
      if (!gone[f]) {
        any |= turn(f, settled, gone);
      }
    }
    drop(gone);
    return any;
  }

  private void adjacency() {
    int n = xyz.length / 3;
    start = new int[n + 1];
    for (int v : tri) {
      start[v + 1]++;
    }
    for (int v = 0; v < n; v++) {
      start[v + 1] += start[v];
    }
    int[] at = Arrays.copyOf(start, n);
    around = new int[tri.length];
    for (int i = 0; i < tri.length; i++) {
      around[at[tri[i]]++] = i / 3;
    }
  }

  private double distance(int a, int b) {
    return point(a).minus(point(b)).length();
  }

  private Vec3 point(int v) {
    return new Vec3(xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2]);
  }

  /** Whether b may be drawn onto a. */
  private boolean mayJoin(int a, int b) {
    int common = 0;
    for (int i = start[a]; i < start[a + 1]; i++) {
      for (int k = 0; k < 3; k++) {
        int v = tri[3 * around[i] + k];
        // each neighbor lies in two triangles round a
        common += v != a && v != b && beside(b, v) ? 1 : 0;
      }
    }
    if (common != 4) {
      return false;
    }
    for (int i = start[b]; i < start[b + 1]; i++) {
      int f = around[i];
      if (!has(f, a) && turnsOver(f, b, a)) {
        return false;
      }
    }
    return true;
  }

  private boolean beside(int b, int v) {
    for (int i = start[b]; i < start[b + 1]; i++) {
      if (has(around[i], v)) {
        return true;
      }
    }
    return false;
  }

  private boolean has(int f, int v) {
    return tri[3 * f] == v || tri[3 * f + 1] == v || tri[3 * f + 2] == v;
  }

  private boolean turnsOver(int f, int from, int to) {
    Vec3[] p = new Vec3[3];
    Vec3[] q = new Vec3[3];
    for (int k = 0; k < 3; k++) {
      p[k] = point(tri[3 * f + k]);
      q[k] = tri[3 * f + k] == from ? point(to) : p[k];
    }
    Vec3 before = normal(p[0], p[1], p[2]);
    Vec3 after = normal(q[0], q[1], q[2]);
    // a splinter has no side to speak of
    return height(p[0], p[1], p[2]) > length
        && before.dot(after) < TURNED * before.length() * after.length();
  }

  private static Vec3 normal(Vec3 a, Vec3 b, Vec3 c) {
    return b.minus(a).cross(c.minus(a));
  }

  /** The least height of a triangle. */
  private static double height(Vec3 a, Vec3 b, Vec3 c) {
    double longest =
        Math.max(a.minus(b).length(), Math.max(b.minus(c).length(), c.minus(a).length()));
    return longest == 0 ? 0 : normal(a, b, c).length() / longest;
  }

  private void settle(int v, boolean[] settled) {
    for (int i = start[v]; i < start[v + 1]; i++) {
      for (int k = 0; k < 3; k++) {
        settled[tri[3 * around[i] + k]] = true;
      }
    }
  }

  private void join(int a, int b, boolean[] gone) {
    for (int i = start[b]; i < start[b + 1]; i++) {
      int f = around[i];
      if (has(f, a)) {
        gone[f] = true;
      } else {
        for (int k = 0; k < 3; k++) {
          tri[3 * f + k] = tri[3 * f + k] == b ? a : tri[3 * f + k];
        }
      }
    }
  }

  /** Gives a flat triangle and its neighbor across its longest edge the other diagonal. */
  private boolean turn(int f, boolean[] settled, boolean[] gone) {
    int longest = 0;
    for (int k = 1; k < 3; k++) {
      if (edge(f, k) > edge(f, longest)) {
        longest = k;
      }
    }
    int a = tri[3 * f + longest];
    int b = tri[3 * f + (longest + 1) % 3];
    int c = tri[3 * f + (longest + 2) % 3];
    if (height(point(a), point(b), point(c)) >= FLAT * length
        || settled[a]
        || settled[b]
        || settled[c]) {
      return false;
    }
    for (int i = start[a]; i < start[a + 1]; i++) {
      int g = around[i];
      if (g != f && !gone[g] && has(g, b)) {
        int d = tri[3 * g] + tri[3 * g + 1] + tri[3 * g + 2] - a - b;
        if (settled[d] || c == d || beside(c, d) || bad(a, d, c, g) || bad(d, b, c, g)) {
          return false;
        }
        put(f, a, d, c);
        put(g, d, b, c);
        settle(a, settled);
        settle(b, settled);
        settled[c] = true;
        settled[d] = true;
        return true;
      }
    }
    return false;
  }

  private boolean bad(int a, int b, int c, int was) {
    Vec3 before = normal(point(tri[3 * was]), point(tri[3 * was + 1]), point(tri[3 * was + 2]));
    Vec3 after = normal(point(a), point(b), point(c));
    return before.dot(after) < TURNED * before.length() * after.length();
  }

  private double edge(int f, int k) {
    return distance(tri[3 * f + k], tri[3 * f + (k + 1) % 3]);
  }

  private void put(int f, int a, int b, int c) {
    tri[3 * f] = a;
    tri[3 * f + 1] = b;
    tri[3 * f + 2] = c;
  }

  private void drop(boolean[] gone) {
    int n = 0;
    for (int f = 0; f < gone.length; f++) {
      if (!gone[f]) {
        System.arraycopy(tri, 3 * f, tri, n, 3);
        n += 3;
      }
    }
    tri = Arrays.copyOf(tri, n);
  }
}
