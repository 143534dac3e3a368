package org.castwright.demo;

import org.castwright.mesh.TriMesh;

/**
 * A scallop shell as a bar of soap: about 90 mm across, a domed front with ribs that fan out from
 * the hinge, a gently hollow back, and a rim that rises and falls, so that its seam is not flat.
 * The hinge points to -y, the front to +z.
 */
public final class ShellSoap {

  private static final int RINGS = 57;

  /** Radius of the fan, mm. */
  private static final double FAN = 45;

  /** The two straight flanks: unit normal (x taken positive) and distance from the middle, mm. */
  private static final double FLANK_X = 0.6;

  private static final double FLANK_Y = -0.8;
  private static final double FLANK = 35.2;

  /** Half width of the hinge and how far below the middle it ends, mm. */
  private static final double HINGE_X = 16;

  private static final double HINGE_Y = 38.5;

  /** The ribs meet this far below the middle, mm. */
  private static final double ORIGIN = 47;

  /** Angle from rib to rib and the outermost angle that still has ribs, radians. */
  private static final double PITCH = Math.toRadians(9.2);

  private static final double LAST_RIB = Math.toRadians(46);

  /** Height of a rib over its middle line, as a share of the distance from the origin. */
  private static final double RIB = 0.018;

  /** Radius of the circles the dome falls off in, and of the blunted ridge at the hinge, mm. */
  private static final double ROUND = 40;

  private static final double BLUNT = 7;
  private static final double SADDLE = 3.4;

  private ShellSoap() {}

  /** The closed mesh, about 39,000 facets, centered near the origin, mm. */
  public static TriMesh mesh() {
    return TwoSided.build(new Shape(), RINGS);
  }

  static int rings() {
    return RINGS;
  }

  private static final class Shape implements TwoSided.Form {

    @Override
    public double radius(double angle) {
      double x = StrictMath.cos(angle);
      double y = StrictMath.sin(angle);
      double smooth = outline(x, y);
      return smooth + 0.45 * rib(smooth * x, smooth * y);
    }

    private static double outline(double x, double y) {
      double across = FLANK_X * Math.abs(x) + FLANK_Y * y;
      double fan = FAN;
      if (across > 0.4) {
        fan = Curve.min(fan, FLANK / across, 3);
      }
      if (y >= 0) {
        return fan;
      }
      double hinge = HINGE_Y / -y;
      if (Math.abs(x) > 0.1) {
        hinge = Curve.min(hinge, HINGE_X / Math.abs(x), 1.5);
      }
      return Curve.max(fan, hinge, 3.5);
    }

    @Override
    public double rim(double angle) {
      double r = radius(angle);
      double x = r * StrictMath.cos(angle);
      double y = r * StrictMath.sin(angle);
      return saddle(x, y) + rib(x, y);
    }

    @Override
    public double upper(double x, double y, double share) {
      double u = fall(x, y, share);
      double inside = FLANK - FLANK_X * Math.sqrt(x * x + BLUNT * BLUNT) - FLANK_Y * y;
      double full = Curve.step(-1, 26, inside);
      double ear = 5 * (1 - 0.4 * Curve.step(-6, 2, inside));
      double growth =
          0.22
              * u
              * full
              * StrictMath.cos(2 * Math.PI * Math.sqrt(x * x + (y + ORIGIN) * (y + ORIGIN)) / 11);
      return saddle(x, y) + u * (ear + 12.5 * full) + rib(x, y) + growth;
    }

    @Override
    public double lower(double x, double y, double share) {
      double u = fall(x, y, share);
      double s2 = share * share;
      return saddle(x, y) + rib(x, y) * s2 * s2 * s2 - 6.5 * u + 5.5 * u * u * u;
    }

    /**
     * 1 in the middle, 0 on the rim, like the height of a hemisphere. The middle falls off in
     * circles, so that corners of the outline draw no ridges across the dome.
     */
    private static double fall(double x, double y, double share) {
      double r = Math.sqrt(x * x + y * y);
      if (r == 0) {
        return 1;
      }
      double own = Curve.step(0.35, 1, share);
      double around = own * r / share + (1 - own) * ROUND;
      return Math.sqrt(1 - r * r / (around * around));
    }

    /** Front and hinge of the rim lie high, its sides low. */
    private static double saddle(double x, double y) {
      return SADDLE * (y * y - x * x) / (FAN * FAN);
    }

    /** Broad ribs with narrow furrows, growing from the hinge outward, mm. */
    private static double rib(double x, double y) {
      double distance = Math.sqrt(x * x + (y + ORIGIN) * (y + ORIGIN));
      double angle = StrictMath.atan2(x, y + ORIGIN);
      double phase = 2 * Math.PI * angle / PITCH;
      double wave = StrictMath.cos(phase) - 0.1 * StrictMath.cos(2 * phase);
      double fade =
          (1 - Curve.step(LAST_RIB, LAST_RIB + PITCH * 0.7, Math.abs(angle)))
              * Curve.step(8, 34, distance);
      return RIB * distance * fade * wave;
    }
  }
}
