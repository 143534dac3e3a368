package org.castwright.blocking;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * What has to be added to a body so that two pieces open it and meet in an even seam: over each
 * place from within the solid below, or the seam sheet, to within the solid above, with walls that
 * fall away from the seam's outline by a draft.
 */
final class Filling {

  /** Columns that are looked at, along each side of the square about one that carries heights. */
  private static final int FINER = 3;

  /** Draft of its walls, and of walls of the body that have less: 0.5°. */
  private static final double DRAFT = 1 / StrictMath.tan(Math.toRadians(0.5));

  /**
   * How deep a filling reaches into the solid above and below it, mm: beside the outline of a gap
   * surfaces may fall steeply between two columns.
   */
  private static final double BITE = 1.5;

  /** Columns that a filling goes past the outline of a gap. */
  private static final int PAST = 4;

  /** Skin that does not count, mm. */
  private static final double SKIN = 0.02;

  /** Least thickness where it lies within the solid, mm. */
  private static final float EDGE = 0.002f;

  private final Gaps gaps;
  private final int fine;
  private final int nx;
  private final int ny;
  private final float[] seam;

  /** Where walls with draft that come down from the body's top stand, and up from its bottom. */
  private final float[] upper;

  private final float[] lower;
  private final float[] top;
  private final float[] bottom;

  /** How far the filling reaches above or below the seam: above zero where there is any. */
  private final float[] reach;

  private final boolean[] needed;

  /**
   * @param steepest ° that the seam may rise outside the body
   * @param rim how far into the body from its outline, in places of the grid, the seam need not
   *     keep between its lowest and its highest point: what sticks out there is noise of walls
   * @param everywhere whether walls of the body without a gap get draft too
   */
  Filling(Gaps gaps, double steepest, int rim, boolean everywhere) {
    this.gaps = gaps;
    fine = gaps.raster.nx();
    nx = fine / FINER;
    ny = gaps.raster.ny() / FINER;
    int n = nx * ny;
    seam = seam(StrictMath.tan(Math.toRadians(steepest)), rim);
    upper = new float[fine * gaps.raster.ny()];
    lower = new float[upper.length];
    boolean[] gap = walls(everywhere);
    top = new float[n];
    bottom = new float[n];
    reach = new float[n];
    needed = new boolean[n];
    for (int o = 0; o < n; o++) {
      settle(o, gap[middle(o)]);
    }
  }

  /** The middle one of the columns looked at for one that carries heights. */
  private int middle(int o) {
    int row = o / nx;
    return (FINER * row + FINER / 2) * fine + FINER * (o % nx) + FINER / 2;
  }

  private float[] seam(double slope, int rim) {
    float[] lo = new float[nx * ny];
    float[] hi = new float[nx * ny];
    Arrays.fill(lo, Float.NaN);
    Arrays.fill(hi, Float.NaN);
    for (int o = 0; o < lo.length; o++) {
      int m = middle(o);
      for (int j = -(FINER / 2); j <= FINER / 2; j++) {
        for (int i = -(FINER / 2); i <= FINER / 2; i++) {
          int p = m + j * fine + i;
          if (gaps.runs.count(p) > 0) {
            float b = (float) gaps.bottom(p);
            float t = (float) gaps.top(p);
            hi[o] = Float.isNaN(lo[o]) ? t : Math.min(hi[o], t);
            lo[o] = Float.isNaN(lo[o]) ? b : Math.max(lo[o], b);
          }
        }
      }
      if (lo[o] > hi[o]) {
        lo[o] = (lo[o] + hi[o]) / 2;
        hi[o] = lo[o];
      }
    }
    for (int k = 0; k < rim; k++) {
      narrow(lo);
    }
    return SeamSheet.of(lo, hi, nx, slope * FINER * gaps.raster.pixel());
  }

  /** Takes the outermost places of the body away. */
  private void narrow(float[] lo) {
    float[] was = lo.clone();
    for (int o = nx + 1; o + nx + 1 < lo.length; o++) {
      for (int j = -nx; j <= nx; j += nx) {
        if (Float.isNaN(was[o + j - 1]) || Float.isNaN(was[o + j]) || Float.isNaN(was[o + j + 1])) {
          lo[o] = Float.NaN;
        }
      }
    }
  }

