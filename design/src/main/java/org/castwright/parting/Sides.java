package org.castwright.parting;

import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Which half each facet of the casting belongs to: {@link #UPPER} or {@link #LOWER}. Facets that
 * face up or down by more than {@link #LEVEL_SINE} decide by their normal; near-vertical ones by
 * what a column just outside of them meets. Patches that touch no envelope of their own side take
 * the other one: neither half reaches them, and a patch of its own would only add a hidden loop.
 */
final class Sides {

  static final byte UPPER = 1;
  static final byte LOWER = -1;

  /** Sine of 0.2 degrees: flatter facets than this against the pull count as vertical walls. */
  static final double LEVEL_SINE = 0.0035;

  /** How far outside a vertical wall its column is asked, mm. */
  private static final double NUDGE_MM = 0.01;

  /** A facet this far below the upper envelope is hidden, mm. */
  private static final double HIDDEN_MM = 2e-3;

  private static final int MAX_PASSES = 4;

  private Sides() {}

  /** The side of every facet by direction alone. */
  static byte[] byDirection(TriMesh mesh, Columns columns) {
    byte[] side = new byte[mesh.triangleCount()];
    int slice = 4096;
    IntStream.range(0, (side.length + slice - 1) / slice)
        .parallel()
        .forEach(
            s -> {
              Column column = new Column();
              int end = Math.min(side.length, (s + 1) * slice);
              for (int f = s * slice; f < end; f++) {
                side[f] = facet(mesh, f, columns, column);
              }
            });
    return side;
  }

  private static byte facet(TriMesh mesh, int f, Columns columns, Column column) {
    Vec3 n = mesh.areaVector(f);
    double length = n.length();
    if (length == 0) {
      return UPPER;
    }
    double sine = n.z() / length;
    byte own = sine >= 0 ? UPPER : LOWER;
    if (Math.abs(sine) > LEVEL_SINE) {
      return own;
    }
    double[] c = center(mesh, f);
    double x = c[0] + NUDGE_MM * n.x() / length;
    double y = c[1] + NUDGE_MM * n.y() / length;
    if (!columns.at(x, y, column)) {
      return own;
    }
    if (column.upper <= c[2] + HIDDEN_MM) {
      return UPPER;
    }
    return column.lower >= c[2] - HIDDEN_MM ? LOWER : own;
  }

  private static double[] center(TriMesh mesh, int f) {
    double[] v = mesh.xyz();
    int a = 3 * mesh.tri()[3 * f];
    int b = 3 * mesh.tri()[3 * f + 1];
    int c = 3 * mesh.tri()[3 * f + 2];
    return new double[] {
      (v[a] + v[b] + v[c]) / 3,
      (v[a + 1] + v[b + 1] + v[c + 1]) / 3,
      (v[a + 2] + v[b + 2] + v[c + 2]) / 3
    };
  }

  /** Gives every patch that reaches no envelope of its side to the other side. */
  static void adoptHidden(TriMesh mesh, byte[] side, Columns columns) {
    int[] across = Neighbors.of(mesh.tri());
    int n = side.length;
    Column column = new Column();
    for (int pass = 0; pass < MAX_PASSES; pass++) {
      boolean[] done = new boolean[n];
      int[] patch = new int[n];
      boolean changed = false;
      for (int f = 0; f < n; f++) {
        if (done[f]) {
          continue;
        }
        int size = collect(across, side, f, done, patch);
        if (size <= n / 4 && !reaches(mesh, side, patch, size, columns, column)) {
          for (int i = 0; i < size; i++) {
            side[patch[i]] = (byte) -side[patch[i]];
          }
          changed = true;
        }
      }
      if (!changed) {
        return;
      }
    }
  }

  private static int collect(int[] across, byte[] side, int seed, boolean[] done, int[] patch) {
    int size = 0;
    patch[size++] = seed;
    done[seed] = true;
    for (int i = 0; i < size; i++) {
      for (int k = 0; k < 3; k++) {
        int g = across[3 * patch[i] + k];
        if (!done[g] && side[g] == side[seed]) {
          done[g] = true;
          patch[size++] = g;
        }
      }
    }
    return size;
  }

  private static boolean reaches(
      TriMesh mesh, byte[] side, int[] patch, int size, Columns columns, Column column) {
    for (int i = 0; i < size; i++) {
      int f = patch[i];
      if (mesh.areaVector(f).z() * side[f] > 0) {
        double[] c = center(mesh, f);
        if (columns.at(c[0], c[1], column)
            && (side[f] == UPPER
                ? column.upper <= c[2] + HIDDEN_MM
                : column.lower >= c[2] - HIDDEN_MM)) {
          return true;
        }
      }
    }
    return false;
  }
}
