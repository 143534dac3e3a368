package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;

/** Channels of a standing mold: from a place on the seam up along it to the block's top. */
final class SeamChannels {

  /** How far past the outside a channel's tool reaches, so that it cuts clean, mm. */
  private static final double PAST = 2;

  /** Directions tried on each side of straight back for a channel's start. */
  private static final int START_TURNS = 11;

  /** How far from the join the casting may begin at the join's own height, mm. */
  private static final double START_GAP = 0.5;

  /** Radius of the thinnest bore that prints open, mm; common practice, no source. */
  private static final double LEAST_RADIUS = 0.75;

  /** Heights above and below a join at which the casting is looked for, too, mm. */
  private static final double BESIDE = 0.05;

  /** A casting thinner than this straight back from a join is looked for to the sides, mm. */
  private static final double THIN = 1;

  private final TriMesh casting;
  private final Ground ground;
  private final Room room;
  private final BlockBox box;
  private final Sizes sizes;
  private final Route apart;
  private final Route anyhow;

  SeamChannels(TriMesh casting, Room room, BlockBox box, Sizes sizes) {
    this.casting = casting;
    this.room = room;
    this.ground = room.ground();
    this.box = box;
    this.sizes = sizes;
    anyhow = new Route(ground::shadowDistance, box.y1());
    apart =
        new Route((x, y) -> Math.min(ground.shadowDistance(x, y), room.toTaken(x, y)), box.y1());
  }

  /**
   * A channel from a place on the seam, as wide as there is room for, clear of what has been placed
   * already if there is such a way; null when there is no way up that stays within the block.
   *
   * @param name for the report; a gate has a funnel
   */
  Channel from(Vec3 join, String name, boolean gate) {
    Use use = new Use(name, gate, gate);
    Channel c = from(join, use, apart);
    return c == null && !gate ? from(join, use, anyhow) : c;
  }

  /** A vent as wide as the gate and with its funnel, that feeds what shrinks; or null. */
  Channel riser(Vec3 join) {
    return from(join, new Use("riser", false, true), apart);
  }

  /**
   * What a channel is for.
   *
   * @param wide whether it has the gate's bore and its funnel
   */
  private record Use(String name, boolean gate, boolean wide) {}

  /**
   * A gate from a low place on the seam: out under the casting, then up beside it; as wide as there
   * is room for, or null when there is no such way within the block.
   */
  Channel below(Vec3 join) {
    boolean left = SprueRoom.left(casting);
    Box3 c = casting.bounds();
    double bore = sizes.gate();
    for (double r = bore / 2; r >= Math.min(bore / 2, 0.5); r *= 0.75) {
      double away = r + SprueRoom.APART;
      double y = c.min().y() - away;
      double x = left ? c.min().x() - away : c.max().x() + away;
      Route down = new Route((px, py) -> ground.shadowDistance(px, -py), -y);
      if (room.toOutside(x, y) < r + SprueRoom.WALL - 0.5
          || !down.straightUp(join.x(), -join.y(), r)) {
        continue;
      }
      List<double[]> way =
          List.of(
              new double[] {join.x(), join.y()},
              new double[] {join.x(), y},
              new double[] {x, y},
              new double[] {x, box.y1()});
      Channel gate = along(join, way, r, new Use("gate", true, true));
      if (within(gate)) {
        return gate;
      }
    }
    return null;
  }

  private Channel from(Vec3 join, Use use, Route route) {
    double bore = use.wide ? sizes.gate() : sizes.vent();
    for (double r = bore / 2; r >= Math.min(bore / 2, 0.5); r *= 0.75) {
      List<double[]> way =
          route.straightUp(join.x(), join.y(), r)
              ? List.of(new double[] {join.x(), join.y()}, new double[] {join.x(), box.y1()})
              : route.around(join.x(), join.y(), r, box.x0() + r + 2, box.x1() - r - 2);
      Channel c = way == null ? null : along(join, way, r, use);
      if (c != null && within(c)) {
        return c;
      }
    }
    return null;
  }

  /** Whether the way straight up is clear for a bore of that radius. */
  boolean straightUp(Vec3 join, double r) {
    return apart.straightUp(join.x(), join.y(), r);
  }

