package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.survey.DepthImage;
import org.castwright.survey.Raster;

/** A casting's roof: its highest surface, seen straight down against y of the mold frame. */
final class Roof {

  /** A roof this near to a peak's height, mm, is one level top with it. */
  private static final double LEVEL = 0.2;

  /** Keeps lines off edges, mm. */
  private static final double OFF = 1e-4;

  private static final int PIXELS = 400;
  private static final double LEAST_PIXEL = 0.1;

  private final TriMesh casting;
  private final DepthImage above = new DepthImage();
  private final Frame upright = new Frame(Vec3.Z, Vec3.X, Vec3.Y);

  /**
   * @param casting closed, in the mold frame, mm
   */
  Roof(TriMesh casting) {
    this.casting = casting;
    above.look(casting, upright, PIXELS, LEAST_PIXEL);
  }

  /** The place of a level top nearest its middle; a peak stays where it is. */
  Vec3 middle(Vec3 peak) {
    Raster r = above.raster();
    Vec3 q = upright.toLocal(peak);
    int start = r.nearest(q.x(), q.y());
    List<Integer> top = new ArrayList<>(List.of(start));
    boolean[] seen = new boolean[r.nx() * r.ny()];
    seen[start] = true;
    double x = 0;
    double y = 0;
    for (int n = 0; n < top.size(); n++) {
      int c = top.get(n);
      x += r.x0() + c % r.nx() * r.pixel();
      y += r.y0() + Math.floorDiv(c, r.nx()) * r.pixel();
      for (int d : new int[] {-1, 1, -r.nx(), r.nx()}) {
        int e = c + d;
        if (e >= 0 && e < seen.length && !seen[e] && level(e, q.z())) {
          seen[e] = true;
          top.add(e);
        }
      }
    }
    double mx = x / top.size();
    double my = y / top.size();
    int best = start;
    double least = Double.POSITIVE_INFINITY;
    for (int c : top) {
      double d =
          Math.hypot(
              r.x0() + c % r.nx() * r.pixel() - mx,
              r.y0() + Math.floorDiv(c, r.nx()) * r.pixel() - my);
      if (d < least) {
        least = d;
        best = c;
      }
    }
    return level(start, q.z()) ? place(best) : peak;
  }

  private boolean level(int column, double height) {
    return above.hit(column) && Math.abs(above.upper(column) - height) < LEVEL;
  }

  private Vec3 place(int column) {
    Raster r = above.raster();
    double u = r.x0() + column % r.nx() * r.pixel();
    double v = r.y0() + Math.floorDiv(column, r.nx()) * r.pixel();
    return upright.toWorld(new Vec3(u, v, above.upper(column)));
  }

  /** Places of the roof, on a grid about so far apart, mm. */
  List<Vec3> places(double apart) {
    Raster r = above.raster();
    int step = (int) Math.max(1, Math.rint(apart / r.pixel()));
    List<Vec3> out = new ArrayList<>();
    for (int j = 0; j < r.ny(); j += step) {
      for (int i = 0; i < r.nx(); i += step) {
        int c = j * r.nx() + i;
        if (above.hit(c)) {
          out.add(place(c));
        }
      }
    }
    return out;
  }

  /** The place of the roof in the column nearest to a point, or null where there is none. */
  Vec3 at(Vec3 p) {
    Vec3 q = upright.toLocal(p);
    int c = above.raster().nearest(q.x(), q.y());
    return c < 0 || !above.hit(c) ? null : place(c);
  }

  /** What looks at the columns about a line: how far off it they stand, mm, and their height. */
  @FunctionalInterface
  interface Look {
    /** Height is minus infinity where the column misses the casting. */
    void at(double off, double height);
  }

  /** Looks at the columns nearer than {@code radius} to the line straight up through a point. */
  void about(Vec3 p, double radius, Look look) {
    double pixel = above.raster().pixel();
    Vec3 q = upright.toLocal(p);
    for (double a = -radius; a <= radius; a += pixel) {
      for (double b = -radius; b <= radius; b += pixel) {
        int c = above.raster().nearest(q.x() + a, q.y() + b);
        if (a * a + b * b <= radius * radius) {
          look.at(Math.hypot(a, b), c < 0 ? Double.NEGATIVE_INFINITY : above.upper(c));
        }
      }
    }
  }

  /** The lowest and the highest that the roof is over a bore, mm; infinite where there is none. */
  double[] over(Vec3 p, double radius) {
    double[] out = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
    about(
        p,
        radius,
        (off, height) -> {
          if (height > Double.NEGATIVE_INFINITY) {
            out[0] = Math.min(out[0], height);
            out[1] = Math.max(out[1], height);
          }
        });
    return out;
  }

  /** Whether the casting is there under all of a bore. */
  boolean covers(Vec3 p, double radius) {
    boolean[] all = {true};
    about(p, radius, (off, height) -> all[0] &= height > Double.NEGATIVE_INFINITY);
    return all[0];
  }

  /** Whether no part of the roof nearer than {@code radius} to a place is steeper than a slope. */
  boolean gentle(Vec3 p, double radius, double slope) {
    Raster r = above.raster();
    Vec3 q = upright.toLocal(p);
    double most = slope * r.pixel();
    for (double a = -radius; a <= radius; a += r.pixel()) {
      for (double b = -radius; b <= radius; b += r.pixel()) {
        int c = a * a + b * b <= radius * radius ? r.nearest(q.x() + a, q.y() + b) : -1;
        if (c >= 0 && above.hit(c) && (breaks(c, c + 1, most) || breaks(c, c + r.nx(), most))) {
          return false;
        }
      }
    }
    return true;
  }

  private boolean breaks(int c, int next, double most) {
    return next < above.raster().nx() * above.raster().ny()
        && above.hit(next)
        && Math.abs(above.upper(next) - above.upper(c)) > most;
  }

  /** How far the casting reaches straight down from a point of its roof, mm. */
  double thickness(Vec3 p) {
    double top = Double.NEGATIVE_INFINITY;
    for (int f = 0; f < casting.triangleCount(); f++) {
      double h = height(f, p.x() + OFF, p.z() + OFF);
      if (h < p.y() - OFF) {
        top = Math.max(top, h);
      }
    }
    return p.y() - top;
  }

  /** The height of a facet over a point, not a number beside it. */
  private double height(int f, double x, double z) {
    Vec3 a = casting.vertex(casting.tri()[3 * f]);
    Vec3 b = casting.vertex(casting.tri()[3 * f + 1]).minus(a);
    Vec3 c = casting.vertex(casting.tri()[3 * f + 2]).minus(a);
    double d = b.x() * c.z() - b.z() * c.x();
    double s = ((x - a.x()) * c.z() - (z - a.z()) * c.x()) / d;
    double t = (b.x() * (z - a.z()) - b.z() * (x - a.x())) / d;
    return s >= 0 && t >= 0 && s + t <= 1 ? a.y() + s * b.y() + t * c.y() : Double.NaN;
  }
}
