package org.castwright.plan;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * The cut of a casting by a level plane, as directed segments with the casting to their left.
 * Vertices on the plane count as above it, so the segments always close to loops. Overlapping parts
 * count by winding number.
 */
final class LevelSection {

  /** Packed {@code ax ay bx by}. */
  private final double[] segments;

  private LevelSection(double[] segments) {
    this.segments = segments;
  }

  /** A stretch of a ray inside the casting: where it begins and ends, mm from the ray's start. */
  record Stretch(double from, double to) {
    double width() {
      return to - from;
    }
  }

  static LevelSection of(TriMesh casting, double z) {
    double[] v = casting.xyz();
    int[] t = casting.tri();
    double[] out = new double[256];
    int n = 0;
    for (int f = 0; f < t.length; f += 3) {
      int up = 0;
      for (int k = 0; k < 3; k++) {
        up |= v[3 * t[f + k] + 2] >= z ? 1 << k : 0;
      }
      if (up == 0 || up == 7) {
        continue;
      }
      // the corner alone on its side, and whether that side is above
      boolean above = Integer.bitCount(up) == 1;
      int alone = Integer.numberOfTrailingZeros(above ? up : ~up);
      int a = 3 * t[f + alone];
      int next = 3 * t[f + (alone + 1) % 3];
      int last = 3 * t[f + (alone + 2) % 3];
      if (n + 4 > out.length) {
        out = Arrays.copyOf(out, 2 * out.length);
      }
      meet(v, a, next, z, out, above ? n : n + 2);
      meet(v, a, last, z, out, above ? n + 2 : n);
      n += 4;
    }
    return new LevelSection(Arrays.copyOf(out, n));
  }

  private static void meet(double[] v, int a, int b, double z, double[] out, int at) {
    double s = (z - v[a + 2]) / (v[b + 2] - v[a + 2]);
    out[at] = v[a] + s * (v[b] - v[a]);
    out[at + 1] = v[a + 1] + s * (v[b + 1] - v[a + 1]);
  }

  /**
   * The first stretch inside the casting along a ray, or null when none begins within {@code
   * reach}.
   *
   * @param ux unit direction
   * @param uy unit direction
   */
  Stretch first(double x, double y, double ux, double uy, double reach) {
    double[] at = new double[16];
    int n = 0;
    for (int i = 0; i < segments.length; i += 4) {
      double sa = ux * (segments[i + 1] - y) - uy * (segments[i] - x);
      double sb = ux * (segments[i + 3] - y) - uy * (segments[i + 2] - x);
      if (sa >= 0 == sb >= 0) {
        continue;
      }
      double k = sa / (sa - sb);
      double qx = segments[i] + k * (segments[i + 2] - segments[i]);
      double qy = segments[i + 1] + k * (segments[i + 3] - segments[i + 1]);
      double t = ux * (qx - x) + uy * (qy - y);
      if (2 * n + 2 > at.length) {
        at = Arrays.copyOf(at, 2 * at.length);
      }
      at[2 * n] = t;
      // the casting is to the left: a segment that runs to the ray's right lets the ray in
      at[2 * n + 1] = sb < 0 ? 1 : -1;
      n++;
    }
    return firstOf(sorted(at, n), reach);
  }

  private static double[] sorted(double[] at, int n) {
    for (int i = 1; i < n; i++) {
      for (int j = i; j > 0 && at[2 * j] < at[2 * j - 2]; j--) {
        for (int c = 0; c < 2; c++) {
          double keep = at[2 * j + c];
          at[2 * j + c] = at[2 * j - 2 + c];
          at[2 * j - 2 + c] = keep;
        }
      }
    }
    return Arrays.copyOf(at, 2 * n);
  }

  private static Stretch firstOf(double[] at, double reach) {
    int winding = 0;
    double entered = 0;
    for (int i = 0; i < at.length; i += 2) {
      int next = winding + (int) at[i + 1];
      if (winding <= 0 && next > 0) {
        entered = at[i];
      } else if (winding > 0 && next <= 0 && at[i] > 1e-6) {
        return entered <= reach ? new Stretch(Math.max(0, entered), at[i]) : null;
      }
      winding = next;
    }
    return null;
  }
}
