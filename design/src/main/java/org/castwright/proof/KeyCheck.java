package org.castwright.proof;

import java.util.Arrays;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/** Whether a key points along the pull and stands in its socket with the clearance asked. */
final class KeyCheck {

  /** Degrees; a key 10 mm high that leans so comes 0.02 mm to one side. */
  private static final double LEAN_DEGREES = 0.1;

  /** The share of the key's height that is measured, clear of foot and tip. */
  private static final double LOWEST = 0.25;

  private static final double HIGHEST = 0.75;

  /** How far beyond the declared radius, as a share of it, a flank is still the key's. */
  private static final double BEYOND = 1.1;

  /** A facet whose normal leans more than this to the axis (cosine) is a tip or foot. */
  private static final double FLANK = 0.8;

  /** Samples along each side of a facet; flanks are often single long triangles. */
  private static final int SAMPLES = 8;

  private KeyCheck() {}

  static ProofCheck along(ProofInput.Key key, Vec3 pull) {
    double sine = key.axis().cross(pull).length();
    double degrees = Math.toDegrees(StrictMath.atan2(sine, Math.abs(key.axis().dot(pull))));
    boolean passed = degrees <= LEAN_DEGREES;
    String words =
        "The key at "
            + Say.place(key.center())
            + " leans "
            + Say.number(degrees)
            + "° from the pull of the first of its two pieces to come off.";
    return new ProofCheck(
        "key: " + key.name() + " along the pull", passed, degrees, LEAN_DEGREES, "°", words);
  }

  /** Measures the gap by closest points on the socket from samples of the flank. */
  static ProofCheck gap(
      ProofInput.Key key, Body carrier, Bvh socket, Columns socketColumns, ProofLimits limits) {
    double[] gaps = new double[64];
    int n = 0;
    Vec3 worstAt = key.center();
    double worst = 0;
    TriMesh mesh = carrier.mesh();
    for (int f = 0; f < mesh.triangleCount(); f++) {
      if (!isFlank(mesh, f, key)) {
        continue;
      }
      for (int s = 0; s < SAMPLES * SAMPLES; s++) {
        Vec3 p = sample(mesh, f, s);
        if (!measured(p, key)) {
          continue;
        }
        double d = socket.closest(p).distance();
        double gap = socketColumns.holds(p) ? -d : d;
        if (n == gaps.length) {
          gaps = Arrays.copyOf(gaps, 2 * n);
        }
        gaps[n++] = gap;
        if (Math.abs(gap - key.clearance()) >= worst) {
          worst = Math.abs(gap - key.clearance());
          worstAt = p;
        }
      }
    }
    return judge(key, Arrays.copyOf(gaps, n), worst, worstAt, limits);
  }

  private static ProofCheck judge(
      ProofInput.Key key, double[] gaps, double worst, Vec3 at, ProofLimits limits) {
    String name = "key: " + key.name() + " clearance";
    if (gaps.length == 0) {
      String words =
          "No key flank stands at " + Say.place(key.center()) + ", where one is declared.";
      return new ProofCheck(name, false, Double.NaN, limits.keyGapTolerance(), "mm off", words);
    }
    Arrays.sort(gaps);
    boolean passed = worst <= limits.keyGapTolerance();
    String words =
        "The gap round the key at "
            + Say.place(key.center())
            + " measures "
            + Say.number(gaps[0])
            + " to "
            + Say.number(gaps[gaps.length - 1])
            + " mm where "
            + Say.number(key.clearance())
            + " mm were asked"
            + (passed ? "." : ", farthest off near " + Say.place(at) + ".");
    return new ProofCheck(name, passed, worst, limits.keyGapTolerance(), "mm off", words);
  }

  /** A facet that faces away from the axis within the key's bounds. */
  private static boolean isFlank(TriMesh mesh, int f, ProofInput.Key key) {
    int[] t = mesh.tri();
    double reach = key.radius() * BEYOND;
    boolean outside = true;
    for (int k = 0; k < 3; k++) {
      Vec3 r = mesh.vertex(t[3 * f + k]).minus(key.center());
      outside &= radial(r, key).length() > reach;
    }
    Vec3 normal = mesh.areaVector(f);
    double length = normal.length();
    if (outside || length == 0 || Math.abs(normal.dot(key.axis())) > FLANK * length) {
      return false;
    }
    Vec3 middle = sample(mesh, f, SAMPLES * SAMPLES / 2);
    return normal.dot(radial(middle.minus(key.center()), key)) > 0;
  }

  /** Sample {@code s} of a facet: the square of samples folded onto the triangle. */
  private static Vec3 sample(TriMesh mesh, int f, int s) {
    int[] t = mesh.tri();
    int row = s / SAMPLES;
    int column = s % SAMPLES;
    double a = (column + 0.5) / SAMPLES;
    double b = (row + 0.5) / SAMPLES;
    if (a + b > 1) {
      a = 1 - a;
      b = 1 - b;
    }
    return mesh.vertex(t[3 * f])
        .times(1 - a - b)
        .plus(mesh.vertex(t[3 * f + 1]).times(a))
        .plus(mesh.vertex(t[3 * f + 2]).times(b));
  }

  private static boolean measured(Vec3 p, ProofInput.Key key) {
    Vec3 r = p.minus(key.center());
    double height = r.dot(key.axis()) / key.height();
    return height > LOWEST && height < HIGHEST && radial(r, key).length() <= key.radius() * BEYOND;
  }

  private static Vec3 radial(Vec3 fromCenter, ProofInput.Key key) {
    return fromCenter.minus(key.axis().times(fromCenter.dot(key.axis())));
  }
}
