package org.castwright.demo;

import java.util.List;
import org.castwright.mesh.TriMesh;

/**
 * A small resting bird about 100 mm long that lies on its side: beak to +x, back to +y, and a left
 * and a right half that part along z. Its head turns one way and its tail the other, so the seam
 * over its back is a curve in space.
 */
public final class RestingBird {

  private static final int RINGS = 57;

  /** How far parts flow into each other, in squared thickness, mm². */
  private static final double FLOW = 70;

  /** No point of the bird is farther from the middle, mm. */
  private static final double REACH = 80;

  /** Step and number of halvings by which the outline is found, mm. */
  private static final double SCAN = 0.5;

  private static final int HALVINGS = 40;

  private RestingBird() {}

  /** The closed mesh, about 39,000 facets, mm. */
  public static TriMesh mesh() {
    return TwoSided.build(new Shape(), RINGS);
  }

  static int rings() {
    return RINGS;
  }

  /**
   * An ellipsoid standing on the middle surface: center, half axes, tilt in the plane, and how much
   * narrower it grows toward its right end.
   */
  private record Part(
      double x, double y, double a, double b, double thick, double cos, double sin, double taper) {

    static Part at(double x, double y, double a, double b, double thick, double degrees) {
      double angle = Math.toRadians(degrees);
      return new Part(x, y, a, b, thick, StrictMath.cos(angle), StrictMath.sin(angle), 0);
    }

    Part tapered(double share) {
      return new Part(x, y, a, b, thick, cos, sin, share);
    }

    /** 1 in the middle, 0 on the outline, below 0 outside. */
    double inside(double px, double py) {
      double u = ((px - x) * cos + (py - y) * sin) / a;
      double v =
          ((py - y) * cos - (px - x) * sin) / (b * (1 - taper * Math.max(-1, Math.min(1, u))));
      return 1 - u * u - v * v;
    }

    double squaredThickness(double px, double py) {
      return thick * thick * inside(px, py);
    }
  }

  private static final class Shape implements TwoSided.Form {

    private final List<Part> parts =
        List.of(
            Part.at(-12, -11, 29, 19, 18, 16),
            Part.at(16, 5, 14, 13.5, 13, 0),
            Part.at(-41, -11, 20, 6, 5, 14).tapered(0.35),
            Part.at(31, 4, 9, 4.2, 3.6, 7).tapered(0.55));
    private final Part wing = Part.at(-11, -9.5, 19, 10.5, 1, 14);
    private final Part eye = Part.at(21.5, 8.5, 2.6, 2.6, 1, 0);

    @Override
    public double radius(double angle) {
      double x = StrictMath.cos(angle);
      double y = StrictMath.sin(angle);
      double out = REACH;
      while (squared((out - SCAN) * x, (out - SCAN) * y) <= 0) {
        out -= SCAN;
      }
      double in = out - SCAN;
      for (int i = 0; i < HALVINGS; i++) {
        double mid = (in + out) / 2;
        if (squared(mid * x, mid * y) > 0) {
          in = mid;
        } else {
          out = mid;
        }
      }
      return in;
    }

    @Override
    public double rim(double angle) {
      double r = radius(angle);
      return middle(r * StrictMath.cos(angle), r * StrictMath.sin(angle));
    }

    @Override
    public double upper(double x, double y, double share) {
      return middle(x, y) + half(x, y);
    }

    @Override
    public double lower(double x, double y, double share) {
      return middle(x, y) - half(x, y);
    }

    private double squared(double x, double y) {
      double f = parts.get(0).squaredThickness(x, y);
      for (Part p : parts.subList(1, parts.size())) {
        f = Curve.max(f, p.squaredThickness(x, y), FLOW);
      }
      return f;
    }

    /** The surface the two halves meet on: head to one side, tail to the other. */
    private static double middle(double x, double y) {
      return 6 * Curve.step(0, 44, x) - 4 * Curve.step(5, 55, -x) + 0.03 * y;
    }

    private double half(double x, double y) {
      double f = squared(x, y);
      double fade = Curve.step(0, 90, f);
      double smooth = Math.sqrt(f);
      return smooth + fade * feathers(x, y) + 1.1 * Curve.step(0, 1, eye.inside(x, y));
    }

    /** A folded wing with a few long feathers, raised over the flank, mm. */
    private double feathers(double x, double y) {
      double in = wing.inside(x, y);
      double u = (x - wing.x()) * wing.cos() + (y - wing.y()) * wing.sin();
      double v = (y - wing.y()) * wing.cos() - (x - wing.x()) * wing.sin();
      double rows = StrictMath.cos(2 * Math.PI * (v + 0.012 * u * u) / 5.2);
      double back = Curve.step(2, -10, u) * Curve.step(4, 0, v);
      return Curve.step(0, 0.45, in) * (1.3 + 0.34 * rows * back * Curve.step(0.05, 0.5, in));
    }
  }
}
