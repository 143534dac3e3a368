package org.castwright.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;

/**
 * Gate and vents. In a standing mold every roof maximum has a level normal, so it lies on the
 * silhouette: channels run up along the seam and open with the pieces. In a lying mold they run
 * straight up through piece 1 along its pull.
 */
final class ChannelPlanner {

  /** More vents than this are noise of the model rather than pockets; the deepest are kept. */
  private static final int MOST_VENTS = 12;

  /** Places on the seam tried for a gate when none at the top will do. */
  private static final int MOST_PLACES = 200;

  /** How far past the outside a channel's tool reaches, so that it cuts clean, mm. */
  private static final double PAST = 2;

  /** Draft of a bore along the pull, degrees; 1° to 2° is common practice, no source. */
  private static final double PULL_DRAFT_DEG = 1.5;

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

  /** How far below the roof a bore along the pull begins, so that the two surely join, mm. */
  private static final double UNDER = 0.2;

  private final TriMesh casting;
  private final Ground ground;
  private final BlockBox box;
  private final Sizes sizes;
  private final SeamPoints seam;
  private final Room room;
  private final List<Channel> channels = new ArrayList<>();
  private final List<String> warnings = new ArrayList<>();

  ChannelPlanner(TriMesh casting, Room room, BlockBox box, Sizes sizes, List<double[]> seamLoops) {
    this.casting = casting;
    this.room = room;
    this.ground = room.ground();
    this.box = box;
    this.sizes = sizes;
    double apart = sizes.gate() / 2 + 2;
    this.seam = new SeamPoints(seamLoops, p -> ground.sideDistance(p.x(), p.y()) < apart);
  }

  PourPlan plan(Pour pour, AskedPlaces asked) {
    int axis = pour == Pour.SEAM ? 1 : 2;
    double least = RoofPeaks.least(casting);
    List<RoofPeaks.Peak> peaks = RoofPeaks.of(casting, axis, 1, least);
    AskedChannels maker = asked(pour, asked);
    if (asked.gate() != null) {
      addAsked(maker.near(seen(pour, asked.gate()), true, warnings::add));
    }
    for (RoofPeaks.Peak peak : strongest(peaks)) {
      boolean gate = channels.isEmpty();
      Channel c = pour == Pour.SEAM ? alongSeam(peak, gate) : alongPull(peak, gate);
      if (c == null) {
        warnings.add(unvented(peak));
      } else if (asked.gate() == null || gate || maker.free(c)) {
        add(c);
      } else if (!reached(peak)) {
        warnings.add(unvented(peak));
      }
    }
    for (Vec3 v : asked.vents()) {
      if (!channels.isEmpty()) {
        addAsked(maker.near(seen(pour, v), false, warnings::add));
      }
    }
    if (channels.isEmpty() && pour == Pour.SEAM) {
      gateBelowTheTop();
    }
    addReliefVent(pour, peaks, maker, !asked.vents().isEmpty());
    return new PourPlan(
        pour, pour == Pour.SEAM ? Vec3.Y : Vec3.Z, List.copyOf(channels), peaks.size(), warnings);
  }

  private AskedChannels asked(Pour pour, AskedPlaces asked) {
    List<Vec3> places = new ArrayList<>(asked.vents());
    if (asked.gate() != null) {
      places.add(asked.gate());
    }
    if (pour == Pour.SEAM) {
      List<Vec3> joins = places.isEmpty() ? List.of() : seam.all();
      return new AskedChannels(joins, this::fromJoin, room);
    }
    List<Vec3> roof = new ArrayList<>(places);
    if (!places.isEmpty()) {
      roof.addAll(candidates(pour));
    }
    return new AskedChannels(
        roof.stream().map(this::onRoof).filter(Objects::nonNull).distinct().toList(),
        this::pullChannel,
        room);
  }

  /** On a lying mold a place is the one seen there from above. */
  private Vec3 seen(Pour pour, Vec3 p) {
    Vec3 roof = pour == Pour.SEAM ? null : onRoof(p);
    return roof == null ? p : roof;
  }

  private Vec3 onRoof(Vec3 p) {
    double z = ground.roofAt(p.x(), p.y());
    return Double.isNaN(z) ? null : new Vec3(p.x(), p.y(), z);
  }

  private void addAsked(Channel c) {
    if (c != null) {
      add(c);
    }
  }

  /** Whether a channel that is there starts so near to a peak that the air leaves by it. */
  private boolean reached(RoofPeaks.Peak peak) {
    return channels.stream()
        .anyMatch(c -> c.inner().minus(peak.point()).length() <= c.boreMm() + sizes.vent());
  }

