package org.castwright.plan;

import org.castwright.division.Division;
import org.castwright.geom.Vec3;
import org.castwright.parting.BlockBox;

/**
 * How much of a seam runs close beside a level line round a block: a groove that ended there would
 * leave a thin wall.
 */
final class SeamsAlong {

  private static final double STEP = 0.5;

  /** Nearer than this to the line a seam leaves a thin wall, mm. */
  private static final double NEAR = 2;

  /** How deep in the block it is looked for, mm. */
  private static final double DEEP = 1;

  /** A seam that crosses the line is near it for so long, mm. */
  private static final double CROSSING = 3;

  private final Division division;
  private final BlockBox box;

  SeamsAlong(Division division, BlockBox box) {
    this.division = division;
    this.box = box;
  }

  /** Length of such seam beyond what crosses, mm. */
  double at(double y) {
    double x0 = box.x0() + DEEP;
    double x1 = box.x1() - DEEP;
    double z0 = box.z0() + DEEP;
    double z1 = box.z1() - DEEP;
    return along(new Vec3(x0, y, z0), new Vec3(x1, y, z0))
        + along(new Vec3(x0, y, z1), new Vec3(x1, y, z1))
        + along(new Vec3(x0, y, z0), new Vec3(x0, y, z1))
        + along(new Vec3(x1, y, z0), new Vec3(x1, y, z1));
  }

  private double along(Vec3 a, Vec3 b) {
    int n = (int) Math.ceil(b.minus(a).length() / STEP);
    double sum = 0;
    double run = 0;
    for (int k = 0; k <= n; k++) {
      Vec3 p = a.plus(b.minus(a).times((double) k / n));
      if (k < n && meets(p)) {
        run += STEP;
      } else {
        sum += Math.max(0, run - CROSSING);
        run = 0;
      }
    }
    return sum;
  }

  private boolean meets(Vec3 p) {
    int here = division.pieceAt(p);
    return division.pieceAt(p.plus(new Vec3(0, NEAR, 0))) != here
        || division.pieceAt(p.minus(new Vec3(0, NEAR, 0))) != here;
  }
}
