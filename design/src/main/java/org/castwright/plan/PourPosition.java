package org.castwright.plan;

import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Which way up a standing mold is poured: turned about its pull so that the fewest pockets of air
 * need a vent, rather where the model stands on them than where they show, in a low and small
 * block. The brute force of Bose and Toussaint (CAD 27(6), 1995) over the one freedom that the pull
 * leaves.
 */
final class PourPosition {

  /** Directions between right angles that are tried, degrees apart. */
  private static final int TILT = 10;

  /** Larger models are turned by right angles only: each try sweeps all their vertices. */
  private static final int MOST_VERTICES = 120_000;

  /** What a block twice as large costs, in vents: a tilt must save some. */
  private static final double GROWTH = 3;

  /** What height costs, in vents, where the block is all height. */
  private static final double HEIGHT = 0.5;

  /** What it costs that all vents show, in vents. */
  private static final double SHOWN = 0.4;

  /** Places this low on the model, as a share of its height, are what it stands on. */
  private static final double FOOT = 0.03;

  /** What it costs that a gate at the bottom joins where it shows, in vents. */
  private static final double GATE_SHOWN = 1;

  private final TriMesh local;
  private final double[] modelHeight;
  private final double footMm;
  private final double least;
  private final boolean fromBelow;

  private PourPosition(TriMesh scaled, Frame frame, boolean fromBelow) {
    this.fromBelow = fromBelow;
    local = scaled.toLocal(frame);
    least = RoofPeaks.least(local);
    modelHeight = new double[scaled.vertexCount()];
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int v = 0; v < modelHeight.length; v++) {
      modelHeight[v] = scaled.xyz()[3 * v + 2];
      low = Math.min(low, modelHeight[v]);
      high = Math.max(high, modelHeight[v]);
    }
    footMm = low + FOOT * (high - low);
  }

  /**
   * The frame turned about its pull.
   *
   * @param freely by any angle and with a foot that may come up; else by right angles only, as
   *     where a side piece may take the foot
   * @param fromBelow whether the gate joins at the bottom, which then had better be the foot
   */
  static Frame of(TriMesh scaled, Frame frame, boolean freely, boolean fromBelow) {
    PourPosition p = new PourPosition(scaled, frame, fromBelow);
    double flat = p.turned(0).size().x() * p.turned(0).size().y();
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int pass = 0; pass < 2; pass++) {
      int step = pass == 0 ? 90 : TILT;
      if (pass > 0 && (!freely || scaled.vertexCount() > MOST_VERTICES)) {
        break;
      }
      for (int angle = 0; angle < 360; angle += step) {
        if (pass > 0 && angle % 90 == 0) {
          continue;
        }
        double cost = p.cost(angle, flat, least, freely);
        if (cost < least - 1e-6) {
          least = cost;
          best = angle;
        }
      }
    }
    return best % 90 == 0 ? frame.quarterTurned(best / 90) : frame.turned(best);
  }

  /** What it costs to stand that way, in vents; infinite when surely above {@code most}. */
  private double cost(int angle, double flat, double most, boolean freely) {
    Box3 box = turned(angle);
    Vec3 size = box.size();
    double cost =
        HEIGHT * size.y() / (size.x() + size.y()) + GROWTH * (size.x() * size.y() / flat - 1);
    if (1 + cost > most) {
      return Double.POSITIVE_INFINITY; // every body has a highest place
    }
    List<RoofPeaks.Peak> peaks = RoofPeaks.of(mesh(angle), 1, 1, least);
    long shown = peaks.stream().filter(q -> modelHeight[q.vertex()] > footMm).count();
    double seen = freely ? SHOWN * shown / Math.max(1, peaks.size()) : 0;
    return cost + peaks.size() + seen + (fromBelow ? gateShown(angle) : 0);
  }

  private double gateShown(int angle) {
    TriMesh mesh = mesh(angle);
    int lowest = 0;
    for (int v = 1; v < modelHeight.length; v++) {
      lowest = mesh.vertex(v).y() < mesh.vertex(lowest).y() ? v : lowest;
    }
    return modelHeight[lowest] > footMm ? GATE_SHOWN : 0;
  }

  private Box3 turned(int angle) {
    return mesh(angle).bounds();
  }

  private TriMesh mesh(int angle) {
    return local.toLocal(
        angle % 90 == 0 ? Frame.WORLD.quarterTurned(angle / 90) : Frame.WORLD.turned(angle));
  }
}
