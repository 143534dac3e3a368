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

  /** Radius of probes that must find room in what is left of the mold, mm: webs of 0.8 mm do. */
  private static final double ROOM = 0.5;

  /** How steeply one of them, a cone, falls: it leaves ridges that open by 37°. */
  private static final double FALL = 3;

  /** Ridges that stand out less may be narrower, mm: they are wider than they are high. */
  private static final double LOW = 0.6;

  /** Ridges of less area are corners of noise, mm². */
  private static final double SMALL = 0.5;

  /** What the seam inside the body weighs outside, and the other way round. */
  private static final double OTHER_SIDE = 1e-6;

  /** How often the seam is led past narrow ridges of one piece and the other. */
  private static final int TURNS = 2;

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
  private final boolean[] slot;

  /**
   * @param steepest ° that the seam may rise outside the body
   * @param rim how far into the body from its outline, in places of the grid, the seam need not
   *     keep between its lowest and its highest point where walls are uneven
   * @param before what was filled of this body already, whose seam it keeps to; null if nothing:
   *     then walls of the body without a gap get draft too
   */
  Filling(Gaps gaps, double steepest, int rim, Filling before) {
    this.gaps = gaps;
    fine = gaps.raster.nx();
    nx = fine / FINER;
    ny = gaps.raster.ny() / FINER;
    int n = nx * ny;
    double slope = StrictMath.tan(Math.toRadians(steepest));
    seam = before == null ? seam(slope, rim) : again(before);
    upper = new float[fine * gaps.raster.ny()];
    lower = new float[upper.length];
    boolean[] gap = walls(before == null);
    slot = new boolean[n];
    slots();
    top = new float[n];
    bottom = new float[n];
    reach = new float[n];
    needed = new boolean[n];
    for (int o = 0; o < n; o++) {
      settle(o, gap[middle(o)]);
    }
    if (before == null) {
      coverWalls();
    }
  }

  /** Walls get the seam all along, not only where their draft is found wanting. */
  private void coverWalls() {
    for (int o = nx + 1; o + nx + 1 < needed.length; o++) {
      needed[o] |=
          reach[o] > 0
              && (covers(o, 1, 1)
                  || covers(o, -1, -1)
                  || covers(o, nx, fine)
                  || covers(o, -nx, -fine));
    }
  }

  /**
   * Whether the filling ends outside of the body between a place of it and the next one outside.
   *
   * @param step to that place
   * @param column from one column that is looked at to the next, the same way
   */
  private boolean covers(int o, int step, int column) {
    int p = o + step;
    if (reach[p] > 0 || gaps.runs.count(middle(o)) == 0 || gaps.runs.count(middle(p)) > 0) {
      return false;
    }
    int in = 1;
    while (gaps.runs.count(middle(o) + in * column) > 0) {
      in++;
    }
    return reach[o] / (reach[o] - reach[p]) * FINER >= in;
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
    return SeamSheet.of(new SeamBounds(lo, hi, nx, step(), rim), slope * step());
  }

  /** The seam of an earlier filling: outside the body from places outside, inside from inside. */
  private float[] again(Filling f) {
    float[] out = new float[nx * ny];
    double step = step();
    for (int o = 0; o < out.length; o++) {
      boolean in = gaps.runs.count(middle(o)) > 0;
      double u = Math.max(0, Math.min(f.nx - 1.001, (x(o) - f.x(0)) / step));
      double v = Math.max(0, Math.min(f.ny - 1.001, (y(o) - f.y(0)) / step));
      int p = ((int) v) * f.nx + (int) u;
      double a = u % 1;
      double b = v % 1;
      double sum = 0;
      double weight = 0;
      for (int k = 0; k < 4; k++) {
        int q = p + k % 2 + k / 2 * f.nx;
        double w = (k % 2 == 0 ? 1 - a : a) * (k / 2 == 0 ? 1 - b : b);
        w *= f.holds(q) == in ? 1 : OTHER_SIDE;
        sum += w * f.seam[q];
        weight += w;
      }
      out[o] = (float) (sum / weight);
    }
    return out;
  }

  /** Between places, mm. */
  private double step() {
    return FINER * gaps.raster.pixel();
  }

  private boolean holds(int o) {
    return gaps.runs.count(middle(o)) > 0 || (needed[o] && reach[o] > 0);
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

  /**
   * Leaves no narrow ridge of either piece: leads the seam past ridges outside the body, and fills
   * between walls where that would make one of the other piece.
   */
  private void slots() {
    Slots slots = new Slots(nx, ROOM / step(), FALL * step());
    float[] down = seam;
    for (int k = 0; k < TURNS; k++) {
      follow(cut(slots, 1));
      down = cut(slots, -1);
      follow(down);
    }
    float[] up = cut(slots, 1);
    for (int o = 2 * nx + 2; o + 2 * nx + 2 < seam.length; o++) {
      slot[o] = !Float.isNaN(up[o]) || !Float.isNaN(down[o]);
      if (slot[o]) {
        upper[middle(o)] = Math.max(reached(o, 1), Float.isNaN(up[o]) ? seam[o] : up[o]);
        lower[middle(o)] = Math.min(reached(o, -1), Float.isNaN(down[o]) ? seam[o] : down[o]);
        intoSolid(o);
      }
    }
  }

  /** Where the piece above (1) or below (-1) ends over a place. */
  private float reached(int o, int sign) {
    int m = middle(o);
    float v = sign > 0 ? Math.max(upper[m], seam[o]) : Math.min(lower[m], seam[o]);
    if (gaps.runs.count(m) == 0) {
      return v;
    }
    return (float) (sign > 0 ? Math.max(v, gaps.top(m)) : Math.min(v, gaps.bottom(m)));
  }

  /** Where narrow ridges of the piece above (1) or below (-1) are to end; elsewhere no number. */
  private float[] cut(Slots slots, int sign) {
    float[] whole = new float[seam.length];
    for (int o = 0; o < whole.length; o++) {
      whole[o] = reached(o, sign);
    }
    float[] less = sign > 0 ? slots.filled(whole) : slots.leveled(whole);
    for (int o = 0; o < whole.length; o++) {
      less[o] = Math.abs(less[o] - whole[o]) > LOW ? less[o] : Float.NaN;
    }
    slots.dropSpecks(less, (int) Math.round(SMALL / (step() * step())));
    return less;
  }

  /** Leads the seam outside the body along heights where there are any. */
  private void follow(float[] heights) {
    for (int o = 0; o < seam.length; o++) {
      if (!Float.isNaN(heights[o]) && gaps.runs.count(middle(o)) == 0) {
        seam[o] = heights[o];
      }
    }
  }

  /** What is filled of a slot goes on into the body beside it. */
  private void intoSolid(int o) {
    for (int j = -nx; j <= nx; j += nx) {
      for (int i = -1; i <= 1; i++) {
        int m = middle(o + j + i);
        if (gaps.runs.count(m) > 0) {
          upper[m] = Math.max(upper[m], (float) gaps.top(m));
          lower[m] = Math.min(lower[m], (float) gaps.bottom(m));
        }
      }
    }
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
    return adds(needed);
  }

  private double adds(boolean[] which) {
    double sum = 0;
    for (int o = 0; o < which.length; o++) {
      if (which[o] && needed[o] && reach[o] > 0) {
        int m = middle(o);
        sum += top[o] - bottom[o];
        for (int r = 0; r < gaps.runs.count(m); r++) {
          double above = Math.min(top[o], gaps.runs.top(m, r));
          sum -= Math.max(0, above - Math.max(bottom[o], gaps.runs.bottom(m, r)));
        }
      }
    }
    return sum * step() * step();
  }

  /** Of that what is in narrow slots, mm³. */
  double slotsMm3() {
    return adds(slot);
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
