package org.castwright.repair;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/** The mesh as it stands between two steps, and the steps so far. */
final class Draft {

  private TriMesh mesh;
  private final List<HealingStep> steps = new ArrayList<>();

  Draft(TriMesh mesh) {
    this.mesh = mesh;
  }

  TriMesh mesh() {
    return mesh;
  }

  List<HealingStep> steps() {
    return steps;
  }

  EdgeTable edges() {
    return new EdgeTable(mesh.tri(), mesh.vertexCount());
  }

  /** Takes a changed mesh and tells of the change. */
  void replace(TriMesh changed, HealingStep step) {
    mesh = changed;
    steps.add(step);
  }

  /** Keeps the triangles marked, in order, and the vertices they use, in order. */
  static TriMesh keep(TriMesh mesh, boolean[] kept) {
    int[] tri = mesh.tri();
    int[] out = new int[tri.length];
    int n = 0;
    for (int f = 0; f < kept.length; f++) {
      if (kept[f]) {
        System.arraycopy(tri, 3 * f, out, n, 3);
        n += 3;
      }
    }
    return compact(mesh.xyz(), Arrays.copyOf(out, n));
  }

  /** The mesh without vertices that no triangle uses. */
  static TriMesh compact(double[] xyz, int[] tri) {
    int[] renamed = new int[xyz.length / 3];
    Arrays.fill(renamed, -1);
    for (int v : tri) {
      renamed[v] = 0;
    }
    double[] out = new double[xyz.length];
    int n = 0;
    for (int v = 0; v < renamed.length; v++) {
      if (renamed[v] == 0) {
        System.arraycopy(xyz, 3 * v, out, 3 * n, 3);
        renamed[v] = n++;
      }
    }
    int[] corners = new int[tri.length];
    Arrays.setAll(corners, i -> renamed[tri[i]]);
    return new TriMesh(Arrays.copyOf(out, 3 * n), corners);
  }

  /** A count with its noun: "1 hole", "3 holes". */
  static String many(int n, String one, String more) {
    return n + " " + (n == 1 ? one : more);
  }

  /** A place for a sentence: "(1.25, 0, 17)". */
  static String place(Vec3 p) {
    return "(" + number(p.x()) + ", " + number(p.y()) + ", " + number(p.z()) + ")";
  }

  /** A number for a sentence: three significant digits or, from 100 up, whole. */
  static String number(double v) {
    if (v == 0) {
      return "0";
    }
    if (Math.abs(v) >= 100) {
      return String.format(Locale.ROOT, "%.0f", v);
    }
    return String.format(Locale.ROOT, "%.3g", v);
  }
}
