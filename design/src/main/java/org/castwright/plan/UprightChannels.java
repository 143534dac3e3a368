package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.survey.DepthImage;
import org.castwright.survey.Raster;

/**
 * Gate and vents straight up from the roof's maxima, for molds whose pieces leave along any pulls:
 * they are made part of the casting before the space round it is divided, so they come off with the
 * pieces as it does.
 */
final class UprightChannels {

  /** More vents than this are noise of the model rather than pockets; the deepest are kept. */
  private static final int MOST_VENTS = 8;

  /** How far past the outside a channel reaches, mm. */
  private static final double PAST = 2;

  /** Taper of a bore, wider above, degrees from its axis; common practice, no source. */
  private static final double TAPER_DEG = 1;

  /** Room between two channels, mm. */
  private static final double APART = 2;

  /** A roof this near to a peak's height, mm, is one level top with it. */
  private static final double LEVEL = 0.2;

  /** Keeps lines off edges, mm. */
  private static final double OFF = 1e-4;

  private static final int PIXELS = 400;
  private static final double LEAST_PIXEL = 0.1;

  private final TriMesh casting;
  private final BlockBox box;
  private final Sizes sizes;

  /** Whether the piece that holds the channels leaves along them. */
  private final boolean drawn;

  /** Whether some channel is wider than the top it stands on. */
  private boolean hangsOver;

  private final DepthImage above = new DepthImage();
  private final Frame upright = new Frame(Vec3.Z, Vec3.X, Vec3.Y);
  private final List<Channel> channels = new ArrayList<>();
  private final List<String> warnings = new ArrayList<>();

  /**
   * @param drawn whether one piece holds all channels and leaves along them: then they narrow
   *     upward, and the gate has no funnel of its own
   */
  UprightChannels(TriMesh casting, BlockBox box, Sizes sizes, boolean drawn) {
    this.drawn = drawn;
    this.casting = casting;
    this.box = box;
    this.sizes = sizes;
    above.look(casting, upright, PIXELS, LEAST_PIXEL);
  }

  /**
   * The channels.
   *
   * @param end where it is, for the plan's record: here always at the top
   */
  PourPlan plan(GateChoice end) {
    double least = RoofPeaks.least(casting);
    List<RoofPeaks.Peak> peaks = RoofPeaks.of(casting, 1, 1, least);
    double[] deep = peaks.stream().mapToDouble(p -> -p.persistence()).sorted().toArray();
    double worth = deep.length > MOST_VENTS + 1 ? -deep[MOST_VENTS] : least;
    int left = 0;
    for (RoofPeaks.Peak peak : peaks) {
      if (peak.persistence() < worth) {
        left++;
        continue;
      }
      boolean gate = channels.isEmpty();
      Vec3 p = middle(peak.point());
      double bore = gate ? sizes.gate() : sizes.vent();
      if (!open(p, bore / 2)) {
        warnings.add(
            String.format(
                Locale.ROOT,
                "Air can stay under the roof near (%.1f, %.1f, %.1f) in the mold frame, with the"
                    + " casting over it: tilt the mold while filling.",
                p.x(),
                p.y(),
                p.z()));
      } else if (apart(p, bore / 2)) {
        channels.add(channel(p, gate));
      }
    }
    if (left > 0) {
      warnings.add(
          left + " shallow air pockets have no vent of their own: tap the mold while filling.");
    }
    if (drawn && !channels.isEmpty()) {
      warnings.add(
          "The gate narrows upward, so that the piece with it lifts off: set a funnel on it to pour,"
              + " and take the funnel away before the mold is opened.");
    }
    if (channels.size() == 1) {
      warnings.add("The gate lets the air out too: pour slowly, down one side of the funnel.");
    }
    return new PourPlan(Pour.SEAM, Vec3.Y, List.copyOf(channels), peaks.size(), end, warnings);
  }

  /** Whether a piece that leaves along the channels would be caught under one. */
  boolean caught() {
    return drawn && hangsOver;
  }