  /** Whether a channel leaves ground in front of it, behind it and on both sides. */
  private boolean within(Channel c) {
    // the last one lies past the outside
    for (Channel.Station s : c.stations().subList(0, c.stations().size() - 1)) {
      double half = s.rise() + s.radius() + SeamBore.LEAST_WALL - 1e-9;
      double aside = s.radius() + SeamBore.LEAST_WALL - 1e-9;
      if (s.center().z() - half < box.z0()
          || s.center().z() + half > box.z1()
          || s.center().x() - aside < box.x0()
          || s.center().x() + aside > box.x1()) {
        return false;
      }
    }
    return true;
  }

  private Channel along(Vec3 join, List<double[]> way, double widest, Use use) {
    Start start = startAt(join, way);
    double r = start == null ? widest : start.radiusFor(widest);
    List<double[]> corners = new ArrayList<>(way);
    if (start != null && start.straight) {
      corners.set(0, start.point(join, r));
    } else if (start != null) {
      corners.add(0, start.point(join, r));
    }
    double mouth = use.wide ? mouthRadius(way, r) : r;
    List<Channel.Station> stations =
        new ArrayList<>(
            new SeamBore(ground, r, mouth, join.z(), box.z0(), box.z1()).along(corners));
    Channel.Station outer = stations.get(stations.size() - 1);
    double grow = mouth > r ? PAST * SeamBore.FUNNEL_SLOPE : 0;
    Vec3 past = outer.center().plus(new Vec3(0, PAST, 0));
    stations.add(new Channel.Station(past, outer.radius() + grow, outer.rise()));
    return Channel.of(use.name, use.gate, Channel.Course.SEAM, stations, r, mouth);
  }

  /** Which way the casting lies from a join, and the stretch of it there. */
  private record Start(double ux, double uy, boolean straight, LevelSection.Stretch stretch) {

    /**
     * A bore no thicker than the wall it joins, so that it ends within the casting and its stub is
     * cut off cleanly; common practice, no source. Never thinner than a nozzle can leave open.
     */
    double radiusFor(double widest) {
      return Math.min(widest, Math.max(LEAST_RADIUS, stretch.width() / 2));
    }

    /** The channel's first point: one bore radius inside, or the middle of a thin wall. */
    double[] point(Vec3 join, double r) {
      double depth = stretch.from() + Math.min(r, stretch.width() / 2);
      return new double[] {join.x() + depth * ux, join.y() + depth * uy};
    }
  }

  /**
   * Where the casting lies at the join's own height or next to it: straight back unless it is
   * thinner than {@link #THIN} there, else round the join, as under an overhanging corner. Null
   * when no casting is near.
   */
  private Start startAt(Vec3 join, List<double[]> way) {
    double[] dir = direction(way.get(0), way.get(1));
    Start best = null;
    // a plane through a level face meets the casting on one side of it only
    for (double dz : new double[] {0, BESIDE, -BESIDE}) {
      LevelSection section = LevelSection.of(casting, join.z() + dz);
      for (int k = 0; k <= START_TURNS && (best == null || best.stretch.width() < THIN); k++) {
        for (int side = 1; side >= (k == 0 ? 1 : -1); side -= 2) {
          double a = side * k * Math.PI / (START_TURNS + 1);
          double ux = -(dir[0] * Math.cos(a) - dir[1] * Math.sin(a));
          double uy = -(dir[0] * Math.sin(a) + dir[1] * Math.cos(a));
          LevelSection.Stretch s = section.first(join.x(), join.y(), ux, uy, START_GAP);
          if (s != null && (best == null || s.width() > best.stretch.width() + 1e-9)) {
            best = new Start(ux, uy, k == 0, s);
          }
        }
      }
    }
    return best;
  }

  private static double[] direction(double[] a, double[] b) {
    double l = Math.hypot(b[0] - a[0], b[1] - a[1]);
    return new double[] {(b[0] - a[0]) / l, (b[1] - a[1]) / l};
  }

  /** The widest mouth that leaves solid ground above and below the sheet and to both sides. */
  private double mouthRadius(List<double[]> way, double r) {
    double[] end = way.get(way.size() - 1);
    double h = ground.heightAt(end[0], end[1]);
    double most = Math.min(box.z1() - h, h - box.z0()) - 3;
    most = Math.min(most, Math.min(end[0] - box.x0(), box.x1() - end[0]) - 3);
    // a funnel's rim keeps off what is there already
    most = Math.min(most, room.toTaken(end[0], end[1]) - 2);
    double straight = end[1] - way.get(way.size() - 2)[1];
    most = Math.min(most, r + 0.8 * straight * SeamBore.FUNNEL_SLOPE);
    return Math.max(r, Math.min(sizes.mouth() / 2 * r / (sizes.gate() / 2), most));
  }
}
