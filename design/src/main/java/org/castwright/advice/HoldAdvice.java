package org.castwright.advice;

import java.util.ArrayList;
import java.util.List;
import org.castwright.fill.Cavity;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.pour.ClampRows;
import org.castwright.pour.Hydrostatics;
import org.castwright.pour.Lift;
import org.castwright.pour.Liquid;
import org.castwright.pour.Load;

/** What the liquid does to the pieces when the mold stands full to the gate's mouth. */
final class HoldAdvice {

  /** Factor on the opening force; common practice, no source. */
  private static final double SAFETY = 2;

  /** A pull within 30° of upright has no height to act at: sine of the angle to up. */
  private static final double LEVEL = 0.5;

  /** A pull nearer than 30° to straight down: cosine of its angle to up. */
  private static final double RESTING = -0.87;

  private final PourJob job;
  private final Cavity cavity;

  HoldAdvice(PourJob job, Cavity cavity) {
    this.job = job;
    this.cavity = cavity;
  }

  PourAdvice.Pressure pressure(double surfaceMm) {
    Liquid liquid = new Liquid(job.material().liquidKgPerM3(), job.up(), surfaceMm);
    double base = Double.POSITIVE_INFINITY;
    double top = Double.NEGATIVE_INFINITY;
    for (int v = 0; v < job.block().vertexCount(); v++) {
      double h = job.block().vertex(v).dot(job.up());
      base = Math.min(base, h);
      top = Math.max(top, h);
    }
    List<PourAdvice.PieceLoad> pieces = new ArrayList<>();
    double highest = 0;
    double opening = 0;
    double share = 0.5;
    for (PourJob.Piece p : job.pieces()) {
      boolean[] wet = wet(p.mesh());
      Hydrostatics.Side side = Hydrostatics.Side.OUTSIDE;
      Load load = Hydrostatics.on(p.mesh(), liquid, side, f -> wet[f]);
      double along = load.alongN(p.pull());
      Double height =
          height(Hydrostatics.along(p.mesh(), liquid, side, f -> wet[f], p.pull()), p.pull());
      // a piece that leaves downward is pressed on the table
      if (along > opening && p.pull().dot(job.up()) > RESTING) {
        opening = along;
        share =
            height == null ? 0.5 : ClampRows.of(along, height - base, top - base).baseN() / along;
      }
      highest = Math.max(highest, load.highestPa());
      pieces.add(
          new PourAdvice.PieceLoad(
              p.name(),
              Numbers.round(along, 4),
              Numbers.round(load.alongN(job.up()), 4),
              height == null ? null : Numbers.round(height - base, 2)));
    }
    double closing = SAFETY * opening;
    int n = job.holds().count();
    return new PourAdvice.Pressure(
        Numbers.round(highest, 1),
        List.copyOf(pieces),
        Numbers.round(closing, 3),
        SAFETY,
        job.holds().kind(),
        n,
        n == 0 ? null : Numbers.round(closing / n, 3),
        Numbers.round(Math.max(0, Math.min(1, share)), 3),
        Numbers.round(Lift.holdDownN(job.casting().volume(), liquid.densityKgPerM3(), 0), 3));
  }

  /** The facets of a piece that the liquid wets: those on casting or channels. */
  private boolean[] wet(TriMesh piece) {
    boolean[] out = new boolean[piece.triangleCount()];
    for (int f = 0; f < out.length; f++) {
      out[f] = cavity.wets(piece.center(f));
    }
    return out;
  }

  /**
   * Height at which the force along the pull acts, mm along up; null when the pull is upright or
   * nothing opens. A force F along the pull at height h has the moment {@code h·F·(up × pull)}.
   */
  private Double height(Load along, Vec3 pull) {
    Vec3 lever = job.up().cross(pull);
    double force = along.alongN(pull);
    if (lever.length() < LEVEL || force <= 0) {
      return null;
    }
    return along.momentNmm().dot(lever) / (force * lever.dot(lever));
  }
}
