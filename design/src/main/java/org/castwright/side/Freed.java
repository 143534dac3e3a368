package org.castwright.side;

import java.util.function.IntFunction;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.survey.EndsImage;

/** Which points pulls free, and how many. */
final class Freed {

  private Freed() {}

  /**
   * The points freed along the axis of a picture, and against it: those that nothing stands above,
   * or below, in one of the columns round them.
   *
   * @param frame in which the picture was taken
   * @param n number of points
   * @param reach how many columns to each side are asked
   */
  static boolean[][] bothWays(
      EndsImage image, Frame frame, int n, IntFunction<Vec3> points, int reach) {
    boolean[] up = new boolean[n];
    boolean[] down = new boolean[n];
    double step = image.raster().pixel();
    for (int k = 0; k < n; k++) {
      Vec3 q = frame.toLocal(points.apply(k));
      for (int j = -reach; j <= reach; j++) {
        for (int i = -reach; i <= reach; i++) {
          int c = image.raster().nearest(q.x() + i * step, q.y() + j * step);
          up[k] |= c < 0 || image.high()[c] <= q.z() + step;
          down[k] |= c < 0 || image.low()[c] >= q.z() - step;
        }
      }
    }
    return new boolean[][] {up, down};
  }

  /** How many of the points not done are freed. */
  static int count(boolean[] freed, boolean[] done) {
    int n = 0;
    for (int i = 0; i < freed.length; i++) {
      n += freed[i] && !done[i] ? 1 : 0;
    }
    return n;
  }

  /** Of the first pulls the one that frees most of the points not done; -1 when none frees any. */
  static int best(boolean[][] freed, boolean[] done, int among) {
    int best = -1;
    int most = 0;
    for (int k = 0; k < among; k++) {
      int n = count(freed[k], done);
      if (n > most) {
        most = n;
        best = k;
      }
    }
    return best;
  }
}
