package org.castwright.plan;

import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.seams.Mark;
import org.castwright.seams.Wish;
import org.castwright.seams.Wishes;

/**
 * Measures where on the casting's surface the pieces' shares border: facets are cut into small
 * triangles, and the border runs through those whose corners different pieces form.
 */
final class SurfaceSeam {

  /** Longest side of a small triangle, mm. */
  private static final double STEP = 1;

  private static final int MOST_PARTS = 400;
  private static final int HALVINGS = 8;

  private final TriMesh casting;
  private final ToIntFunction<Vec3> pieceAt;
  private final Predicate<Vec3> covered;
  private final List<Wish> wishes;
  private double length;
  private double hidden;
  private double shown;
  private double none;
  private double missed;

  private SurfaceSeam(
      TriMesh casting, ToIntFunction<Vec3> pieceAt, Predicate<Vec3> covered, Wishes wishes) {
    this.casting = casting;
    this.pieceAt = pieceAt;
    this.covered = covered;
    this.wishes = wishes.all();
  }

  /**
   * Measures.
   *
   * @param casting without gate and vents
   * @param pieceAt the piece, from 0, that forms a point of its surface
   * @param covered whether gate or vents cover a point
   * @param wishes in the casting's frame
   */
  static SeamMeasure of(
      TriMesh casting, ToIntFunction<Vec3> pieceAt, Predicate<Vec3> covered, Wishes wishes) {
    SurfaceSeam s = new SurfaceSeam(casting, pieceAt, covered, wishes);
    for (int f = 0; f < casting.triangleCount(); f++) {
      s.facet(f);
    }
    return new SeamMeasure(s.length, s.length - s.hidden, s.shown, s.none, s.missed);
  }

  private void facet(int f) {
    Vec3 a = casting.vertex(casting.tri()[3 * f]);
    Vec3 b = casting.vertex(casting.tri()[3 * f + 1]);
    Vec3 c = casting.vertex(casting.tri()[3 * f + 2]);
    double longest =
        Math.max(b.minus(a).length(), Math.max(c.minus(b).length(), a.minus(c).length()));
    int n = (int) Math.max(1, Math.min(MOST_PARTS, Math.ceil(longest / STEP)));
    Vec3 u = b.minus(a).times(1.0 / n);
    Vec3 v = c.minus(a).times(1.0 / n);
    int[] before = new int[0];
    for (int j = 0; j <= n; j++) {
      int[] row = new int[n + 1 - j];
      for (int i = 0; i < row.length; i++) {
        row[i] = pieceAt.applyAsInt(a.plus(u.times(i)).plus(v.times(j)));
      }
      for (int i = 0; j > 0 && i < row.length; i++) {
        Vec3 low = a.plus(u.times(i)).plus(v.times(j - 1));
        Vec3[] up = {low, low.plus(u), low.plus(v)};
        small(f, up, new int[] {before[i], before[i + 1], row[i]});
        if (i + 1 < row.length) {
          Vec3[] down = {low.plus(u), low.plus(u).plus(v), low.plus(v)};
          small(f, down, new int[] {before[i + 1], row[i + 1], row[i]});
        }
      }
      before = row;
    }
  }

  private void small(int f, Vec3[] p, int[] piece) {
    Vec3 middle = p[0].plus(p[1]).plus(p[2]).times(1 / 3.0);
    if (covered.test(middle)) {
      return;
    }
    int asked = asked(f, middle);
    if (asked >= 0) {
      double third = p[1].minus(p[0]).cross(p[2].minus(p[0])).length() / 6;
      for (int k = 0; k < 3; k++) {
        missed += piece[k] == asked ? 0 : third;
      }
    }
    Vec3[] crossing = new Vec3[3];
    int n = 0;
    for (int k = 0; k < 3; k++) {
      int next = (k + 1) % 3;
      if (piece[k] != piece[next]) {
        crossing[n++] = crossing(p[k], p[next], piece[k]);
      }
    }
    if (n == 2) {
      segment(f, crossing[0], crossing[1]);
    } else if (n == 3) {
      Vec3 meet = crossing[0].plus(crossing[1]).plus(crossing[2]).times(1 / 3.0);
      for (Vec3 c : crossing) {
        segment(f, c, meet);
      }
    }
  }

  private Vec3 crossing(Vec3 from, Vec3 to, int piece) {
    Vec3 in = from;
    Vec3 out = to;
    for (int k = 0; k < HALVINGS; k++) {
      Vec3 mid = in.plus(out).times(0.5);
      if (pieceAt.applyAsInt(mid) == piece) {
        in = mid;
      } else {
        out = mid;
      }
    }
    return in.plus(out).times(0.5);
  }

  private void segment(int f, Vec3 a, Vec3 b) {
    double l = b.minus(a).length();
    length += l;
    Vec3 m = a.plus(b).times(0.5);
    Mark sight = null;
    boolean noSeam = false;
    for (Wish w : wishes) {
      if (w.region().holds(f, m.x(), m.y(), m.z())) {
        noSeam |= w.mark() == Mark.NO_SEAM;
        sight = w.mark() == Mark.HIDE || w.mark() == Mark.SHOW ? w.mark() : sight;
      }
    }
    hidden += sight == Mark.HIDE ? l : 0;
    shown += sight == Mark.SHOW ? l : 0;
    none += noSeam ? l : 0;
  }

  /** The piece wished for at a point, from 0, or -1. */
  private int asked(int f, Vec3 p) {
    int piece = -1;
    for (Wish w : wishes) {
      if (w.mark() == Mark.PIECE && w.region().holds(f, p.x(), p.y(), p.z())) {
        piece = w.piece() - 1;
      }
    }
    return piece;
  }
}
