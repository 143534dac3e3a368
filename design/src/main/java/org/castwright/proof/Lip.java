package org.castwright.proof;

import org.castwright.geom.Vec3;

/**
 * How wide a moving body is caught along the outline of a standing one: the largest offset inward
 * from the outline at which more than the allowed share of its length still has a lip deeper than
 * {@value #DEPTH} mm along the pull, by exact columns. The share is of the length of the true
 * outline (edges with no body beyond them), while lips count on every edge that turns under.
 *
 * @param width mm; zero if there is none at the narrowest offset, {@value #NARROWEST} mm
 * @param outlineLength of the standing body across the pull, mm
 * @param where one of the places caught at that width, world
 */
record Lip(double width, double outlineLength, Vec3 where) {

  private static final double DEPTH = 0.02;
  private static final double NARROWEST = 0.01;
  private static final double[] OFFSETS = {
    NARROWEST, 0.02, 0.03, 0.05, 0.07, 0.1, 0.15, 0.2, 0.3, 0.5, 0.7, 1, 1.5, 2, 3, 5
  };

  /** Body this far outside an edge hides it: the edge is not on the true outline, mm. */
  private static final double BEYOND = 0.03;

  private static final int HALVINGS = 5;

  static Lip of(Columns moving, Columns still, double sign, ProofLimits limits) {
    return new Measure(moving, still, sign).lip(limits.lipLengthShare());
  }

  /**
   * A place with a lip wider than allowed on more than the allowed share of the outline, or null.
   */
  static Vec3 tooWide(Columns moving, Columns still, double sign, ProofLimits limits) {
    return new Measure(moving, still, sign).wider(limits);
  }

  private static final class Measure {
    private final Columns still;
    private final ColumnQuery.Probe movingProbe;
    private final ColumnQuery.Probe stillProbe;
    private final double sign;
    private final Outline outline;
    private final int onOutline;
    private int caughtSample;

    Measure(Columns moving, Columns still, double sign) {
      this.still = still;
      this.movingProbe = moving.probe();
      this.stillProbe = still.probe();
      this.sign = sign;
      this.outline = new Outline(still.local(), sign);
      int on = 0;
      for (int i = 0; i < outline.size(); i++) {
        on += stillAt(i, -BEYOND).isEmpty(0) ? 1 : 0;
      }
      this.onOutline = on;
    }

    Lip lip(double share) {
      double length = onOutline * outline.spacing();
      double allowed = share * onOutline;
      int widest = OFFSETS.length - 1;
      while (widest >= 0 && caught(OFFSETS[widest]) <= allowed) {
        widest--;
      }
      if (widest < 0) {
        return new Lip(0, length, Vec3.ZERO);
      }
      int sample = caughtSample;
      double low = OFFSETS[widest];
      double high = widest + 1 < OFFSETS.length ? OFFSETS[widest + 1] : low;
      for (int k = 0; k < HALVINGS && high > low; k++) {
        double mid = (low + high) / 2;
        if (caught(mid) > allowed) {
          low = mid;
          sample = caughtSample;
        } else {
          high = mid;
        }
      }
      return new Lip(low, length, place(sample));
    }

    Vec3 wider(ProofLimits limits) {
      boolean wide = caught(limits.lipWidth()) > limits.lipLengthShare() * onOutline;
      return wide ? place(caughtSample) : null;
    }

    private Vec3 place(int sample) {
      Vec3 at = new Vec3(outline.u(sample), outline.v(sample), outline.w(sample));
      return still.frame().toWorld(at);
    }

    private int caught(double offset) {
      int n = 0;
      for (int i = 0; i < outline.size(); i++) {
        double u = outline.u(i) + offset * outline.inwardU(i);
        double v = outline.v(i) + offset * outline.inwardV(i);
        Spans b = stillProbe.at(u, v);
        if (b.isEmpty(0) || Ahead.depth(movingProbe.at(u, v), 0, b, 0, sign) <= DEPTH) {
          continue;
        }
        // where a narrow body ends at this offset its far side would be taken for a lip
        if (!stillAt(i, offset + BEYOND).isEmpty(0)) {
          n++;
          caughtSample = i;
        }
      }
      return n;
    }

    private Spans stillAt(int i, double offset) {
      return stillProbe.at(
          outline.u(i) + offset * outline.inwardU(i), outline.v(i) + offset * outline.inwardV(i));
    }
  }
}
