package org.castwright.division;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.survey.Raster;

/**
 * Where a sheet comes out of what bounds the space it divides: the casting, the share of the pieces
 * that have left, and the outside of the block. There it is drawn to run square to what it comes
 * out of, so that neither side of it is a thin wedge; for a column near such a place the height
 * that a square sheet has over it.
 */
final class Contacts {

  /** How far from a contact columns are drawn to it, mm, and columns at least. */
  private static final double REACH = 3;

  private static final int LEAST_REACH = 4;

  /** Steepest rise asked for, from the plane across the pull: 60°. */
  private static final double STEEP = StrictMath.tan(Math.toRadians(60));

  /** Pull of a column right at a contact, in the space and beyond it. */
  private static final double FIRM = 1;

  private static final double BEYOND = 0.3;

  /** Rows of columns that one thread draws at a time. */
  private static final int BAND = 16;

  private final PullColumns view;
  private final List<Sheet> left;
  private final Facing facing;
  private final int nx;
  private final int ny;
  private final double[] deep;

  /** What a column is deepest in: a sheet by its number, or one of these. */
  private final byte[] by;

  private static final byte CASTING = -1;
  private static final byte OUTSIDE = -2;

  /** Distance to the nearest contact, columns. */
  private final float[] near;

  /** The height of a sheet square to what it comes out of; not a number far from contacts. */
  final double[] aim;

  /** How firmly columns are drawn to it. */
  final double[] weight;

  Contacts(PullColumns view, List<Sheet> left, Facing facing) {
    this.view = view;
    this.left = left;
    this.facing = facing;
    nx = view.raster.nx();
    ny = view.raster.ny();
    deep = new double[nx * ny];
    by = new byte[nx * ny];
    near = new float[nx * ny];
    aim = new double[nx * ny];
    weight = new double[nx * ny];
  }

  /** Looks for the contacts of a sheet. */
  void find(double[] heights) {
    IntStream.range(0, ny)
        .parallel()
        .forEach(
            j -> {
              for (int i = 0; i < nx; i++) {
                deep[j * nx + i] = deep(j * nx + i, heights[j * nx + i]);
              }
            });
    Arrays.fill(near, Float.POSITIVE_INFINITY);
    Arrays.fill(aim, Double.NaN);
    Arrays.fill(weight, 0);
    List<Contact> contacts = new ArrayList<>();
    for (int o = 0; o < deep.length; o++) {
      if (o % nx + 1 < nx && deep[o] > 0 != deep[o + 1] > 0) {
        meet(o, o + 1, heights, contacts);
      }
      if (o + nx < deep.length && deep[o] > 0 != deep[o + nx] > 0) {
        meet(o, o + nx, heights, contacts);
      }
    }
    IntStream.range(0, (ny + BAND - 1) / BAND)
        .parallel()
        .forEach(k -> contacts.forEach(c -> spread(c, k * BAND, Math.min(ny, (k + 1) * BAND) - 1)));
  }

  /** A place in columns and mm, and the way into the space there, in the frame of the pull. */
  private record Contact(double x, double y, double z, Vec3 normal) {}

  private void meet(int o, int p, double[] heights, List<Contact> contacts) {
    int in = deep[o] > 0 ? o : p;
    int out = o + p - in;
    double t = Double.isInfinite(deep[out]) ? 0.5 : deep[in] / (deep[in] - deep[out]);
    double x = in % nx + t * (out % nx - in % nx);
    int inRow = in / nx;
    int outRow = out / nx;
    double y = inRow + t * (outRow - inRow);
    double z = heights[in] + t * (heights[out] - heights[in]);
    Vec3 n = normal(in, heights[in], at(x, y, z));
    if (n.length() > 1e-6) {
      contacts.add(new Contact(x, y, z, view.frame.toLocal(n.unit())));
    }
  }

  /** Draws the columns about a contact to it that stand in some rows. */
  private void spread(Contact c, int from, int to) {
    double x = c.x;
    double y = c.y;
    Vec3 normal = c.normal;
    double pixel = view.raster.pixel();
    double reach = Math.max(LEAST_REACH, REACH / pixel);
    int i0 = Math.max(0, (int) Math.ceil(x - reach));
    int i1 = Math.min(nx - 1, (int) Math.floor(x + reach));
    int j0 = Math.max(from, (int) Math.ceil(y - reach));
    int j1 = Math.min(to, (int) Math.floor(y + reach));
    for (int j = j0; j <= j1; j++) {
      for (int i = i0; i <= i1; i++) {
        double dx = i - x;
        double dy = j - y;
        double d = Math.sqrt(dx * dx + dy * dy);
        int o = j * nx + i;
        if (d >= reach || d >= near[o]) {
          continue;
        }
        near[o] = (float) d;
        boolean inside = deep[o] > 0;
        double side = inside ? -1 : 1;
        double away = d < 1e-9 ? 0 : side * (dx * normal.x() + dy * normal.y()) / d;
        double slope =
            away > 0
                ? Math.max(-STEEP, Math.min(STEEP, normal.z() / away))
                : Math.signum(normal.z()) * STEEP;
        aim[o] = c.z + side * slope * d * pixel;
        double w = 1 - d / reach;
        weight[o] = (inside ? BEYOND : FIRM) * w * w;
      }
    }
  }

  /** How deep a point of a column is in what bounds the space, mm; negative in the space. */
  private double deep(int o, double height) {
    double most = view.hit(o) ? view.roof[o] - height : Double.NEGATIVE_INFINITY;
    Vec3 p = view.point(o, height);
    by[o] = CASTING;
    for (int n = 0; n < left.size(); n++) {
      double d = left.get(n).above(p);
      if (d > most) {
        most = d;
        by[o] = (byte) n;
      }
    }
    double d = view.outside(p);
    if (d > most) {
      most = d;
      by[o] = OUTSIDE;
    }
    return most;
  }

  /** Out of what a column is deepest in, into the space. */
  private Vec3 normal(int o, double height, Vec3 contact) {
    if (by[o] == CASTING) {
      return facing.at(contact);
    }
    Vec3 p = view.point(o, height);
    return by[o] == OUTSIDE ? inward(p) : left.get(by[o]).downward(p);
  }

  /** Square to the face of the block that a point is farthest past, toward the middle. */
  private Vec3 inward(Vec3 p) {
    Vec3 c = view.block.center();
    Vec3 h = view.block.size().times(0.5);
    double a = Math.abs(p.x() - c.x()) - h.x();
    double b = Math.abs(p.y() - c.y()) - h.y();
    double g = Math.abs(p.z() - c.z()) - h.z();
    if (a >= b && a >= g) {
      return new Vec3(c.x() - p.x(), 0, 0);
    }
    return b >= g ? new Vec3(0, c.y() - p.y(), 0) : new Vec3(0, 0, c.z() - p.z());
  }

  private Vec3 at(double i, double j, double height) {
    Raster r = view.raster;
    return view.frame.toWorld(new Vec3(r.x0() + i * r.pixel(), r.y0() + j * r.pixel(), height));
  }
}
