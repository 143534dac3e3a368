package org.castwright.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.castwright.geom.Vec3;

/**
 * Makes the gate and vents that were asked for at the nearest places that can be joined, apart from
 * what is there already.
 */
final class AskedChannels {

  /** Places tried for each, the nearest first. */
  private static final int MOST_TRIED = 60;

  /** Solid ground between two channels, mm; common practice, no source. */
  private static final double APART = 1.2;

  /** A channel this far from where it was asked for is said to be, mm. */
  private static final double FAR = 3;

  /** What is told of a channel that cannot be. */
  static final String NO_WAY = "cannot be made: no way out from near there";

  private final List<Vec3> joins;
  private final Make make;
  private final Room room;

  /** Makes a channel that joins at a place, or null. */
  @FunctionalInterface
  interface Make {
    Channel at(Vec3 join, boolean gate);
  }

  /**
   * @param joins where a channel may join
   */
  AskedChannels(List<Vec3> joins, Make make, Room room) {
    this.joins = joins;
    this.make = make;
    this.room = room;
  }

  /** The channel nearest to a place asked for, or null; what differs is told. */
  Channel near(Vec3 asked, boolean gate, Consumer<String> words) {
    List<Vec3> places = new ArrayList<>(joins);
    places.sort(Comparator.comparingDouble(p -> p.minus(asked).length()));
    int step = 1;
    for (int i = 0, tried = 0; i < places.size() && tried < MOST_TRIED; i += step, tried++) {
      // near by every place counts, farther off every few
      step = 1 + tried / 8;
      Channel c = make.at(places.get(i), gate);
      if (c != null && free(c)) {
        tell(c.name(), asked, places.get(i).minus(asked).length(), words);
        return c;
      }
    }
    words.accept(told(gate ? "gate" : "vent", asked, NO_WAY));
    return null;
  }

  /** Whether a channel keeps clear of those there are, and of where side pieces leave. */
  boolean free(Channel c) {
    return c.stations().stream()
        .allMatch(
            s -> {
              double x = s.center().x();
              double y = s.center().y();
              double clear = Math.min(room.toTaken(x, y), room.ground().sideDistance(x, y));
              return clear >= s.radius() + APART;
            });
  }

  /** Says how far from where it was asked for a channel joins, if that is far. */
  static void tell(String name, Vec3 asked, double offMm, Consumer<String> words) {
    if (offMm > FAR) {
      words.accept(told(name, asked, String.format(Locale.ROOT, "joins %.1f mm off", offMm)));
    }
  }

  /** A sentence on a channel asked for. */
  static String told(String what, Vec3 at, String how) {
    return String.format(
        Locale.ROOT,
        "The %s asked for at (%.1f, %.1f, %.1f) in the mold frame %s.",
        what,
        at.x(),
        at.y(),
        at.z(),
        how);
  }
}
