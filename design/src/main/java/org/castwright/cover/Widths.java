package org.castwright.cover;

import java.util.Arrays;
import java.util.List;
import org.castwright.geom.Vec3;

/**
 * How wide catches are: the window of the pictures is widened column by column; the width at a
 * sample is how far the widest window reaches in which it is still caught along every pull, that is
 * how far it would have to move sideways to be free of one.
 */
final class Widths {

  // 64 columns of a quarter of a millimeter: wider catches are simply wide
  private static final int MOST_STEPS = 64;

  private Widths() {}

  /**
   * The width at each sample of a list, mm; the samples must be caught along all the pulls.
   *
   * @param list the samples
   * @param pulls unit vectors
   */
  static double[] of(Samples samples, int[] list, List<Vec3> pulls, Shade shade) {
    int[] steps = new int[list.length];
    Arrays.fill(steps, MOST_STEPS);
    for (Vec3 pull : pulls) {
      shade.look(pull);
      along(samples, list, shade, steps);
    }
    double[] out = new double[list.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = pulls.isEmpty() ? 0 : shade.width() + steps[i] * shade.pixel();
    }
    return out;
  }

  private static void along(Samples samples, int[] list, Shade shade, int[] steps) {
    boolean any = true;
    for (int step = 1; step <= MOST_STEPS && any; step++) {
      shade.widen();
      any = false;
      for (int i = 0; i < list.length; i++) {
        if (steps[i] >= step) {
          double x = samples.x(list[i]);
          double y = samples.y(list[i]);
          double z = samples.z(list[i]);
          int column = shade.column(x, y, z);
          if (column < 0 || !shade.caughtUp(column, shade.height(x, y, z))) {
            steps[i] = step - 1;
          }
          any |= steps[i] > step;
        }
      }
    }
  }

  /** The greatest of some widths, 0 for none. */
  static double most(double[] widths) {
    return Arrays.stream(widths).max().orElse(0);
  }
}
