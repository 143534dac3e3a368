package org.castwright.plan;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;

/** Channels of a lying mold: straight up through piece 1 along its pull. */
final class PullChannels {

  /** How far past the outside a channel's tool reaches, so that it cuts clean, mm. */
  private static final double PAST = 2;

  /** Draft of a bore along the pull, degrees; 1° to 2° is common practice, no source. */
  private static final double PULL_DRAFT_DEG = 1.5;

  /** How far below the roof a bore along the pull begins, so that the two surely join, mm. */
  private static final double UNDER = 0.2;

  private final TriMesh casting;
  private final Ground ground;
  private final BlockBox box;
  private final Sizes sizes;

  PullChannels(TriMesh casting, Ground ground, BlockBox box, Sizes sizes) {
    this.casting = casting;
    this.ground = ground;
    this.box = box;
    this.sizes = sizes;
  }

  /** A channel over a peak of the roof, in the middle of its plateau. */
  Channel over(Vec3 peak, String name, boolean gate) {
    return at(middleOfRoof(peak), name, gate);
  }

  /**
   * A bore that narrows outward, so that piece 1 slides off what has set in it: a funnel that
   * widens outward would lock the piece.
   */
  Channel at(Vec3 p, String name, boolean gate) {
    double r = (gate ? sizes.gate() : sizes.vent()) / 2;
    double foot = footUnder(p, r);
    double taper = Math.tan(Math.toRadians(PULL_DRAFT_DEG));
    List<Channel.Station> s =
        List.of(
            upright(p, foot, r + (box.z1() - foot) * taper),
            upright(p, box.z1(), r),
            upright(p, box.z1() + PAST, r - PAST * taper));
    return Channel.of(name, gate, Channel.Course.PULL, s, r, r);
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
}
