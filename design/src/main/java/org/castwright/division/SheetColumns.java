package org.castwright.division;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.seams.Freedom;

/**
 * What each column across a pull asks of a piece's sheet: where the piece's share of it ends, how
 * much that matters, and the bounds that no sheet may pass.
 */
final class SheetColumns {

  /** Bisections of a step where a share ends. */
  private static final int HALVINGS = 5;

  /** Steps inside the casting to where a share ends there. */
  private static final int INSIDE_STEPS = 8;

  /** How deep inside the casting a sheet runs at most, cells. */
  private static final double DEEP = 2;

  /** What a sheet keeps of the topmost run of solid above and below it, as a share and in mm. */
  private static final double KEPT = 0.3;

  private static final double KEPT_MM = 0.1;

  /** How far below a roof that the piece takes a sheet should stay, mm. */
  private static final double COVERED = 0.5;

  /** Pull of a column on the sheet at the casting, far from it, and inside it. */
  private static final double LOOSE = 0.01;

  private static final double FIRM = 0.2;
  private static final double INSIDE = 0.004;

  /** Length of a later piece's share, cells, below which a column is asked no more. */
  private static final double GAP = 1.5;

  /** What must leave with the piece over less of a column, mm, is the rounding of a wall. */
  private static final double HAIR = 0.3;

  /** A column that is in the block for less, mm, asks for nothing. */
  private static final double GRAZES = 4;

  /** Distance from the casting, cells, from which columns are trusted wholly. */
  private static final double TRUSTED = 4;

  /** Sheets of the pieces that have left. */
  private final Sheet[] left;

  private final Shares shares;
  private final PullColumns[] pulls;
  private final Freedom exact;
  private final int[] rank;

  /** The piece at each place of the order. */
  private final int[] pieceAt;

  private final int piece;
  private final int order;

  /** The pieces that have not left, a bit each. */
  private final int there;

  private final Box3 block;
  private final double step;
  final PullColumns view;
  final int nx;
  final int ny;

  /** Where the share ends; not a number where the column says nothing. */
  final double[] target;

  final double[] weight;

  /** The highest a sheet may be: below what must leave with the piece. */
  final double[] most;

  /** The lowest it may be: inside the topmost run of solid. */
  final double[] least;

  /** The highest point that a later piece is to have, minus infinity if none. */
  final double[] later;

  /** What a sheet should stay below where the piece takes the roof; infinite elsewhere. */
  final double[] cap;

  /** Whether the piece takes all that earlier ones leave of a column, down to {@link #bottom}. */
  final boolean[] through;

  /** Where its share ends there, at the block's outside or a piece that has left. */
  final double[] bottom;

  SheetColumns(
      Shares shares,
      List<PullColumns> pulls,
      Freedom exact,
      int[] rank,
      int piece,
      Box3 block,
      List<Sheet> left) {
    this.left = left.toArray(Sheet[]::new);
    this.shares = shares;
    this.pulls = pulls.toArray(PullColumns[]::new);
    this.exact = exact;
    this.rank = rank;
    pieceAt = new int[rank.length];
    for (int i = 0; i < rank.length; i++) {
      pieceAt[rank[i]] = i;
    }
    this.piece = piece;
    this.order = rank[piece];
    there = IntStream.range(0, rank.length).filter(i -> rank[i] >= order).map(i -> 1 << i).sum();
    this.view = pulls.get(piece);
    this.block = block;
    this.step = shares.cells.cell / 2;
    nx = view.raster.nx();
    ny = view.raster.ny();
    int n = nx * ny;
    target = new double[n];
    weight = new double[n];
    most = new double[n];
    least = new double[n];
    later = new double[n];
    cap = new double[n];
    Arrays.fill(cap, Double.POSITIVE_INFINITY);
    through = new boolean[n];
    bottom = new double[n];
    Arrays.fill(target, Double.NaN);
    Arrays.fill(most, Double.POSITIVE_INFINITY);
    Arrays.fill(later, Double.NEGATIVE_INFINITY);
    IntStream.range(0, ny).parallel().forEach(this::row);
    floors();
  }

  private void row(int j) {
    float[] u = new float[shares.pieces];
    for (int i = 0; i < nx; i++) {
      double x = view.raster.x0() + i * view.raster.pixel();
      double y = view.raster.y0() + j * view.raster.pixel();
      Frame f = view.frame;
      column(j * nx + i, f.u().times(x).plus(f.v().times(y)), u);
    }
  }