  /** The place of a level top nearest its middle; a peak stays where it is. */
  private Vec3 middle(Vec3 peak) {
    Raster r = above.raster();
    Vec3 q = upright.toLocal(peak);
    int start = r.nearest(q.x(), q.y());
    List<Integer> top = new ArrayList<>(List.of(start));
    boolean[] seen = new boolean[r.nx() * r.ny()];
    seen[start] = true;
    double x = 0;
    double y = 0;
    for (int n = 0; n < top.size(); n++) {
      int c = top.get(n);
      x += r.x0() + c % r.nx() * r.pixel();
      y += r.y0() + Math.floorDiv(c, r.nx()) * r.pixel();
      for (int d : new int[] {-1, 1, -r.nx(), r.nx()}) {
        int e = c + d;
        if (e >= 0 && e < seen.length && !seen[e] && level(e, q.z())) {
          seen[e] = true;
          top.add(e);
        }
      }
    }
    double mx = x / top.size();
    double my = y / top.size();
    int best = start;
    double least = Double.POSITIVE_INFINITY;
    for (int c : top) {
      double d =
          Math.hypot(
              r.x0() + c % r.nx() * r.pixel() - mx,
              r.y0() + Math.floorDiv(c, r.nx()) * r.pixel() - my);
      if (d < least) {
        least = d;
        best = c;
      }
    }
    double u = r.x0() + best % r.nx() * r.pixel();
    double v = r.y0() + Math.floorDiv(best, r.nx()) * r.pixel();
    return level(start, q.z()) ? upright.toWorld(new Vec3(u, v, above.upper(best))) : peak;
  }

  private boolean level(int column, double height) {
    return above.hit(column) && Math.abs(above.upper(column) - height) < LEVEL;
  }

  /** Whether nothing of the casting stands over a bore, but for its own round top. */
  private boolean open(Vec3 p, double radius) {
    return over(p, radius)[1] <= p.y() + radius;
  }

  /** The lowest and the highest that the roof is over a bore, mm; infinite where there is none. */
  private double[] over(Vec3 p, double radius) {
    double pixel = above.raster().pixel();
    Vec3 q = upright.toLocal(p);
    double[] out = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (double a = -radius; a <= radius; a += pixel) {
      for (double b = -radius; b <= radius; b += pixel) {
        int c = above.raster().nearest(q.x() + a, q.y() + b);
        if (a * a + b * b <= radius * radius && c >= 0 && above.hit(c)) {
          out[0] = Math.min(out[0], above.upper(c));
          out[1] = Math.max(out[1], above.upper(c));
        }
      }
    }
    return out;
  }

  private boolean apart(Vec3 p, double radius) {
    for (Channel c : channels) {
      double d = Math.hypot(p.x() - c.inner().x(), p.z() - c.inner().z());
      if (d < radius + c.mouthMm() / 2 + APART) {
        return false;
      }
    }
    return true;
  }

  /** How far the casting reaches straight down from a point of its roof, mm. */
  private double thickness(Vec3 p) {
    double top = Double.NEGATIVE_INFINITY;
    for (int f = 0; f < casting.triangleCount(); f++) {
      double h = height(f, p.x() + OFF, p.z() + OFF);
      if (h < p.y() - OFF) {
        top = Math.max(top, h);
      }
    }
    return p.y() - top;
  }

  /** The height of a facet over a point, not a number beside it. */
  private double height(int f, double x, double z) {
    Vec3 a = casting.vertex(casting.tri()[3 * f]);
    Vec3 b = casting.vertex(casting.tri()[3 * f + 1]).minus(a);
    Vec3 c = casting.vertex(casting.tri()[3 * f + 2]).minus(a);
    double d = b.x() * c.z() - b.z() * c.x();
    double s = ((x - a.x()) * c.z() - (z - a.z()) * c.x()) / d;
    double t = (b.x() * (z - a.z()) - b.z() * (x - a.x())) / d;
    return s >= 0 && t >= 0 && s + t <= 1 ? a.y() + s * b.y() + t * c.y() : Double.NaN;
  }

  /** From a point inside the casting, widening to its bore at the roof, then up and out. */
  private Channel channel(Vec3 p, boolean gate) {
    double r = (gate ? sizes.gate() : sizes.vent()) / 2;
    double top = box.y1();
    double rise = top - p.y();
    double taper = Math.tan(Math.toRadians(drawn ? -TAPER_DEG : TAPER_DEG));
    double wider = r + rise * Math.abs(taper);
    double foot = drawn ? wider : r;
    List<Channel.Station> s = new ArrayList<>();
    double deep = Math.min(r, thickness(p) / 2);
    s.add(station(p, -deep, 0));
    // the bore has its width from where the roof has fallen to its rim
    double fall = Math.max(0, p.y() - over(p, foot)[0]);
    hangsOver |= fall > deep / 2;
    s.add(station(p, -Math.min(fall, deep / 2), foot));
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
        gate ? "gate" : "vent-" + channels.size(),
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
