package org.castwright.cover;

import java.util.Arrays;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.survey.Lanes;

/** What a set of pulls leaves when seen as sharply as pictures allow: the creases too. */
final class FineLook {

  // the play of a printed and coated mold (common practice, no source); where the model is too
  // large
  // for pictures that fine, as fine as they get
  private static final double WIDTH = 0.05;

  private final Trial trial;

  FineLook(Trial trial) {
    this.trial = trial;
  }

  private Shade shade() {
    return new Shade(trial.mesh(), WIDTH);
  }

  /** The width that can be told, mm. */
  double width() {
    return shade().width();
  }

  Caught left(List<Vec3> pulls) {
    Samples samples = trial.samples();
    Lean lean = new Lean(trial.mesh(), width());
    long[][] free = new long[pulls.size()][];
    Lanes.run(
        free.length,
        trial.threads(),
        this::shade,
        (shade, i) -> free[i] = FreeBits.along(pulls.get(i), samples, shade, lean)[0]);
    int[] list = new int[samples.count()];
    int n = 0;
    for (int s = 0; s < samples.count(); s++) {
      boolean any = false;
      for (long[] f : free) {
        any |= FreeBits.get(f, s);
      }
      if (!any && trial.freeByAny(s)) {
        list[n++] = s;
      }
    }
    return trial.sum(Arrays.copyOf(list, n));
  }
}
