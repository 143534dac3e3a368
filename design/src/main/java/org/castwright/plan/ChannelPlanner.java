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
 * straight up through piece 1 along its pull. The gate takes the highest place; where the casting
 * is too thin there for its bore, a thicker one below, and the highest place gets a vent.
 */
final class ChannelPlanner {

  /** More vents than this are noise of the model rather than pockets; the deepest are kept. */
  private static final int MOST_VENTS = 12;

  /** Places on the seam tried for a gate or a vent when the nearest will not do. */
  private static final int MOST_PLACES = 200;

  /** A gate at the top worth less than this share of a good one is looked for elsewhere. */
  private static final double NARROW = 0.5;

  /** A gate may reach above and below its axis so much further than a round bore, in bores. */
  private static final double SLOT = 0.5;

  /** What the whole height of the casting costs a gate, in shares of its bore. */
  private static final double DEPTH = 0.5;

  /** No gate lies deeper than this share of the casting's height: its funnel must feed all. */
  private static final double DEEPEST = 0.6;

  /** How far across from its peak a vent may join, share of the casting's longest side. */
  private static final double REACH = 0.15;

  private static final String NO_WAY =
      "no way along the seam leads from a low place out under the casting and up beside it";

  private final TriMesh casting;
  private final Ground ground;
  private final Sizes sizes;
  private final SeamPoints seam;
  private final SeamChannels alongSeam;
  private final PullChannels alongPull;
  private final BottomGate below;
  private final Room room;
  private final List<Channel> channels = new ArrayList<>();
  private final List<String> warnings = new ArrayList<>();

  ChannelPlanner(TriMesh casting, Room room, BlockBox box, Sizes sizes, List<double[]> seamLoops) {
    this.casting = casting;
    this.room = room;
    this.ground = room.ground();
    this.sizes = sizes;
    double apart = sizes.gate() / 2 + 2;
    this.seam = new SeamPoints(seamLoops, p -> ground.sideDistance(p.x(), p.y()) < apart);
    this.alongSeam = new SeamChannels(casting, room, box, sizes);
    this.below = new BottomGate(casting, alongSeam, ground, sizes, seamLoops);
    this.alongPull = new PullChannels(casting, ground, box, sizes);
  }

  /**
   * The channels.
   *
   * @param end where the gate is wanted; at the bottom only in a standing mold and where no place
   *     is asked for
   */
  PourPlan plan(Pour pour, AskedPlaces asked, GateChoice end) {
    int axis = pour == Pour.SEAM ? 1 : 2;
    double least = RoofPeaks.least(casting);
    List<RoofPeaks.Peak> peaks = RoofPeaks.of(casting, axis, 1, least);
    AskedChannels maker = asked(pour, asked);
    boolean asks = asked.gate() != null;
    if (asks) {
      addAsked(maker.near(seen(pour, asked.gate()), true, warnings::add));
    }
    Channel low = end.bottom() ? below.plan() : null;
    if (low != null) {
      add(low);
      overRising(strongest(peaks));
    } else if (pour == Pour.SEAM && !asks && !sidePieces()) {
      standing(strongest(peaks));
    } else {
      overPeaks(pour, strongest(peaks), asks ? maker : null);
    }
    for (Vec3 v : asked.vents()) {
      if (!channels.isEmpty()) {
        addAsked(maker.near(seen(pour, v), false, warnings::add));
      }
    }
    if (channels.isEmpty() && pour == Pour.SEAM) {
      highestPlace();
    }
    if (low == null) {
      addReliefVent(pour, peaks, maker, !asked.vents().isEmpty());
    }
    return new PourPlan(
        pour,
        pour == Pour.SEAM ? Vec3.Y : Vec3.Z,
        List.copyOf(channels),
        peaks.size(),
        end.bottom() && low == null ? end.fallenBack(NO_WAY) : end,
        warnings);
  }

