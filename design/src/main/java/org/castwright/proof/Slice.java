package org.castwright.proof;

/**
 * The line in which a triangle meets a plane {@code v = const} of a frame (u, v, w), from low u to
 * high u. A vertex on the plane counts as below it and the crossing of an edge is computed from its
 * lower end, so that two triangles with a common edge, of one body or of two, cut it in the very
 * same numbers: every column of a closed mesh is entered as often as it is left, whatever is
 * vertical, flat or degenerate. One object serves a whole loop.
 */
final class Slice {

  /** More than a crossing can be off between the ends of its edge, mm. */
  private static final double ROUNDING = 1e-9;

  private final double[] uvw;
  private double crossU;
  private double crossW;

  double lowU;
  double lowW;
  double highU;
  double highW;

  /** Whether a ray along +w enters the body here (the triangle faces down). */
  boolean entering;

  Slice(double[] uvw) {
    this.uvw = uvw;
  }

  /** Cuts the triangle with vertices {@code a, b, c}; false if it has no columns on this plane. */
  boolean cut(int a, int b, int c, double v) {
    boolean hasRise = false;
    boolean hasFall = false;
    double riseU = 0;
    double riseW = 0;
    double fallU = 0;
    double fallW = 0;
    int from = a;
    for (int side = 0; side < 3; side++) {
      int to = side == 0 ? b : side == 1 ? c : a;
      int way = cross(from, to, v);
      if (way > 0) {
        hasRise = true;
        riseU = crossU;
        riseW = crossW;
      } else if (way < 0) {
        hasFall = true;
        fallU = crossU;
        fallW = crossW;
      }
      from = to;
    }
    if (!hasRise || !hasFall || riseU == fallU) {
      return false;
    }
    entering = riseU < fallU;
    lowU = entering ? riseU : fallU;
    lowW = entering ? riseW : fallW;
    highU = entering ? fallU : riseU;
    highW = entering ? fallW : riseW;
    return true;
  }

  /** Whether a triangle lies beside {@code u} altogether, by more than rounding. */
  boolean misses(int a, int b, int c, double u) {
    double ua = uvw[3 * a] - u;
    double ub = uvw[3 * b] - u;
    double uc = uvw[3 * c] - u;
    return (ua > ROUNDING && ub > ROUNDING && uc > ROUNDING)
        || (ua < -ROUNDING && ub < -ROUNDING && uc < -ROUNDING);
  }

  /** The height over {@code u}, which lies from {@code lowU} to {@code highU}. */
  double heightAt(double u) {
    return lowW + (highW - lowW) * ((u - lowU) / (highU - lowU));
  }

  private int cross(int from, int to, double v) {
    double vf = uvw[3 * from + 1];
    double vt = uvw[3 * to + 1];
    if ((vf > v) == (vt > v)) {
      return 0;
    }
    boolean rises = vt > v;
    int low = 3 * (rises ? from : to);
    int high = 3 * (rises ? to : from);
    double t = (v - uvw[low + 1]) / (uvw[high + 1] - uvw[low + 1]);
    crossU = uvw[low] + t * (uvw[high] - uvw[low]);
    crossW = uvw[low + 2] + t * (uvw[high + 2] - uvw[low + 2]);
    return rises ? 1 : -1;
  }
}
