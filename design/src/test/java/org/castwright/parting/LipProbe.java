package org.castwright.parting;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * Measures lips on finished halves: how far inside the casting's outline some of the wrong half
 * still covers it. Uses the halves and the casting alone. The width counts, not the depth: beside a
 * wall a lip of a few microns can be deep and harmless.
 */
final class LipProbe {

  private static final double[] OFFSETS = {0.005, 0.01, 0.02, 0.03, 0.05, 0.1, 0.2, 0.5};

  /** A lip shallower than this is no lip, mm. */
  private static final double DEEP_MM = 0.02;

  /** Lips on less than this share of the outline are left out. */
  private static final double SHARE = 0.002;

  private static final double OUTSIDE_MM = 0.01;

  private final Columns casting;
  private final Columns upper;
  private final Columns lower;
  private final List<double[]> outline = new ArrayList<>();
  private double length;

  LipProbe(TriMesh body, TriMesh upperHalf, TriMesh lowerHalf) {
    casting = new Columns(body);
    upper = new Columns(upperHalf);
    lower = new Columns(lowerHalf);
    double[] v = body.xyz();
    Map<Long, Boolean> seen = new HashMap<>();
    for (int c = 0; c < body.tri().length; c++) {
      int p = body.tri()[c];
      int q = body.tri()[c % 3 == 2 ? c - 2 : c + 1];
      if (seen.put(EdgeMap.both(p, q), true) == null) {
        double l = Math.hypot(v[3 * q] - v[3 * p], v[3 * q + 1] - v[3 * p + 1]);
        int n = Math.max(1, (int) (l / 0.25));
        for (int i = 0; l > 1e-4 && i < n; i++) {
          double t = (i + 0.5) / n;
          double nx = -(v[3 * q + 1] - v[3 * p + 1]) / l;
          double ny = (v[3 * q] - v[3 * p]) / l;
          double x = v[3 * p] + t * (v[3 * q] - v[3 * p]);
          double y = v[3 * p + 1] + t * (v[3 * q + 1] - v[3 * p + 1]);
          sample(x, y, nx, ny, l / n);
        }
      }
    }
  }

  private void sample(double x, double y, double nx, double ny, double l) {
    Column c = new Column();
    boolean left = casting.at(x + OUTSIDE_MM * nx, y + OUTSIDE_MM * ny, c);
    boolean right = casting.at(x - OUTSIDE_MM * nx, y - OUTSIDE_MM * ny, c);
    if (left != right) {
      double s = left ? 1 : -1;
      outline.add(new double[] {x, y, s * nx, s * ny, l});
      length += l;
    }
  }

  /** The largest probed distance inside the outline, mm, at which lips matter; 0 if none does. */
  double width() {
    double width = 0;
    for (double o : OFFSETS) {
      double bad = 0;
      for (double[] s : outline) {
        bad += depth(s[0] + o * s[2], s[1] + o * s[3]) > DEEP_MM ? s[4] : 0;
      }
      if (bad > SHARE * length) {
        width = o;
      }
    }
    return width;
  }

  /** Length of the casting's outline, mm. */
  double outlineMm() {
    return length;
  }

  /** The volume, mm³, that the worse half shares with the casting when moved this far, mm. */
  static double collision(SolidKernel kernel, Parting p, Solid body, double step) {
    Vec3 up = new Vec3(0, 0, step);
    return Math.max(
        kernel.overlap(p.upper(), up, body), kernel.overlap(p.lower(), up.negate(), body));
  }

  /** How deep the wrong half reaches over or under the casting in a column it meets once, mm. */
  double depth(double x, double y) {
    Column c = new Column();
    if (!casting.at(x, y, c) || c.hits != 2) {
      return 0;
    }
    double top = c.upper;
    double bottom = c.lower;
    double deep = 0;
    if (upper.at(x, y, c)) {
      deep = Math.max(deep, top - c.lower);
    }
    if (lower.at(x, y, c)) {
      deep = Math.max(deep, c.upper - bottom);
    }
    return deep;
  }
}