  private void column(int o, Vec3 foot, float[] u) {
    double[] span = span(foot, view.frame.w());
    double roof = view.roof[o];
    double low = Math.max(span[0], roof);
    double lowest = Double.NaN;
    double after = Double.NaN;
    double gap = Double.NaN;
    for (double t = span[1] - step / 2; t > low; t -= step) {
      int l = label(foot, t, u);
      boolean needed = needed(foot, t) && (needed(foot, t + HAIR) || needed(foot, t - HAIR));
      if (needed) {
        most[o] = t;
      }
      // a share that comes back far below a later piece's is noise, unless it is needed
      if (needed || (l == order && !(after - t > GAP * shares.cells.cell))) {
        lowest = t;
        after = Double.NaN;
        gap = Double.NaN;
      } else if (l < order && Double.isNaN(after)) {
        gap = t;
      } else if (l > order) {
        after = Double.isNaN(after) ? t : after;
        later[o] = Math.max(later[o], t);
      }
    }
    if (most[o] < Double.POSITIVE_INFINITY) {
      most[o] = needs(foot, most[o]);
    }
    boolean mine = !Double.isNaN(lowest) && Double.isNaN(after);
    if (roof > span[0] - step && span[1] > span[0]) {
      if (only(foot, roof) && only(foot, roof + HAIR)) {
        most[o] = roof - Math.min(KEPT_MM, KEPT * (roof - view.under[o]));
        mine = true;
      }
      if (mine) {
        inside(o, foot, roof, u);
        return;
      }
    }
    if (mine) {
      through[o] = span[1] - span[0] > GRAZES;
      bottom[o] = lowest - step / 2;
    } else if (!Double.isNaN(lowest)) {
      target[o] =
          Double.isNaN(gap)
              ? end(foot, lowest, after, u)
              : lowest - Math.min(DEEP * shares.cells.cell, (lowest - gap) / 2);
      weight[o] = weight(at(foot, target[o]));
    }
  }

  /** The piece takes the roof: its sheet runs inside the casting, as deep as its share goes. */
  private void inside(int o, Vec3 foot, double roof, float[] u) {
    double run = roof - view.under[o];
    double deep = Math.min(DEEP * shares.cells.cell, run / 2);
    double t = roof;
    for (int n = 0; n < INSIDE_STEPS; n++) {
      Vec3 p = at(foot, t - deep / INSIDE_STEPS);
      shares.at(p.x(), p.y(), p.z(), u);
      if (best(u, -1) > order) {
        break;
      }
      t -= deep / INSIDE_STEPS;
    }
    target[o] = Math.min(t, roof - Math.min(KEPT * run, KEPT_MM));
    weight[o] = INSIDE;
    cap[o] = roof - Math.min(KEPT * run, COVERED);
  }

  /** Whether the piece takes the roof of a column, so that its sheet runs inside the casting. */
  boolean inside(int o) {
    return cap[o] < Double.POSITIVE_INFINITY;
  }

  private double end(Vec3 foot, double lowest, double after, float[] u) {
    double a = lowest;
    double b = after;
    for (int n = 0; n < HALVINGS; n++) {
      double mid = (a + b) / 2;
      if (label(foot, mid, u) == order) {
        a = mid;
      } else {
        b = mid;
      }
    }
    return (a + b) / 2;
  }

  /** Where what must leave with the piece ends, within a step below a point that must. */
  private double needs(Vec3 foot, double t) {
    double a = t - step;
    double b = t;
    for (int n = 0; n < HALVINGS; n++) {
      double mid = (a + b) / 2;
      if (needed(foot, mid)) {
        b = mid;
      } else {
        a = mid;
      }
    }
    return b;
  }

  private double weight(Vec3 p) {
    double away = Math.min(1, shares.cells.near(p) / (TRUSTED * shares.cells.cell));
    return LOOSE + FIRM * away * away;
  }

  private Vec3 at(Vec3 foot, double t) {
    return foot.plus(view.frame.w().times(t));
  }

  /** Whether the piece frees a point of a column, and none that leaves later does. */
  private boolean only(Vec3 foot, double t) {
    Vec3 w = view.frame.w();
    int free = exact.at(foot.x() + w.x() * t, foot.y() + w.y() * t, foot.z() + w.z() * t);
    for (int i = 0; i < shares.pieces; i++) {
      if (rank[i] > order && (free & 1 << i) != 0) {
        return false;
      }
    }
    return (free & 1 << piece) != 0;
  }

  /** Whether a point of space must leave with this piece: none that is still there frees it. */
  private boolean needed(Vec3 foot, double t) {
    Vec3 w = view.frame.w();
    double x = foot.x() + w.x() * t;
    double y = foot.y() + w.y() * t;
    double z = foot.z() + w.z() * t;
    for (int i = 0; i < shares.pieces; i++) {
      PullColumns p = pulls[i];
      int c = p.column(x, y, z);
      double height = p.height(x, y, z);
      if (rank[i] > order ? height >= p.roof[c] : rank[i] < order && height >= p.wide[c]) {
        return false;
      }
    }
    return only(foot, t);
  }

