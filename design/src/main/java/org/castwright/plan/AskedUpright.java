package org.castwright.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.plan.UprightBore.Use;

/**
 * Channels straight up from where the maker asks for them, in molds whose pieces leave along any
 * pulls: at the nearest place of the roof that holds the bore, keeps clear of the rest of the
 * casting and of other channels, and lets every piece leave.
 */
final class AskedUpright {

  /** Places of the roof lie so far apart, mm. */
  private static final double STEP = 1;

  /** Farther than this share of the casting's longest side is not near. */
  private static final double FARTHEST = 0.25;

  /**
   * Shares of the bore tried, the widest first; a gate narrower than half of it feeds too little.
   */
  private static final double[] SHARES = {1, 0.75, 0.5};

  /** Places at which it is looked whether pieces leave. */
  private static final int MOST_TRIED = 200;

  /** Nearer than so many mm, or this share of the way, to a place where none leaves none will. */
  private static final double SAME = 0.5;

  private static final double SAME_SHARE = 0.2;

  /** Material between a channel and the casting beside it, mm; common practice, no source. */
  private static final double WEB = 3;

  /** Tangent of the least angle between a channel and the roof that rises beside it: 35°. */
  private static final double WEDGE = 0.7;

  /** How far the roof may fall or rise across a bore, in radii of it: a slope of 45°. */
  private static final double STEEPEST = 1;

  /** Tangent of 65°: a bore that cut into a steeper wall would leave feathers beside it. */
  private static final double WALL = 2.1;

  /** How far round a bore no such wall may be, mm. */
  private static final double EDGE = 0.5;

  /** How far inside the casting a bore has its width, and the casting goes on, mm. */
  private static final double INSIDE = 0.2;

  /** Material between a channel's mouth and the block's sides, mm; common practice, no source. */
  private static final double RIM = 3;

  /** Material between two channels, mm. */
  private static final double APART = 2;

  /** Places round a foot at which the casting's thickness is looked at. */
  private static final int ROUND = 8;

  private final TriMesh casting;
  private final Roof roof;
  private final BlockBox box;
  private final Sizes sizes;
  private final boolean narrow;
  private final Releases releases;

  AskedUpright(
      TriMesh casting, Roof roof, BlockBox box, Sizes sizes, boolean narrow, Releases releases) {
    this.casting = casting;
    this.roof = roof;
    this.box = box;
    this.sizes = sizes;
    this.narrow = narrow;
    this.releases = releases;
  }

  /**
   * The channel nearest to a place asked for, or null when there is none near; a narrower one only
   * where that brings it so much nearer.
   *
   * @param asked mold frame, mm
   * @param there channels it keeps clear of
   * @param peaks tops whose vents it must leave room for
   */
  Channel near(Vec3 asked, String name, Use use, List<Channel> there, List<Vec3> peaks) {
    List<Vec3> places = places(asked);
    Channel best = null;
    double[] least = {Double.POSITIVE_INFINITY};
    for (double share : SHARES) {
      double lost = (1 - share) * 2 * bore(1).radius(use);
      UprightBore bore = bore(share);
      Channel c =
          nearest(
              places.stream().filter(p -> p.minus(asked).length() + lost < least[0]).toList(),
              asked,
              p -> fitting(p, bore, name, use, there, peaks));
      if (c != null) {
        best = c;
        least[0] = c.inner().minus(asked).length() + lost;
      }
    }
    return best;
  }

  private UprightBore bore(double share) {
    return new UprightBore(box.y1(), sizes.narrowed(share), narrow);
  }

  /** The first that fits and lets every piece leave, or null. */
  private Channel nearest(List<Vec3> places, Vec3 asked, Function<Vec3, Channel> fitting) {
    List<Vec3> barred = new ArrayList<>();
    for (Vec3 p : places) {
      double same = Math.max(SAME, SAME_SHARE * p.minus(asked).length());
      Channel c =
          barred.stream().anyMatch(b -> b.minus(p).length() < same) ? null : fitting.apply(p);
      if (c != null && releases.with(c)) {
        return c;
      }
      if (c != null) {
        barred.add(p);
      }
      if (barred.size() >= MOST_TRIED) {
        return null;
      }
    }
    return null;
  }