  private boolean sidePieces() {
    return ground.sideDistance(0, 0) < Double.POSITIVE_INFINITY;
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
        (p, gate) -> alongPull.at(p, name(gate), gate),
        room);
  }

  private Channel fromJoin(Vec3 join, boolean gate) {
    return alongSeam.from(join, name(gate), gate);
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

  /**
   * A channel over each peak, the first of all the gate, as in a lying mold, beside side pieces, or
   * round a gate that the maker has placed.
   *
   * @param maker keeps them off what the maker has placed; null when nothing is
   */
  private void overPeaks(Pour pour, List<RoofPeaks.Peak> peaks, AskedChannels maker) {
    for (RoofPeaks.Peak peak : peaks) {
      boolean gate = channels.isEmpty();
      Channel c =
          pour == Pour.SEAM ? atPeak(peak, gate) : alongPull.over(peak.point(), name(gate), gate);
      if (c == null) {
        warnings.add(unvented(peak));
      } else if (maker == null || gate || maker.free(c)) {
        add(c);
      } else if (!reached(peak)) {
        warnings.add(unvented(peak));
      }
    }
  }

  /** Over a level that rises from below: a riser at the highest place, vents at the others. */
  private void overRising(List<RoofPeaks.Peak> peaks) {
    double size = casting.bounds().longestSide();
    for (RoofPeaks.Peak peak : peaks) {
      Channel c = null;
      if (channels.size() == 1) {
        Vec3 join = seam.joinFor(peak.point(), Math.max(0.3, 0.003 * size), REACH * size);
        c = join == null ? null : alongSeam.riser(join);
      }
      c = c == null ? atPeak(peak, false) : c;
      if (c == null) {
        warnings.add(unvented(peak));
      } else {
        add(c);
      }
    }
  }

  private void standing(List<RoofPeaks.Peak> peaks) {
    if (peaks.isEmpty()) {
      return;
    }
    Channel top = atPeak(peaks.get(0), true);
    boolean wide = top != null && worth(top) >= NARROW;
    Channel lower = wide ? null : gateBelowTheTop(top == null ? 0 : worth(top), peaks);
    boolean atTop = lower == null && top != null;
    if (atTop) {
      add(top);
    } else if (lower != null) {
      add(lower);
    }
    for (RoofPeaks.Peak peak : peaks.subList(atTop ? 1 : 0, peaks.size())) {
      Channel vent = atPeak(peak, false);
      if (vent == null) {
        warnings.add(unvented(peak));
      } else {
        add(vent);
      }
    }
  }

  /** Where nothing at the top can be joined, as under a side piece: the highest place that can. */
  private void highestPlace() {
    List<Vec3> places = new ArrayList<>(seam.all());
    places.sort(Comparator.comparingDouble(p -> -p.y()));
    int step = Math.max(1, places.size() / MOST_PLACES);
    for (int i = 0; i < places.size() && channels.isEmpty(); i += step) {
      addAsked(fromJoin(places.get(i), true));
    }
  }

  /**
   * The best place for a gate elsewhere on the seam: as wide as can be, as high as can be.
   *
   * @param least that it must be worth more than
   * @param peaks whose vents it must leave room for
   */
  private Channel gateBelowTheTop(double least, List<RoofPeaks.Peak> peaks) {
    double top = casting.bounds().max().y();
    double height = casting.bounds().size().y();
    List<Vec3> places = new ArrayList<>(seam.all());
    double apart = (sizes.mouth() + sizes.vent()) / 2 + 2;
    places.removeIf(
        p ->
            top - p.y() > DEEPEST * height
                || peaks.stream().anyMatch(q -> Math.abs(q.point().x() - p.x()) < apart));
    places.sort(Comparator.comparingDouble(p -> -p.y()));
    int step = Math.max(1, places.size() / MOST_PLACES);
    Channel best = null;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < places.size(); i += step) {
      double deep = DEPTH * (top - places.get(i).y()) / height;
      if (1 - deep <= most) {
        break; // no wider gate further down makes up for its depth
      }
      Channel c = alongSeam.from(places.get(i), name(true), true);
      if (c != null && worth(c) > least && worth(c) - deep > most) {
        most = worth(c) - deep;
        best = c;
      }
    }
    return best;
  }

  /**
   * What a gate is worth: its bore as a share of the usual one, less where the seam is so steep
   * beside it that it becomes a tall slot.
   */
  private double worth(Channel c) {
    double rise = 0;
    for (Channel.Station s : c.stations()) {
      rise = Math.max(rise, s.rise());
    }
    return c.boreMm() / sizes.gate() / (1 + Math.max(0, rise / c.boreMm() - SLOT));
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

  private String name(boolean gate) {
    return gate ? "gate" : "vent-" + (1 + channels.stream().filter(this::vent).count());
  }

  private boolean vent(Channel c) {
    return c.kind() == Channel.Kind.VENT;
  }

  private void add(Channel c) {
    channels.add(c);
    take(c);
  }

  private void take(Channel c) {
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

  /** A channel at a peak, from the middle of its stretch of seam or from the next best place. */
  private Channel atPeak(RoofPeaks.Peak peak, boolean gate) {
    double size = casting.bounds().longestSide();
    double below = Math.max(0.3, 0.003 * size);
    Vec3 join = seam.joinFor(peak.point(), below, REACH * size);
    Channel c = join == null ? null : alongSeam.from(join, name(gate), gate);
    if (c != null || gate || sidePieces()) {
      return c;
    }
    // further down its own hump: less air stays than without a vent
    double floor = peak.point().y() - Math.min(peak.persistence(), REACH * size);
    List<Vec3> places = new ArrayList<>(seam.all());
    places.removeIf(p -> p.y() < floor || Math.abs(p.x() - peak.point().x()) > REACH * size);
    places.sort(Comparator.comparingDouble(p -> -p.y()));
    int step = Math.max(1, places.size() / MOST_PLACES);
    for (int i = 0; i < places.size() && c == null; i += step) {
      c = alongSeam.from(places.get(i), name(false), false);
    }
    return c;
  }

  /** A vent beside a lone gate, so that air can leave while the gate is full. */
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
              ? alongPull.at(best, name(false), false)
              : alongSeam.straightUp(best, sizes.vent() / 2) ? fromJoin(best, false) : null;
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
