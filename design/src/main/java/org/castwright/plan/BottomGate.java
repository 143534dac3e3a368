package org.castwright.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * A gate that fills from below: it joins the lowest place on the seam, runs out under the casting
 * and up beside it as a sprue to the block's top. All of it lies on the seam, so that it opens with
 * the pieces and is wiped clean.
 */
final class BottomGate {

  /** A gate narrower than this share of its bore is looked for elsewhere. */
  private static final double NARROW = 0.5;

  /** How far up the casting another place is looked for, share of its height. */
  private static final double HIGHEST = 0.3;

  /** What the whole height of the casting costs a gate, in shares of its bore. */
  private static final double HEIGHT = 0.5;

  /** Places on the seam that are tried. */
  private static final int MOST_PLACES = 100;

  /** How far across from the lowest place the seam may be, share of the casting's longest side. */
  private static final double REACH = 0.15;

  private final TriMesh casting;
  private final SeamChannels channels;
  private final Sizes sizes;

  /** Of the casting turned over, so that its lowest places are tops. */
  private final SeamPoints turned;

  BottomGate(
      TriMesh casting,
      SeamChannels channels,
      Ground ground,
      Sizes sizes,
      List<double[]> seamLoops) {
    this.casting = casting;
    this.channels = channels;
    this.sizes = sizes;
    double apart = sizes.gate() / 2 + 2;
    turned =
        new SeamPoints(
            seamLoops.stream().map(BottomGate::over).toList(),
            p -> ground.sideDistance(p.x(), -p.y()) < apart);
  }

  /** The gate, or null when there is no place at the bottom or no way to it. */
  Channel plan() {
    double size = casting.bounds().longestSide();
    double below = Math.max(0.3, 0.003 * size);
    List<RoofPeaks.Peak> lows = RoofPeaks.of(casting, 1, -1, RoofPeaks.least(casting));
    Vec3 join =
        lows.isEmpty() ? null : turned.joinFor(over(lows.get(0).point()), below, REACH * size);
    Channel lowest = join == null ? null : channels.below(over(join));
    if (lowest != null && lowest.boreMm() >= NARROW * sizes.gate()) {
      return lowest;
    }
    Channel wider = wider(lowest == null ? 0 : lowest.boreMm());
    return wider == null ? lowest : wider;
  }

  /** The best of the places further up: as wide as can be, as low as can be. */
  private Channel wider(double boreMm) {
    double floor = casting.bounds().min().y();
    double height = casting.bounds().size().y();
    List<Vec3> places = new ArrayList<>(turned.all().stream().map(BottomGate::over).toList());
    places.removeIf(p -> p.y() - floor > HIGHEST * height);
    places.sort(Comparator.comparingDouble(Vec3::y));
    int step = Math.max(1, places.size() / MOST_PLACES);
    Channel best = null;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < places.size(); i += step) {
      double up = HEIGHT * (places.get(i).y() - floor) / height;
      if (1 - up <= most) {
        break; // no wider gate further up makes up for its height
      }
      Channel c = channels.below(places.get(i));
      if (c != null && c.boreMm() > boreMm && c.boreMm() / sizes.gate() - up > most) {
        most = c.boreMm() / sizes.gate() - up;
        best = c;
      }
    }
    return best;
  }

  private static Vec3 over(Vec3 p) {
    return new Vec3(p.x(), -p.y(), p.z());
  }

  private static double[] over(double[] packed) {
    double[] out = packed.clone();
    for (int i = 1; i < out.length; i += 3) {
      out[i] = -out[i];
    }
    return out;
  }
}
