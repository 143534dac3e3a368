package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;

/**
 * Cross-sections of channels straight up. A bore widens upward by its taper, and a gate ends in a
 * funnel; or bores narrow upward, so that a piece that leaves along them comes off, and a gate has
 * no funnel.
 *
 * @param top height of the block's upper face, mm, mold frame
 * @param narrow whether they narrow upward
 */
record UprightBore(double top, Sizes sizes, boolean narrow) {

  /** How far past the outside a channel reaches, mm. */
  private static final double PAST = 2;

  /** Taper of a bore, degrees from its axis; common practice, no source. */
  private static final double TAPER_DEG = 1;

  /** What a channel is for. */
  enum Use {
    GATE,
    VENT;

    private Channel.Kind kind() {
      return this == GATE ? Channel.Kind.GATE : Channel.Kind.VENT;
    }
  }

  /** Radius at the narrow end, mm. */
  double radius(Use use) {
    return (use == Use.VENT ? sizes.vent() : sizes.gate()) / 2;
  }

  private double rise(Vec3 p) {
    return top - p.y();
  }

  private double taper() {
    return Math.tan(Math.toRadians(narrow ? -TAPER_DEG : TAPER_DEG));
  }

  /** Radius at the wide end of the bore over a place of the roof, funnel aside, mm. */
  private double wider(Vec3 p, Use use) {
    return radius(use) + rise(p) * Math.abs(taper());
  }

  /** Radius where the bore over a place of the roof leaves the casting, mm. */
  double foot(Vec3 p, Use use) {
    return narrow ? wider(p, use) : radius(use);
  }

  /**
   * The channel over a place of the roof.
   *
   * @param deep how far below the place its tip lies, mm
   * @param begin how far below the place it has its width, mm; less than {@code deep}
   */
  Channel at(Vec3 p, String name, Use use, double deep, double begin) {
    double r = radius(use);
    double rise = rise(p);
    double taper = taper();
    double wider = wider(p, use);
    List<Channel.Station> s = new ArrayList<>();
    s.add(station(p, -deep, 0));
    s.add(station(p, -begin, foot(p, use)));
    double mouth = narrow ? r : wider;
    if (narrow) {
      s.add(station(p, rise + PAST, r + PAST * taper));
    } else if (use != Use.VENT) {
      double funnel = sizes.funnelHeight(sizes.mouth());
      mouth = Math.max(wider, sizes.mouth() / 2);
      double neck = Math.max(0.5, rise - funnel);
      s.add(station(p, neck, r + neck * taper));
      s.add(station(p, rise, mouth));
      s.add(station(p, rise + PAST, mouth + PAST * mouth / funnel / 2));
    } else {
      s.add(station(p, rise + PAST, wider + PAST * taper));
    }
    s.add(station(p, rise + PAST, 0));
    return new Channel(
        name, use.kind(), Channel.Course.UP, s, p, new Vec3(p.x(), top, p.z()), 2 * r, 2 * mouth);
  }

  private static Channel.Station station(Vec3 p, double above, double radius) {
    return new Channel.Station(new Vec3(p.x(), p.y() + above, p.z()), radius, 0);
  }
}
