package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.plan.UprightBore.Use;

/**
 * Gate and vents straight up from the roof's maxima, for molds whose pieces leave along any pulls:
 * they are made part of the casting before the space round it is divided, so they come off with the
 * pieces as it does.
 */
final class UprightChannels {

  /** More vents than this are noise of the model rather than pockets; the deepest are kept. */
  private static final int MOST_VENTS = 8;

  /** Room between two channels, mm. */
  private static final double APART = 2;

  private final TriMesh casting;
  private final BlockBox box;
  private final Sizes sizes;
  private final Roof roof;
  private final UprightBore bore;

  /** Whether they narrow upward. */
  private final boolean narrow;

  /** Whether some channel is wider than the top it stands on. */
  private boolean hangsOver;

  /** Vents that were asked for, and what tells whether they let pieces leave. */
  private List<Vec3> vents = List.of();

  private Releases releases;

  private final List<Channel> channels = new ArrayList<>();
  private final List<String> warnings = new ArrayList<>();

  /**
   * @param narrow whether they narrow upward, as where one piece holds them all and leaves along
   *     them; then the gate has no funnel of its own
   */
  UprightChannels(TriMesh casting, BlockBox box, Sizes sizes, boolean narrow) {
    this.narrow = narrow;
    this.casting = casting;
    this.box = box;
    this.sizes = sizes;
    roof = new Roof(casting);
    bore = new UprightBore(box.y1(), sizes, narrow);
  }

  /**
   * Makes the gate that is asked for, and vents as well when the channels are planned.
   *
   * @param asked mold frame
   * @param lets whether pieces leave; takes what is placed
   * @return how far off the gate joins, mm; 0 when none is asked for, infinite when it cannot be
   */
  double ask(AskedPlaces asked, Releases lets) {
    releases = lets;
    vents = asked.vents();
    if (asked.gate() == null) {
      return 0;
    }
    Channel gate = maker().near(asked.gate(), name(Use.GATE), Use.GATE, channels, tops());
    if (gate == null) {
      return Double.POSITIVE_INFINITY;
    }
    put(gate, asked.gate());
    return gate.inner().minus(asked.gate()).length();
  }

  private List<Vec3> tops() {
    return strongest(RoofPeaks.of(casting, 1, 1, RoofPeaks.least(casting))).stream()
        .map(p -> roof.middle(p.point()))
        .toList();
  }

  private AskedUpright maker() {
    return new AskedUpright(casting, roof, box, sizes, narrow, releases);
  }

  private void put(Channel c, Vec3 asked) {
    channels.add(c);
    releases.take(c);
    AskedChannels.tell(c.name(), asked, c.inner().minus(asked).length(), warnings::add);
    double usual = c.kind() == Channel.Kind.GATE ? sizes.gate() : sizes.vent();
    if (c.boreMm() < usual) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "The bore of the %s is %.1f mm, not %.1f mm: where it was asked for there is no more"
                  + " room.",
              c.name(),
              c.boreMm(),
              usual));
    }
  }

  /**
   * The channels: first what was asked for, then a way out over every top.
   *
   * @param end where it is, for the plan's record: here always at the top
   */
  PourPlan plan(GateChoice end) {
    List<RoofPeaks.Peak> all = RoofPeaks.of(casting, 1, 1, RoofPeaks.least(casting));
    List<RoofPeaks.Peak> peaks = strongest(all);
    int left = all.size() - peaks.size();
    int asked = channels.size();
    for (RoofPeaks.Peak peak : peaks) {
      Use use = channels.isEmpty() ? Use.GATE : Use.VENT;
      Vec3 p = roof.middle(peak.point());
      double radius = bore.radius(use);
      if (!open(p, radius)) {
        warnings.add(
            String.format(
                Locale.ROOT,
                "Air can stay under the roof near (%.1f, %.1f, %.1f) in the mold frame, with the"
                    + " casting over it: tilt the mold while filling.",
                p.x(),
                p.y(),
                p.z()));
      } else if (apart(p, radius)) {
        channels.add(channel(p, use));
      }
    }
    if (!vents.isEmpty()) {
      channels.subList(asked, channels.size()).forEach(releases::take);
      vents.forEach(this::vent);
    }
    if (left > 0) {
      warnings.add(
          left + " shallow air pockets have no vent of their own: tap the mold while filling.");
    }
    if (narrow && !channels.isEmpty()) {
      warnings.add(
          "The gate narrows upward, so that the piece with it lifts off: set a funnel on it to pour,"
              + " and take the funnel away before the mold is opened.");
    }
    if (channels.size() == 1) {
      warnings.add("The gate lets the air out too: pour slowly, down one side of the funnel.");
    }
    return new PourPlan(Pour.SEAM, Vec3.Y, List.copyOf(channels), all.size(), end, warnings);
  }

  private void vent(Vec3 asked) {
    Channel c = maker().near(asked, name(Use.VENT), Use.VENT, channels, List.of());
    if (c == null) {
      warnings.add(AskedChannels.told("vent", asked, AskedChannels.NO_WAY));
    } else {
      put(c, asked);
    }
  }

  private List<RoofPeaks.Peak> strongest(List<RoofPeaks.Peak> peaks) {
    double[] deep = peaks.stream().mapToDouble(p -> -p.persistence()).sorted().toArray();
    if (deep.length <= MOST_VENTS + 1) {
      return peaks;
    }
    double worth = -deep[MOST_VENTS];
    return peaks.stream().filter(p -> p.persistence() >= worth).toList();
  }

  /** Whether a piece that leaves along the channels would be caught under one. */
  boolean caught() {
    return narrow && hangsOver;
  }

  /** Whether nothing of the casting stands over a bore, but for its own round top. */
  private boolean open(Vec3 p, double radius) {
    return roof.over(p, radius)[1] <= p.y() + radius;
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

  private Channel channel(Vec3 p, Use use) {
    double deep = Math.min(bore.radius(use), roof.thickness(p) / 2);
    // the bore has its width from where the roof has fallen to its rim
    double fall = Math.max(0, p.y() - roof.over(p, bore.foot(p, use))[0]);
    hangsOver |= fall > deep / 2;
    return bore.at(p, name(use), use, deep, Math.min(fall, deep / 2));
  }

  private String name(Use use) {
    return use == Use.GATE ? "gate" : "vent-" + channels.size();
  }
}