  /** Places of the roof near enough, the nearest first. */
  private List<Vec3> places(Vec3 asked) {
    double most = FARTHEST * casting.bounds().longestSide();
    List<Vec3> out = new ArrayList<>(roof.places(STEP));
    Vec3 over = roof.at(asked);
    if (over != null) {
      out.add(over);
    }
    out.removeIf(p -> p.minus(asked).length() > most);
    out.sort(Comparator.comparingDouble(p -> p.minus(asked).length()));
    return out;
  }

  /** The channel over a place, or null where it has no room or no hold. */
  private Channel fitting(
      Vec3 p, UprightBore bore, String name, Use use, List<Channel> there, List<Vec3> peaks) {
    double foot = bore.foot(p, use);
    double[] over = roof.over(p, foot);
    double fall = Math.max(0, p.y() - over[0]);
    boolean steep = Math.max(fall, over[1] - p.y()) > STEEPEST * foot;
    if (steep || !roof.covers(p, foot) || !roof.gentle(p, foot + EDGE, WALL)) {
      return null;
    }
    double begin = fall + INSIDE;
    double under = held(p, foot, begin);
    if (under < begin + INSIDE) {
      return null;
    }
    Channel c = bore.at(p, name, use, Math.min(begin + foot, (begin + under) / 2), begin);
    return apart(c, there) && room(c) && clear(c, over[1]) && leavesVents(c, peaks, over[1])
        ? c
        : null;
  }

  /** How far below a place the casting goes on under all of a channel's foot, mm. */
  private double held(Vec3 p, double foot, double begin) {
    double least = roof.thickness(p);
    for (int k = 0; k < ROUND && least > begin; k++) {
      double a = 2 * Math.PI * k / ROUND;
      Vec3 rim = p.plus(new Vec3(foot * StrictMath.cos(a), 0, foot * StrictMath.sin(a)));
      Vec3 q = roof.at(rim);
      least = q == null ? 0 : Math.min(least, p.y() - q.y() + roof.thickness(q));
    }
    return least;
  }

  private boolean apart(Channel c, List<Channel> there) {
    return there.stream()
        .allMatch(
            o ->
                Math.hypot(o.inner().x() - c.inner().x(), o.inner().z() - c.inner().z())
                    >= widest(o) + widest(c) + APART);
  }

  private static double widest(Channel c) {
    return c.stations().stream().mapToDouble(Channel.Station::radius).max().orElse(0);
  }

  private boolean room(Channel c) {
    double need = widest(c) + RIM;
    Vec3 p = c.inner();
    return Math.min(p.x() - box.x0(), box.x1() - p.x()) >= need
        && Math.min(p.z() - box.z0(), box.z1() - p.z()) >= need;
  }

  /**
   * Whether what rises beside the channel leaves material between, no wedge of it too thin.
   *
   * @param rim height of the roof's highest place over the bore, mm
   */
  private boolean clear(Channel c, double rim) {
    boolean[] clear = {true};
    double foot = c.stations().get(1).radius();
    roof.about(
        c.inner(),
        widest(c) + WEB,
        (off, height) -> {
          if (off > foot && height > rim) {
            double beside = off - Math.max(foot, UprightCover.radiusAt(c.stations(), height));
            clear[0] &= beside >= Math.min(WEB, WEDGE * (height - rim));
          }
        });
    return clear[0];
  }

  /** Whether every top near the channel is open into it or can still have its own vent. */
  private boolean leavesVents(Channel c, List<Vec3> peaks, double rim) {
    double least = RoofPeaks.least(casting);
    return peaks.stream()
        .allMatch(
            q -> {
              double off = Math.hypot(q.x() - c.inner().x(), q.z() - c.inner().z());
              return off >= widest(c) + sizes.vent() / 2 + APART || q.y() < rim + least;
            });
  }
}
