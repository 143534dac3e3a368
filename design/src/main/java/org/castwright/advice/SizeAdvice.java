package org.castwright.advice;

import java.util.List;
import java.util.Locale;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.size.Shrink;
import org.castwright.size.ShrinkChain;
import org.castwright.size.ToleranceClass;

/** The size that comes out of a cavity of the size it has. */
final class SizeAdvice {

  /** Less than this off the wanted size is no reason to scale anew, share. */
  private static final double CLOSE = 0.001;

  private SizeAdvice() {}

  static PourAdvice.Size of(PourJob job, List<String> reasons, List<String> notes) {
    Vec3 wanted = job.sizes().wantedMm();
    Vec3 scale = job.sizes().scale();
    double[] want = {wanted.x(), wanted.y(), wanted.z()};
    double[] factor = {scale.x(), scale.y(), scale.z()};
    double[] expected = new double[3];
    double[] low = new double[3];
    double[] high = new double[3];
    int longest = 0;
    for (int k = 0; k < 3; k++) {
      ShrinkChain.Band b = chain(job, factor[k]).ends(want[k] * factor[k]);
      expected[k] = b.mm();
      low[k] = b.lowMm();
      high[k] = b.highMm();
      longest = want[k] > want[longest] ? k : longest;
    }
    judge(want[longest], expected[longest], low[longest], high[longest], reasons);
    notes.add(
        "Tolerance classes are by analogy only: ISO 8062-3 is for metal castings, DIN 16742 for"
            + " plastics parts from tools.");
    double off =
        Math.max(Math.abs(high[longest] - want[longest]), Math.abs(want[longest] - low[longest]));
    int grade = ToleranceClass.finestIso8062(want[longest], off);
    double din = ToleranceClass.din16742Tg6(want[longest], true);
    return new PourAdvice.Size(
        list(want),
        list(expected),
        list(low),
        list(high),
        grade == 0 ? null : grade,
        Double.isNaN(din) ? null : din);
  }

  /** The maker's own shrink has no band; the table's has. */
  private static ShrinkChain chain(PourJob job, double scale) {
    Material m = job.material();
    if (job.sizes().stated()) {
      return ShrinkChain.of(new Shrink("casting", 100 * (1 - 1 / scale)));
    }
    return ShrinkChain.of(
        new Shrink(
            "casting", m.shrink().percent(), m.shrink().lowPercent(), m.shrink().highPercent()));
  }

  private static void judge(
      double want, double expected, double low, double high, List<String> reasons) {
    double off = expected / want - 1;
    if (Math.abs(off) > CLOSE && (want < low || want > high)) {
      reasons.add(
          String.format(
              Locale.ROOT,
              "The cavity was scaled for another shrink: the longest side would end %.2f %% %s,"
                  + " %.2f mm for %.2f mm.",
              100 * Math.abs(off),
              off > 0 ? "too large" : "too small",
              expected,
              want));
    }
  }

  private static List<Double> list(double[] v) {
    return List.of(Numbers.round(v[0], 4), Numbers.round(v[1], 4), Numbers.round(v[2], 4));
  }
}
