package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;

/**
 * Cross-sections of channels straight up. A bore widens upward by its taper, a gate ends in a
 * funnel; where the piece that holds them leaves along them, they narrow upward instead and have no
 * funnel.
 *
 * @param top height of the block's upper face, mm, mold frame
 * @param drawn whether one piece holds all channels and leaves along them
 */
record UprightBore(double top, Sizes sizes, boolean drawn) {

  /** How far past the outside a channel reaches, mm. */
  private static final double PAST = 2;

  /** Taper of a bore, degrees from its axis; common practice, no source. */
  private static final double TAPER_DEG = 1;

  private double radius(boolean gate) {
    return (gate ? sizes.gate() : sizes.vent()) / 2;
  }

  private double rise(Vec3 p) {
    return top - p.y();
  }

  private double taper() {
    return Math.tan(Math.toRadians(drawn ? -TAPER_DEG : TAPER_DEG));
  }

  /** Radius at the wide end of the bore over a place of the roof, funnel aside, mm. */
  private double wider(Vec3 p, boolean gate) {
    return radius(gate) + rise(p) * Math.abs(taper());
  }

  /** Radius where the bore over a place of the roof leaves the casting, mm. */
  double foot(Vec3 p, boolean gate) {
    return drawn ? wider(p, gate) : radius(gate);
  }

  /**
   * The channel over a place of the roof.
   *
   * @param deep how far below the place its tip lies, mm
   * @param begin how far below the place it has its width, mm; less than {@code deep}
   */
  Channel at(Vec3 p, String name, boolean gate, double deep, double begin) {
    double r = radius(gate);
    double rise = rise(p);
    double taper = taper();
    double wider = wider(p, gate);
    List<Channel.Station> s = new ArrayList<>();
    s.add(station(p, -deep, 0));
    s.add(station(p, -begin, foot(p, gate)));
    double mouth = drawn ? r : wider;
    if (drawn) {
      s.add(station(p, rise + PAST, r + PAST * taper));
    } else if (gate) {
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
        name,
        gate ? Channel.Kind.GATE : Channel.Kind.VENT,
        Channel.Course.UP,
        s,
        p,
        new Vec3(p.x(), top, p.z()),
        2 * r,
        2 * mouth);
  }

  private static Channel.Station station(Vec3 p, double above, double radius) {
    return new Channel.Station(new Vec3(p.x(), p.y() + above, p.z()), radius, 0);
  }
}
