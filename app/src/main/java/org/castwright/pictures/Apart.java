package org.castwright.pictures;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * How a mold of many pieces is shown opened: from where, and how far each piece stands off along
 * its pull, so that neither pieces nor casting hide each other. The last piece stands closest, each
 * earlier one at least as far as it takes to show clear of those after it.
 */
final class Apart {

  private static final int AROUND = 24;

  /** Heights of the eye tried: tangents of the angle, about. */
  private static final double[] HEIGHTS = {0.34, 0.52, 0.2, 0.8};

  /** A piece is moved on in steps of this share of the casting's diagonal, so many at most. */
  private static final double STEP = 0.06;

  private static final int STEPS = 40;

  /**
   * A better view must be better by this: the first of equal ones is taken whatever the rounding.
   */
  private static final double BETTER = 1e-6;

  private Apart() {}

  /** The direction in which all pulls show best, and best apart from each other. */
  static Vec3 looking(List<Vec3> pulls, Frame frame) {
    Vec3 best = null;
    double most = -1;
    for (double height : HEIGHTS) {
      for (int i = 0; i < AROUND; i++) {
        double a = 2 * Math.PI * (i + 0.5) / AROUND;
        Vec3 flat = frame.u().times(StrictMath.sin(a)).plus(frame.v().times(StrictMath.cos(a)));
        Vec3 look = flat.minus(frame.w().times(height)).unit();
        double least = leastApart(pulls, look);
        if (least > most + BETTER) {
          most = least;
          best = look;
        }
      }
    }
    return best;
  }

  /** The least distance on the sheet between the ends of two pulls, or of one and the middle. */
  private static double leastApart(List<Vec3> pulls, Vec3 look) {
    List<Vec3> ends = new ArrayList<>(pulls);
    ends.add(Vec3.ZERO);
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < ends.size(); i++) {
      for (int j = 0; j < i; j++) {
        Vec3 d = ends.get(i).minus(ends.get(j));
        least = Math.min(least, d.minus(look.times(d.dot(look))).length());
      }
    }
    return least;
  }

  /**
   * How far each piece stands off, mm.
   *
   * @param clear how far each must stand off to be clear of the casting, mm
   */
  static double[] distances(
      TriMesh casting, List<MoldPictures.Piece> pieces, double[] clear, Vec3 looking, Vec3 up) {
    Vec3 right = looking.cross(up).unit();
    Frame sheet = new Frame(right, looking.cross(right).unit().negate(), looking.negate().unit());
    double step = STEP * casting.bounds().diagonal();
    double[] out = clear.clone();
    List<Outline> placed = new ArrayList<>();
    placed.add(Outline.of(casting, sheet));
    for (int i = pieces.size() - 1; i >= 0; i--) {
      Outline here = Outline.of(pieces.get(i).mesh(), sheet);
      Vec3 way = sheet.toLocal(pieces.get(i).pull().unit());
      int n = 0;
      while (n < STEPS && here.moved(way, clear[i] + n * step).meetsAny(placed)) {
        n++;
      }
      // a pull toward the eye hides what it hides at any distance
      out[i] = n < STEPS ? clear[i] + n * step : clear[i];
      placed.add(here.moved(way, out[i]));
    }
    return out;
  }

  /**
   * The outline of a body on the sheet, as the room between pairs of parallel lines in a number of
   * directions.
   *
   * @param low lowest place along each direction, mm
   * @param high highest place
   */
  @SuppressWarnings("ArrayRecordComponent") // used and dropped, never compared
  private record Outline(double[] low, double[] high) {

    private static final int DIRECTIONS = 24;

    static Outline of(TriMesh mesh, Frame sheet) {
      double[] low = new double[DIRECTIONS];
      double[] high = new double[DIRECTIONS];
      Arrays.fill(low, Double.POSITIVE_INFINITY);
      Arrays.fill(high, Double.NEGATIVE_INFINITY);
      double[] xyz = mesh.toLocal(sheet).xyz();
      for (int k = 0; k < DIRECTIONS; k++) {
        double c = cos(k);
        double s = sin(k);
        for (int i = 0; i < xyz.length; i += 3) {
          double t = c * xyz[i] + s * xyz[i + 1];
          low[k] = Math.min(low[k], t);
          high[k] = Math.max(high[k], t);
        }
      }
      return new Outline(low, high);
    }

    private static double cos(int k) {
      return StrictMath.cos(Math.PI * k / DIRECTIONS);
    }

    private static double sin(int k) {
      return StrictMath.sin(Math.PI * k / DIRECTIONS);
    }

    Outline moved(Vec3 way, double distance) {
      double[] lo = low.clone();
      double[] hi = high.clone();
      for (int k = 0; k < DIRECTIONS; k++) {
        double t = (cos(k) * way.x() + sin(k) * way.y()) * distance;
        lo[k] += t;
        hi[k] += t;
      }
      return new Outline(lo, hi);
    }

    boolean meetsAny(List<Outline> others) {
      return others.stream().anyMatch(this::meets);
    }

    private boolean meets(Outline o) {
      for (int k = 0; k < DIRECTIONS; k++) {
        if (low[k] > o.high[k] || high[k] < o.low[k]) {
          return false;
        }
      }
      return true;
    }
  }
}