  /** Where nothing at the top can be joined, as under a side piece: the highest place that can. */
  private void gateBelowTheTop() {
    List<Vec3> places = new ArrayList<>(seam.all());
    places.sort(Comparator.comparingDouble(p -> -p.y()));
    int step = Math.max(1, places.size() / MOST_PLACES);
    for (int i = 0; i < places.size() && channels.isEmpty(); i += step) {
      Channel c = fromJoin(places.get(i), true);
      if (c != null) {
        add(c);
      }
    }
  }

  private List<RoofPeaks.Peak> strongest(List<RoofPeaks.Peak> peaks) {
    if (peaks.size() <= MOST_VENTS + 1) {
      return peaks;
    }
    double[] p = peaks.stream().mapToDouble(RoofPeaks.Peak::persistence).sorted().toArray();
    double least = p[p.length - MOST_VENTS - 1];
    warnings.add(
        (peaks.size() - MOST_VENTS - 1)
            + " shallow air pockets have no vent of their own: tilt and tap the mold while filling.");
    return peaks.stream().filter(q -> q.persistence() >= least).limit(MOST_VENTS + 1).toList();
  }

  private void add(Channel c) {
    channels.add(c);
    for (Channel.Station s : c.stations()) {
      room.take(s.center().x(), s.center().y(), s.radius());
    }
  }

  private String unvented(RoofPeaks.Peak peak) {
    return String.format(
        Locale.ROOT,
        "Air can stay under the roof near (%.1f, %.1f, %.1f) in the mold frame: no vent reaches it;"
            + " tilt the mold while filling.",
        peak.point().x(),
        peak.point().y(),
        peak.point().z());
  }

  // ---- standing mold ----

  private Channel alongSeam(RoofPeaks.Peak peak, boolean gate) {
    double size = casting.bounds().longestSide();
    Vec3 join = seam.joinFor(peak.point(), Math.max(0.3, 0.003 * size), 0.15 * size);
    return join == null ? null : fromJoin(join, gate);
  }

  private Channel fromJoin(Vec3 join, boolean gate) {
    double bore = gate ? sizes.gate() : sizes.vent();
    Route route = new Route(ground, box.y1());
    for (double r = bore / 2; r >= Math.min(bore / 2, 0.5); r *= 0.75) {
      List<double[]> way = null;
      if (route.straightUp(join.x(), join.y(), r)) {
        way = List.of(new double[] {join.x(), join.y()}, new double[] {join.x(), box.y1()});
      } else {
        way = route.around(join.x(), join.y(), r, box.x0() + r + 2, box.x1() - r - 2);
      }
      if (way != null) {
        return seamChannel(join, way, r, gate);
      }
    }
    return null;
  }

  private Channel seamChannel(Vec3 join, List<double[]> way, double widest, boolean gate) {
    Start start = startAt(join, way);
    double r = start == null ? widest : start.radiusFor(widest);
    List<double[]> corners = new ArrayList<>(way);
    if (start != null && start.straight) {
      corners.set(0, start.point(join, r));
    } else if (start != null) {
      corners.add(0, start.point(join, r));
    }
    double mouth = gate ? mouthRadius(way, r) : r;
    List<Channel.Station> stations =
        new ArrayList<>(new SeamBore(ground, r, mouth, join.z()).along(corners));
    Channel.Station outer = stations.get(stations.size() - 1);
    double grow = mouth > r ? PAST * SeamBore.FUNNEL_SLOPE : 0;
    Vec3 past = outer.center().plus(new Vec3(0, PAST, 0));
    stations.add(new Channel.Station(past, outer.radius() + grow, outer.rise()));
    return channel(gate, Channel.Course.SEAM, stations, r, mouth);
  }

  /** The last station lies past the outside, the one before it on it. */
  private Channel channel(
      boolean gate, Channel.Course course, List<Channel.Station> stations, double r, double mouth) {
    return new Channel(
        gate ? "gate" : "vent-" + channels.size(),
        gate ? Channel.Kind.GATE : Channel.Kind.VENT,
        course,
        stations,
        stations.get(0).center(),
        stations.get(stations.size() - 2).center(),
        2 * r,
        2 * mouth);
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
    double straight = end[1] - way.get(way.size() - 2)[1];
    most = Math.min(most, r + 0.8 * straight * SeamBore.FUNNEL_SLOPE);
    return Math.max(r, Math.min(sizes.mouth() / 2 * r / (sizes.gate() / 2), most));
  }

  // ---- lying mold ----

  private Channel alongPull(RoofPeaks.Peak peak, boolean gate) {
    return pullChannel(middleOfRoof(peak.point()), gate);
  }

