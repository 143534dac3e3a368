package org.castwright.solid.manifold;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * The connected bodies of a closed mesh. Its shells (triangles connected by edges) are outer shells
 * if their volume is above zero, else walls of voids; a void belongs to the smallest outer shell
 * round it.
 */
final class Pieces {

  /** Places on a void's wall that vote on what is round it, in case one lies on another shell. */
  private static final int VOTES = 7;

  private Pieces() {}

  /**
   * Largest volume first; equal volumes by the least corner of their boxes, x before y before z.
   */
  static List<TriMesh> of(TriMesh mesh) {
    List<TriMesh> outer = new ArrayList<>();
    List<TriMesh> walls = new ArrayList<>();
    for (TriMesh shell : shells(mesh)) {
      (shell.volume() > 0 ? outer : walls).add(shell);
    }
    if (outer.isEmpty()) {
      return mesh.isEmpty() ? List.of() : List.of(mesh);
    }
    List<List<TriMesh>> bodies = new ArrayList<>();
    for (TriMesh shell : outer) {
      bodies.add(new ArrayList<>(List.of(shell)));
    }
    for (TriMesh wall : walls) {
      int owner = smallestRound(wall, outer);
      if (owner >= 0) {
        bodies.get(owner).add(wall);
      }
    }
    List<TriMesh> out = new ArrayList<>();
    for (List<TriMesh> parts : bodies) {
      out.add(parts.size() == 1 ? parts.get(0) : joined(parts));
    }
    out.sort(
        Comparator.comparingDouble((TriMesh m) -> -m.volume())
            .thenComparingDouble(m -> m.bounds().min().x())
            .thenComparingDouble(m -> m.bounds().min().y())
            .thenComparingDouble(m -> m.bounds().min().z()));
    return out;
  }

  private static int smallestRound(TriMesh wall, List<TriMesh> outer) {
    int best = -1;
    for (int i = 0; i < outer.size(); i++) {
      if ((best < 0 || outer.get(i).volume() < outer.get(best).volume())
          && isInside(wall, outer.get(i))) {
        best = i;
      }
    }
    return best;
  }

  /** Whether most of a few places on {@code wall} are inside {@code shell}. */
  private static boolean isInside(TriMesh wall, TriMesh shell) {
    Box3 a = wall.bounds();
    Box3 b = shell.bounds();
    Vec3 low = a.min().minus(b.min());
    Vec3 high = b.max().minus(a.max());
    if (Math.min(low.x(), Math.min(low.y(), low.z())) < 0
        || Math.min(high.x(), Math.min(high.y(), high.z())) < 0) {
      return false;
    }
    int votes = Math.min(VOTES, wall.triangleCount());
    int inside = 0;
    for (int k = 0; k < votes; k++) {
      int f = (int) ((long) wall.triangleCount() * k / votes);
      Vec3 p = corner(wall, f, 0).plus(corner(wall, f, 1)).plus(corner(wall, f, 2));
      inside += winding(shell, p.times(1.0 / 3)) > 0.5 ? 1 : 0;
    }
    return 2 * inside > votes;
  }

  /**
   * How often a closed mesh goes round a point: the solid angles of its triangles over 4 pi. Source
   * of the solid angle: A. van Oosterom, J. Strackee, "The solid angle of a plane triangle", IEEE
   * Transactions on Biomedical Engineering 30 (1983), 125-126.
   */
  static double winding(TriMesh mesh, Vec3 p) {
    double sum = 0;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      Vec3 a = corner(mesh, f, 0).minus(p);
      Vec3 b = corner(mesh, f, 1).minus(p);
      Vec3 c = corner(mesh, f, 2).minus(p);
      double la = a.length();
      double lb = b.length();
      double lc = c.length();
      double below = la * lb * lc + a.dot(b) * lc + b.dot(c) * la + c.dot(a) * lb;
      sum += StrictMath.atan2(a.dot(b.cross(c)), below);
    }
    return sum / (2 * Math.PI);
  }

  private static Vec3 corner(TriMesh mesh, int f, int k) {
    return mesh.vertex(mesh.tri()[3 * f + k]);
  }

  /** The parts of a mesh that no edge connects, in the order of their first triangles. */
  private static List<TriMesh> shells(TriMesh mesh) {
    int[] tri = mesh.tri();
    int[] root = new int[mesh.vertexCount()];
    Arrays.setAll(root, v -> v);
    for (int t = 0; t < tri.length; t += 3) {
      unite(root, tri[t], tri[t + 1]);
      unite(root, tri[t], tri[t + 2]);
    }
    int[] shellOf = new int[root.length];
    Arrays.fill(shellOf, -1);
    int[] corners = new int[root.length];
    int shells = 0;
    for (int v : tri) {
      int r = find(root, v);
      shellOf[r] = shellOf[r] < 0 ? shells++ : shellOf[r];
      corners[shellOf[r]]++;
    }
    if (shells == 1) {
      return List.of(mesh);
    }
    int[][] parts = new int[shells][];
    for (int s = 0; s < shells; s++) {
      parts[s] = new int[corners[s]];
      corners[s] = 0;
    }
    for (int v : tri) {
      int s = shellOf[find(root, v)];
      parts[s][corners[s]++] = v;
    }
    List<TriMesh> out = new ArrayList<>();
    for (int[] part : parts) {
      out.add(compact(mesh.xyz(), part));
    }
    return out;
  }

  /** A mesh of some triangles with only the vertices they use, in their old order. */
  private static TriMesh compact(double[] xyz, int[] tri) {
    int[] used = tri.clone();
    Arrays.sort(used);
    int n = 0;
    for (int i = 0; i < used.length; i++) {
      if (i == 0 || used[i] != used[i - 1]) {
        used[n++] = used[i];
      }
    }
    double[] out = new double[3 * n];
    for (int i = 0; i < n; i++) {
      System.arraycopy(xyz, 3 * used[i], out, 3 * i, 3);
    }
    int[] renamed = new int[tri.length];
    for (int i = 0; i < tri.length; i++) {
      renamed[i] = Arrays.binarySearch(used, 0, n, tri[i]);
    }
    return new TriMesh(out, renamed);
  }

  private static TriMesh joined(List<TriMesh> parts) {
    int coordinates = 0;
    int corners = 0;
    for (TriMesh part : parts) {
      coordinates += part.xyz().length;
      corners += part.tri().length;
    }
    double[] xyz = new double[coordinates];
    int[] tri = new int[corners];
    int c = 0;
    int t = 0;
    for (TriMesh part : parts) {
      for (int v : part.tri()) {
        tri[t++] = v + c / 3;
      }
      System.arraycopy(part.xyz(), 0, xyz, c, part.xyz().length);
      c += part.xyz().length;
    }
    return new TriMesh(xyz, tri);
  }

  private static void unite(int[] root, int a, int b) {
    int ra = find(root, a);
    int rb = find(root, b);
    root[Math.max(ra, rb)] = Math.min(ra, rb);
  }

  private static int find(int[] root, int start) {
    int i = start;
    while (root[i] != i) {
      root[i] = root[root[i]];
      i = root[i];
    }
    return i;
  }
}
