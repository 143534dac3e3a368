package org.castwright.pictures;

import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;

/**
 * Turns points in millimeters into samples on the sheet. Samples are counted from the upper left
 * corner; depth grows away from the eye, is measured in samples near the middle of the scene and is
 * linear over every flat surface, in perspective too.
 */
final class Camera {

  /** Samples a pixel, along each side. */
  static final int SAMPLES = 2;

  /** The eye stands this many half-diagonals of the scene away: lines converge gently. */
  private static final double EYE_DISTANCE = 5;

  private final Vec3 right;
  private final Vec3 up;
  private final Vec3 toward;
  private final Vec3 target;
  private final double eye;
  private double scale = 1;
  private double shiftX;
  private double shiftY;

  private Camera(View view, Vec3 target, double radius) {
    toward = view.looking().negate();
    right = view.looking().cross(view.up()).unit();
    up = toward.cross(right);
    this.target = target;
    eye = view.perspective() ? EYE_DISTANCE * radius : Double.POSITIVE_INFINITY;
  }

  /** A camera that sees the whole scene inside the frame left free by words and scale bar. */
  static Camera fit(Scene scene, View view, Margins margins) {
    return fit(scene, view, margins, List.of());
  }

  /**
   * As {@link #fit(Scene, View, Margins)}, with more points in the frame.
   *
   * @param around the points, mm
   */
  static Camera fit(Scene scene, View view, Margins margins, List<Vec3> around) {
    Box3 box = box(scene);
    Camera c = new Camera(view, box.center(), Math.max(box.diagonal() / 2, Double.MIN_NORMAL));
    double[] bounds = {
      Double.POSITIVE_INFINITY,
      Double.POSITIVE_INFINITY,
      Double.NEGATIVE_INFINITY,
      Double.NEGATIVE_INFINITY
    };
    double[] p = new double[3];
    for (Item item : scene.items()) {
      double[] xyz = item.mesh().xyz();
      for (int i = 0; i < xyz.length; i += 3) {
        c.project(xyz, i, item.offset(), p);
        widen(bounds, p);
      }
    }
    for (Vec3 point : around) {
      c.project(point, p);
      widen(bounds, p);
    }
    double w = Math.max(bounds[2] - bounds[0], Double.MIN_NORMAL);
    double h = Math.max(bounds[3] - bounds[1], Double.MIN_NORMAL);
    double s = SAMPLES * Math.min(margins.freeWidth() / w, margins.freeHeight() / h);
    c.scale = s;
    c.shiftX =
        SAMPLES * (margins.left() + margins.freeWidth() / 2.0) - s * (bounds[0] + bounds[2]) / 2;
    c.shiftY =
        SAMPLES * (margins.top() + margins.freeHeight() / 2.0) - s * (bounds[1] + bounds[3]) / 2;
    return c;
  }

  private static void widen(double[] bounds, double[] p) {
    bounds[0] = Math.min(bounds[0], p[0]);
    bounds[1] = Math.min(bounds[1], p[1]);
    bounds[2] = Math.max(bounds[2], p[0]);
    bounds[3] = Math.max(bounds[3], p[1]);
  }

  private static Box3 box(Scene scene) {
    Box3 all = null;
    for (Item item : scene.items()) {
      if (item.mesh().isEmpty()) {
        continue;
      }
      Box3 b = item.mesh().bounds();
      Vec3 lo = b.min().plus(item.offset());
      Vec3 hi = b.max().plus(item.offset());
      if (all != null) {
        lo =
            new Vec3(
                Math.min(lo.x(), all.min().x()),
                Math.min(lo.y(), all.min().y()),
                Math.min(lo.z(), all.min().z()));
        hi =
            new Vec3(
                Math.max(hi.x(), all.max().x()),
                Math.max(hi.y(), all.max().y()),
                Math.max(hi.z(), all.max().z()));
      }
      all = new Box3(lo, hi);
    }
    if (all == null) {
      throw new IllegalArgumentException("a picture needs at least one item with facets");
    }
    return all;
  }

  /** Writes sample x, sample y and depth of the point at {@code xyz[i..i+2] + offset}. */
  void project(double[] xyz, int i, Vec3 offset, double[] out) {
    double x = xyz[i] + offset.x() - target.x();
    double y = xyz[i + 1] + offset.y() - target.y();
    double z = xyz[i + 2] + offset.z() - target.z();
    double a = right.x() * x + right.y() * y + right.z() * z;
    double b = up.x() * x + up.y() * y + up.z() * z;
    double away = -(toward.x() * x + toward.y() * y + toward.z() * z);
    // with t = eye / (eye + away) every plane stays a plane in (a t, b t, away t)
    double t = Double.isInfinite(eye) ? 1 : eye / (eye + away);
    out[0] = shiftX + scale * a * t;
    out[1] = shiftY - scale * b * t;
    out[2] = scale * away * t;
  }

  void project(Vec3 p, double[] out) {
    project(new double[] {p.x(), p.y(), p.z()}, 0, Vec3.ZERO, out);
  }

  Vec3 right() {
    return right;
  }

  Vec3 up() {
    return up;
  }

  Vec3 toward() {
    return toward;
  }
}
