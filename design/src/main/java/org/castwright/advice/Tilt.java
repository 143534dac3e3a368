package org.castwright.advice;

import java.util.Locale;
import org.castwright.fill.Cavity;
import org.castwright.fill.FillLimits;
import org.castwright.fill.Filling;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.progress.Progress;

/** Looks for a tilt of the same mold in which no air stays. */
final class Tilt {

  /** A mold propped up further than this slides; common practice, no source. */
  private static final int MOST_DEG = 30;

  private static final int STEP_DEG = 5;
  private static final int WAYS = 8;

  private Tilt() {}

  /**
   * A sentence on the least tilt that helps, or that none does.
   *
   * @throws Progress.CancelledException if the person has asked to stop
   */
  static String words(Cavity cavity, Vec3 up, Progress progress) {
    Frame f = Frame.along(up);
    for (int deg = STEP_DEG; deg <= MOST_DEG; deg += STEP_DEG) {
      for (int k = 0; k < WAYS; k++) {
        double a = 2 * Math.PI * k / WAYS;
        double s = StrictMath.sin(Math.toRadians(deg));
        Vec3 side = f.u().times(StrictMath.cos(a)).plus(f.v().times(StrictMath.sin(a)));
        Vec3 way = up.times(StrictMath.cos(Math.toRadians(deg))).plus(side.times(s));
        if (Advisor.airless(Filling.of(cavity, way, FillLimits.DEFAULT, progress))) {
          return String.format(
              Locale.ROOT,
              "Tilted by %d° no air stays and nothing runs out: hold it so that (%.2f, %.2f, %.2f)"
                  + " of the mold frame points up.",
              deg,
              way.x(),
              way.y(),
              way.z());
        }
      }
    }
    return "No tilt of up to " + MOST_DEG + "° lets all air out of these channels.";
  }
}
