package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.parting.BlockBox;
import org.locationtech.jts.geom.Envelope;

/**
 * Places keys on flat ground, spread wide, away from cavity, outside and channels, and one of them
 * off the pattern, so that the pieces close in one way only.
 */
final class KeyPlanner {

  /**
   * A key stands where the sheet under it tilts less than this; beyond it the socket's rim thins.
   */
  static final double MOST_TILT_DEG = 12;

  /** How far one key must be off every turned pattern, mm; far more than any clearance. */
  static final double OFF_PATTERN = 3;

  /** Least material over a socket and under a key, mm. */
  private static final double ROOF = 2;

  private final Room room;
  private final BlockBox box;
  private final Sizes sizes;

  KeyPlanner(Room room, BlockBox box, Sizes sizes) {
    this.room = room;
    this.box = box;
    this.sizes = sizes;
  }

  /** How many keys by rule: 4 up to 150 mm of block, 6 above; common practice, no source. */
  int usualCount() {
    return Math.max(box.x1() - box.x0(), box.y1() - box.y0()) > 150 ? 6 : 4;
  }

  /**
   * Places up to {@code count} keys, at least 3 or none at all; the room marks them as used. Tries
   * the usual diameter first, then smaller ones down to 5 mm.
   */
  List<Key> place(int count, KeyShape shape, double clearance) {
    for (double d = sizes.keyDiameter(); d >= 5; d -= 1) {
      List<double[]> places = flatPlaces(d / 2, clearance);
      List<double[]> picked = Spread.pick(places, count, 2 * d);
      if (picked.size() >= 3) {
        List<double[]> fixed = offPattern(picked, places, 2 * d);
        return keys(fixed, shape, d, clearance);
      }
    }
    return List.of();
  }

  private List<double[]> flatPlaces(double radius, double clearance) {
    double step = Math.max(1, Math.min(3, (box.x1() - box.x0()) / 80));
    List<double[]> flat = new ArrayList<>();
    for (double[] p : room.places(radius + clearance, sizes.keyGap(), step)) {
      if (isFlat(p[0], p[1], radius + clearance) && hasDepth(p, radius, clearance)) {
        flat.add(p);
      }
    }
    return flat;
  }

  private boolean hasDepth(double[] p, double radius, double clearance) {
    double h = room.ground().heightAt(p[0], p[1]);
    return box.z1() - h >= radius + clearance + ROOF && h - box.z0() >= ROOF;
  }

  private boolean isFlat(double x, double y, double radius) {
    Ground g = room.ground();
    double h = g.heightAt(x, y);
    double most = radius * Math.tan(Math.toRadians(MOST_TILT_DEG));
    for (int k = 0; k < 8; k++) {
      double a = Math.PI * k / 4;
      double at = g.heightAt(x + radius * Math.cos(a), y + radius * Math.sin(a));
      if (!(Math.abs(at - h) <= most)) {
        return false;
      }
    }
    return !Double.isNaN(h);
  }

  /**
   * Moves the last key until no half or quarter turn of the block brings the keys onto themselves.
   */
  private List<double[]> offPattern(List<double[]> picked, List<double[]> places, double apart) {
    if (turnedMismatch(picked) >= OFF_PATTERN) {
      return picked;
    }
    double[] old = picked.get(picked.size() - 1);
    List<double[]> rest = picked.subList(0, picked.size() - 1);
    double[] best = null;
    for (double[] p : places) {
      List<double[]> trial = new ArrayList<>(rest);
      trial.add(p);
      boolean fits = Spread.nearest(p, rest) >= apart && turnedMismatch(trial) >= OFF_PATTERN;
      if (fits && (best == null || distance(p, old) < distance(best, old) - 1e-9)) {
        best = p;
      }
    }
    List<double[]> fixed = new ArrayList<>(rest);
    fixed.add(best == null ? old : best);
    return fixed;
  }

  private static double distance(double[] a, double[] b) {
    return Math.hypot(a[0] - b[0], a[1] - b[1]);
  }

  /**
   * Over the turns of the block by 90, 180 and 270°: the least of the greatest key-to-key misfit.
   */
  double turnedMismatch(List<double[]> keys) {
    Envelope e = room.outline().getEnvelopeInternal();
    double cx = e.centre().x;
    double cy = e.centre().y;
    double least = Double.POSITIVE_INFINITY;
    for (int turn = 1; turn <= 3; turn++) {
      double misfit = 0;
      for (double[] k : keys) {
        double x = k[0] - cx;
        double y = k[1] - cy;
        for (int q = 0; q < turn; q++) {
          double t = x;
          x = -y;
          y = t;
        }
        misfit = Math.max(misfit, Spread.nearest(new double[] {x + cx, y + cy}, keys));
      }
      least = Math.min(least, misfit);
    }
    return least;
  }

  private List<Key> keys(List<double[]> places, KeyShape shape, double diameter, double clearance) {
    List<Key> keys = new ArrayList<>();
    double height = shape == KeyShape.DOME ? 0.45 * diameter : 0.5 * diameter;
    for (double[] p : places) {
      double h = room.ground().heightAt(p[0], p[1]);
      keys.add(
          new Key(
              "key-" + (keys.size() + 1),
              shape,
              new Vec3(p[0], p[1], h),
              diameter / 2,
              height,
              clearance));
      room.take(p[0], p[1], diameter / 2 + clearance);
    }
    return keys;
  }
}