  private int label(Vec3 foot, double t, float[] u) {
    Vec3 w = view.frame.w();
    double x = foot.x() + w.x() * t;
    double y = foot.y() + w.y() * t;
    double z = foot.z() + w.z() * t;
    if (gone(new Vec3(x, y, z))) {
      return -1;
    }
    int sure = shares.clearAt(x, y, z);
    if (sure >= 0 && (there & 1 << sure) != 0 && exact.frees(sure, x, y, z)) {
      return rank[sure];
    }
    shares.at(x, y, z, u);
    int most = best(u, ~0);
    int own = pieceAt[most];
    if (u[own] > Shares.CLEAR && exact.frees(own, x, y, z)) {
      return most;
    }
    int wide = 0;
    for (int i = 0; i < shares.pieces; i++) {
      PullColumns p = pulls[i];
      wide |= p.height(x, y, z) >= p.wide[p.column(x, y, z)] ? 1 << i : 0;
    }
    return best(u, wide != 0 ? wide : exact.at(x, y, z));
  }

  private boolean gone(Vec3 p) {
    for (Sheet s : left) {
      if (s.above(p) > 0) {
        return true;
      }
    }
    return false;
  }

  /** Place in the order of the piece with the largest share among those that may have it. */
  private int best(float[] u, int allowed) {
    int m = (allowed & there) == 0 ? there : allowed & there;
    int best = -1;
    for (int i = 0; i < shares.pieces; i++) {
      if ((m & 1 << i) != 0 && (best < 0 || u[i] > u[best])) {
        best = i;
      }
    }
    return rank[best];
  }

  /** Heights between which a column lies in the block; the second is lower when it does not. */
  private double[] span(Vec3 foot, Vec3 w) {
    double lo = view.low;
    double hi = view.high;
    double[] p = {foot.x(), foot.y(), foot.z()};
    double[] d = {w.x(), w.y(), w.z()};
    double[] a = {block.min().x(), block.min().y(), block.min().z()};
    double[] b = {block.max().x(), block.max().y(), block.max().z()};
    for (int k = 0; k < 3; k++) {
      if (d[k] == 0) {
        hi = p[k] < a[k] || p[k] > b[k] ? lo - 1 : hi;
        continue;
      }
      double t0 = (a[k] - p[k]) / d[k];
      double t1 = (b[k] - p[k]) / d[k];
      lo = Math.max(lo, Math.min(t0, t1));
      hi = Math.min(hi, Math.max(t0, t1));
    }
    return new double[] {lo, hi};
  }

  /**
   * Bounds from below: above the lower end of the topmost run of solid, here and in the columns
   * next to it. Ridges one column wide do not count: lips so narrow give.
   */
  private void floors() {
    double[] under = new double[least.length];
    for (int o = 0; o < under.length; o++) {
      under[o] = under(o);
    }
    for (int o = 0; o < least.length; o++) {
      least[o] = view.hit(o) ? floor(o, under) : view.low - 1;
    }
  }

  /** The lower end of the topmost run of solid, far down where the piece frees what is under it. */
  private double under(int o) {
    double under = view.under[o];
    if (!view.hit(o) || gives(o)) {
      return view.low - 1;
    }
    int i = o % nx;
    int j = o / nx;
    if (i == 0 || j == 0 || i + 1 == nx || j + 1 == ny) {
      return under;
    }
    for (int s : new int[] {1, nx, nx + 1, nx - 1}) {
      // beside a step up to another run of solid there is no ridge
      if (Math.min(view.roof[o - s], view.roof[o + s]) > view.under[o]) {
        under = Math.min(under, Math.max(view.under[o - s], view.under[o + s]));
      }
    }
    return under;
  }

  /** Whether a column only grazes the casting: within the release the piece frees what is below. */
  private boolean gives(int o) {
    Vec3 p = view.point(o, view.under[o] - HAIR);
    return (exact.at(p.x(), p.y(), p.z()) & 1 << piece) != 0;
  }

  private double floor(int o, double[] under) {
    double most = under[o];
    int i = o % nx;
    int j = o / nx;
    for (int b = Math.max(0, j - 1); b <= Math.min(ny - 1, j + 1); b++) {
      for (int a = Math.max(0, i - 1); a <= Math.min(nx - 1, i + 1); a++) {
        int n = b * nx + a;
        most = view.hit(n) ? Math.max(most, under[n]) : most;
      }
    }
    if (under[o] < view.low) {
      return most < view.low ? most : Math.min(most + KEPT_MM, view.roof[o] - KEPT_MM);
    }
    double run = KEPT * (view.roof[o] - under[o]);
    return Math.min(most + Math.min(KEPT_MM, run), under[o] + run);
  }
}
