package org.castwright.parting;

import java.util.Arrays;
import org.castwright.mesh.MeshException;

/**
 * Whether a plane can part the casting: a little way inside every point of its outline the plane
 * must lie between the lowest and the highest casting.
 *
 * @param flat whether one height does everywhere
 * @param height the height for the sheet at the wall, an exact float, mm: that of the plane, or a
 *     typical height of the outline
 */
record FlatTest(boolean flat, double height) {

  /** Heights that miss each other by less than this meet, mm. */
  private static final double MEET_MM = 1e-3;

  /** An outline whose heights differ by less is taken as it is, mm. */
  private static final double LEVEL_OUTLINE_MM = 0.05;

  /** A band of heights wider than this, as upright walls have, is cut in its middle, mm. */
  private static final double WIDE_BAND_MM = 2;

  /** An edge with casting this far outside of it is no outline, mm. */
  private static final double OUTSIDE_MM = 0.01;

  /** Heights closer to zero are zero, mm: what is left of sines and cosines. */
  private static final double ROUNDING_MM = 1e-9;

  private static final double[] SAMPLES = {0.1, 0.3, 0.5, 0.7, 0.9};
  private static final double SHORT_EDGE_MM = 1e-4;

  /**
   * @param seam the seam by direction alone
   * @param inwardMm how far inside the outline the plane must fit, mm
   */
  static FlatTest of(Seam seam, Columns columns, double inwardMm) {
    Range range = new Range();
    Range wall = new Range();
    DoubleList heights = new DoubleList();
    Column c = new Column();
    double[] p = seam.plan;
    for (int e = 0; e < seam.size(); e++) {
      double x = p[2 * seam.planFrom(e)];
      double y = p[2 * seam.planFrom(e) + 1];
      double dx = p[2 * seam.planTo(e)] - x;
      double dy = p[2 * seam.planTo(e) + 1] - y;
      double l = Math.hypot(dx, dy);
      if (l < SHORT_EDGE_MM) {
        continue;
      }
      double nx = -dy / l;
      double ny = dx / l;
      for (double t : SAMPLES) {
        double sx = x + t * dx;
        double sy = y + t * dy;
        if (!columns.at(sx - OUTSIDE_MM * nx, sy - OUTSIDE_MM * ny, c)
            && columns.at(sx + inwardMm * nx, sy + inwardMm * ny, c)) {
          range.narrow(c);
          heights.add(seam.z(e, t));
          if (columns.at(sx + BandCut.TIGHT_MM * nx, sy + BandCut.TIGHT_MM * ny, c)) {
            wall.narrow(c);
          }
        }
      }
    }
    return of(range, wall, heights.toArray());
  }

  private static FlatTest of(Range range, Range wall, double[] heights) {
    Arrays.sort(heights);
    int n = heights.length;
    if (n == 0) {
      throw new MeshException(
          "The casting has no outline seen along the pull; is it closed, and not paper-thin?");
    }
    double median = heights[n / 2];
    if (range.lo > range.hi + MEET_MM) {
      return new FlatTest(false, (float) median);
    }
    double level = (heights[0] + heights[n - 1]) / 2;
    double h;
    if (wall.hi - wall.lo > WIDE_BAND_MM) {
      h = (wall.lo + wall.hi) / 2;
    } else if (heights[n - 1] - heights[0] < LEVEL_OUTLINE_MM) {
      h = level;
    } else if (wall.lo <= wall.hi) {
      h = (wall.lo + wall.hi) / 2;
    } else {
      h = range.hi - range.lo > WIDE_BAND_MM ? (range.lo + range.hi) / 2 : median;
    }
    h = Math.max(range.lo, Math.min(range.hi, h));
    return new FlatTest(true, Math.abs(h) < ROUNDING_MM ? 0 : (float) h);
  }

  /** The heights that every column looked at has between its lowest and highest casting. */
  private static final class Range {
    double lo = Double.NEGATIVE_INFINITY;
    double hi = Double.POSITIVE_INFINITY;

    void narrow(Column c) {
      lo = Math.max(lo, c.lower);
      hi = Math.min(hi, c.upper);
    }
  }
}
