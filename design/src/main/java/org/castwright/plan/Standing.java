package org.castwright.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Which way up a mold stands whose pieces leave along any pulls: so that channels straight up come
 * off on all sides with some piece, then with few pockets of air, then low.
 */
final class Standing {

  /** Sides of a channel that are looked at. */
  private static final int SIDES = 72;

  /** Every side of a channel should have so much draft in some pull (sine): 3°. */
  private static final double DRAFT = 0.05;

  /** Worth of a channel that comes off, in pockets of air. */
  private static final double STUCK = 8;

  /** Cost of seams along channels, where more than two pieces part them. */
  private static final double PARTED = 3;

  /** A side that leans under by more (sine) locks the channel in. */
  private static final double CAUGHT = 0.002;

  /** Worth of a way up in which channels are not locked in, in pockets: more than any number. */
  private static final double LOCKED = 1000;

  /** Pulls closer to one line than this (sine) span no plane. */
  private static final double ONE_LINE = 0.2;

  private static final double LEVEL = 0.999;

  private Standing() {}

  /**
   * A way up.
   *
   * @param direction a unit vector
   * @param pull the number of the pull that goes straight up, so that its piece alone holds gate
   *     and vents; -1 where pieces part them
   * @param score in pockets of air; the lower, the better
   */
  record Up(Vec3 direction, int pull, double score) {

    /** Whether channels come off at all. */
    boolean releases() {
      return score < LOCKED;
    }
  }

  /**
   * Ways up, the best first; the last has no pull that goes straight up.
   *
   * @param scaled model, scaled
   * @param pulls unit vectors in its frame
   */
  static List<Up> ways(TriMesh scaled, List<Vec3> pulls) {
    List<Up> ways = all(scaled, pulls, List.of());
    int last = 0;
    while (ways.get(last).pull >= 0) {
      last++;
    }
    return List.copyOf(ways.subList(0, last + 1));
  }

  /**
   * All ways up, the best first.
   *
   * @param scaled model, scaled
   * @param pulls unit vectors in its frame
   * @param more further directions up
   */
  static List<Up> all(TriMesh scaled, List<Vec3> pulls, List<Vec3> more) {
    List<Up> ways = new ArrayList<>();
    List<Vec3> parted = candidates(pulls);
    parted.addAll(more);
    for (Vec3 up : parted) {
      ways.add(new Up(up, -1, score(scaled, pulls, up, -1)));
    }
    for (int i = 0; i < pulls.size() && pulls.size() > 2; i++) {
      ways.add(new Up(pulls.get(i), i, score(scaled, pulls, pulls.get(i), i)));
    }
    ways.sort(Comparator.comparingDouble(Up::score));
    return ways;
  }

  private static double score(TriMesh scaled, List<Vec3> pulls, Vec3 up, int pull) {
    TriMesh turned = scaled.toLocal(Frame.along(up));
    List<RoofPeaks.Peak> peaks = RoofPeaks.of(turned, 2, 1, RoofPeaks.least(scaled));
    Vec3 size = turned.bounds().size();
    double score = peaks.size() + 0.5 * size.z() / (size.x() + size.y() + size.z());
    if (pull >= 0) {
      return score;
    }
    double draft = leastDraft(up, pulls);
    double stuck = Math.max(0, DRAFT - draft) / DRAFT;
    return score
        + (pulls.size() > 2 ? PARTED : 0)
        + STUCK * Math.min(1, stuck)
        + (draft < -CAUGHT ? LOCKED : 0);
  }

  /**
   * Up and down along the lines square to two pulls and halfway between them, where the two part a
   * bore; the axes when all pulls lie in one line.
   */
  private static List<Vec3> candidates(List<Vec3> pulls) {
    List<Vec3> out = new ArrayList<>();
    for (int i = 0; i < pulls.size(); i++) {
      for (int j = i + 1; j < pulls.size(); j++) {
        Vec3 n = pulls.get(i).cross(pulls.get(j));
        if (n.length() > ONE_LINE) {
          put(out, n.unit());
          put(out, pulls.get(i).plus(pulls.get(j)).unit());
        }
      }
    }
    if (out.isEmpty()) {
      Frame f = Frame.along(pulls.get(0));
      put(out, f.u());
      put(out, f.v());
    }
    return out;
  }

  private static void put(List<Vec3> out, Vec3 up) {
    if (out.stream().noneMatch(o -> Math.abs(o.dot(up)) > LEVEL)) {
      out.add(up);
      out.add(up.negate());
    }
  }

  /** The least, over the sides of an upright bore, of the sine of its draft in the best pull. */
  static double leastDraft(Vec3 up, List<Vec3> pulls) {
    Frame f = Frame.along(up);
    double least = 1;
    for (int k = 0; k < SIDES; k++) {
      double a = 2 * Math.PI * k / SIDES;
      Vec3 n = f.u().times(StrictMath.cos(a)).plus(f.v().times(StrictMath.sin(a)));
      least = Math.min(least, pulls.stream().mapToDouble(n::dot).max().orElse(-1));
    }
    return least;
  }
}