  /** Settles where walls stand; tells the columns at gaps and so near them that they are filled. */
  private boolean[] walls(boolean everywhere) {
    boolean[] gap = new boolean[upper.length];
    Arrays.fill(upper, Float.NEGATIVE_INFINITY);
    Arrays.fill(lower, Float.POSITIVE_INFINITY);
    for (int p = 0; p < gap.length; p++) {
      if (everywhere && gaps.runs.count(p) > 0) {
        upper[p] = Math.max(upper[p], (float) gaps.top(p));
        lower[p] = Math.min(lower[p], (float) gaps.bottom(p));
      }
      if (gaps.wide[p]) {
        int last = gaps.runs.count(p) - 1;
        float b = (float) (gaps.low(p) - bite(gaps.low(p) - gaps.runs.bottom(p, 0)));
        float t = (float) (gaps.high(p) + bite(gaps.runs.top(p, last) - gaps.high(p)));
        for (int j = -PAST; j <= PAST; j++) {
          for (int i = -PAST; i <= PAST; i++) {
            int q = p + j * fine + i;
            gap[q] = true;
            upper[q] = Math.max(upper[q], t);
            lower[q] = Math.min(lower[q], b);
          }
        }
      }
    }
    double fall = DRAFT * gaps.raster.pixel();
    Cone.upper(upper, null, fine, fall);
    Cone.lower(lower, null, fine, fall);
    return gap;
  }

  private static double bite(double run) {
    return Math.min(BITE, run / 2);
  }

  private void settle(int o, boolean gap) {
    int m = middle(o);
    float s = seam[o];
    top[o] = Math.max(upper[m], s);
    bottom[o] = Math.min(lower[m], s);
    reach[o] = Math.max(upper[m] - s, s - lower[m]);
    needed[o] = gap && reach[o] > 0;
    int last = gaps.runs.count(m) - 1;
    if (last < 0) {
      needed[o] |= reach[o] > 0;
      return;
    }
    double hi = gaps.top(m);
    double lo = gaps.bottom(m);
    if (top[o] <= hi + SKIN) {
      // within the topmost run of solid
      top[o] = (float) Math.max(Math.min(s, hi), hi - bite(hi - gaps.runs.bottom(m, last)));
    } else {
      needed[o] = true;
    }
    if (bottom[o] >= lo - SKIN) {
      bottom[o] = (float) Math.min(Math.max(s, lo), lo + bite(gaps.runs.top(m, 0) - lo));
    } else {
      needed[o] = true;
    }
    if (top[o] <= bottom[o]) {
      float middle = (top[o] + bottom[o]) / 2;
      top[o] = middle + EDGE;
      bottom[o] = middle - EDGE;
    }
  }

  /** The filling as one mesh with z along the pull; empty if there is nothing to fill. */
  TriMesh mesh() {
    return new FillingMesh(this).mesh();
  }

  /** What it adds to the body, as far as its columns tell, mm³. */
  double addsMm3() {
    double sum = 0;
    for (int o = 0; o < needed.length; o++) {
      if (needed[o] && reach[o] > 0) {
        int m = middle(o);
        sum += top[o] - bottom[o];
        for (int r = 0; r < gaps.runs.count(m); r++) {
          double above = Math.min(top[o], gaps.runs.top(m, r));
          sum -= Math.max(0, above - Math.max(bottom[o], gaps.runs.bottom(m, r)));
        }
      }
    }
    double side = FINER * gaps.raster.pixel();
    return sum * side * side;
  }

  int nx() {
    return nx;
  }

  int size() {
    return reach.length;
  }

  /** Above zero inside the filling's outline. */
  float reach(int o) {
    return reach[o];
  }

  /** Whether something is to be filled over a place; elsewhere a filling lies within the solid. */
  boolean needed(int o) {
    return needed[o];
  }

  float top(int o) {
    return top[o];
  }

  float bottom(int o) {
    return bottom[o];
  }

  /** Height of the seam between two places of the grid: as it is outside the body. */
  double seam(int o, int p, double share) {
    boolean in = gaps.runs.count(middle(o)) > 0;
    boolean on = gaps.runs.count(middle(p)) > 0;
    return in == on ? seam[o] + share * (seam[p] - seam[o]) : in ? seam[p] : seam[o];
  }

  double x(int o) {
    return gaps.x(middle(o));
  }

  double y(int o) {
    return gaps.y(middle(o));
  }
}