  /**
   * A bore that narrows outward, so that piece 1 slides off what has set in it: a funnel that
   * widens outward would lock the piece.
   */
  private Channel pullChannel(Vec3 p, boolean gate) {
    double r = (gate ? sizes.gate() : sizes.vent()) / 2;
    double foot = footUnder(p, r);
    double taper = Math.tan(Math.toRadians(PULL_DRAFT_DEG));
    List<Channel.Station> s =
        List.of(
            upright(p, foot, r + (box.z1() - foot) * taper),
            upright(p, box.z1(), r),
            upright(p, box.z1() + PAST, r - PAST * taper));
    return channel(gate, Channel.Course.PULL, s, r, r);
  }

  /**
   * How low a bore along the pull must begin, so that none of piece 1 is left under it: below the
   * casting's roof, and beside the casting below the sheet.
   */
  private double footUnder(Vec3 p, double r) {
    double foot = p.z();
    double wide =
        r + (p.z() - casting.bounds().min().z()) * 2 * Math.tan(Math.toRadians(PULL_DRAFT_DEG));
    for (int ring = 0; ring <= 6; ring++) {
      for (int k = 0; k < 24; k++) {
        double a = Math.PI * k / 12;
        double x = p.x() + wide * ring / 6 * Math.cos(a);
        double y = p.y() + wide * ring / 6 * Math.sin(a);
        double roof = ground.roofAt(x, y);
        double level = Double.isNaN(roof) ? ground.heightAt(x, y) : roof;
        foot = Double.isNaN(level) ? foot : Math.min(foot, level);
      }
    }
    return foot - UNDER;
  }

  private static Channel.Station upright(Vec3 p, double z, double r) {
    return new Channel.Station(new Vec3(p.x(), p.y(), z), r, 0);
  }

  /** On a flat roof the vertex nearest to the middle of the plateau, else the peak itself. */
  private Vec3 middleOfRoof(Vec3 peak) {
    double[] v = casting.xyz();
    double reach = 0.25 * casting.bounds().longestSide();
    double x = 0;
    double y = 0;
    int n = 0;
    for (int i = 0; i < v.length; i += 3) {
      if (v[i + 2] >= peak.z() - 0.3 && Math.hypot(v[i] - peak.x(), v[i + 1] - peak.y()) <= reach) {
        x += v[i];
        y += v[i + 1];
        n++;
      }
    }
    Vec3 best = peak;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < v.length; i += 3) {
      double d = Math.hypot(v[i] - x / n, v[i + 1] - y / n);
      if (v[i + 2] >= peak.z() - 0.3 && d < least) {
        least = d;
        best = new Vec3(v[i], v[i + 1], v[i + 2]);
      }
    }
    return best;
  }

  // ---- a vent beside the gate, so that air can leave while the gate is full ----

  private void addReliefVent(
      Pour pour, List<RoofPeaks.Peak> peaks, AskedChannels maker, boolean askedVents) {
    boolean others = channels.size() > 1 && !askedVents;
    if (channels.isEmpty() || others || peaks.isEmpty()) {
      return;
    }
    Channel gate = channels.get(0);
    double top = height(pour, gate.inner());
    double most =
        0.35 * (pour == Pour.SEAM ? casting.bounds().size().y() : casting.bounds().size().z());
    // a vent asked for far below fills up before the air at the top has left
    if (channels.stream().skip(1).anyMatch(c -> top - height(pour, c.inner()) < most)) {
      return;
    }
    double apart = gate.mouthMm() / 2 + sizes.vent() / 2 + 3;
    Vec3 best = null;
    for (Vec3 p : candidates(pour)) {
      double side =
          pour == Pour.SEAM
              ? Math.abs(p.x() - gate.outer().x())
              : Math.hypot(p.x() - gate.outer().x(), p.y() - gate.outer().y());
      if (side >= apart && (best == null || height(pour, p) > height(pour, best) + 1e-9)) {
        best = p;
      }
    }
    if (best != null && top - height(pour, best) < most) {
      Channel vent =
          pour == Pour.PULL
              ? pullChannel(best, false)
              : new Route(ground, box.y1()).straightUp(best.x(), best.y(), sizes.vent() / 2)
                  ? fromJoin(best, false)
                  : null;
      if (vent != null && (channels.size() == 1 || maker.free(vent))) {
        add(vent);
      }
    }
  }

  private List<Vec3> candidates(Pour pour) {
    if (pour == Pour.SEAM) {
      return seam.all();
    }
    List<Vec3> out = new ArrayList<>();
    for (int i = 0; i < casting.vertexCount(); i++) {
      out.add(casting.vertex(i));
    }
    return out;
  }

  private static double height(Pour pour, Vec3 p) {
    return pour == Pour.SEAM ? p.y() : p.z();
  }
}
