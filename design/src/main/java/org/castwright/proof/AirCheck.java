package org.castwright.proof;

import java.util.List;
import org.castwright.fill.Cavity;
import org.castwright.fill.FillLimits;
import org.castwright.fill.Filling;
import org.castwright.fill.Pocket;

/**
 * Whether the cavity fills: a level rises in casting and channels, exactly on their meshes. No
 * pocket of air may stay that would show, and nothing may run out below the casting's top, as
 * through a channel that breaks out of the block's side. Where catches are allowed the seam runs
 * through caught space and takes the channels along: then this is recorded and does not fail.
 */
final class AirCheck {

  /** Air that may stay in one place, share of the casting; common practice, no source. */
  private static final double SHARE = 0.001;

  /** And mm³ that may in any case: a bubble of 3.4 mm; common practice, no source. */
  private static final double LEAST = 20;

  private AirCheck() {}

  static List<ProofCheck> of(ProofInput input) {
    Cavity cavity = Cavity.of(input.casting(), input.channelBody(), input.block());
    Filling f = Filling.of(cavity, input.up(), FillLimits.DEFAULT);
    boolean forgiven = input.limits().allowCaught();
    double limit = Math.max(LEAST, SHARE * input.casting().volume());
    return List.of(air(f, limit, forgiven), mouths(f, forgiven));
  }

  private static ProofCheck air(Filling f, double limit, boolean forgiven) {
    Pocket worst = f.pockets().isEmpty() ? null : f.pockets().get(0);
    double held = worst == null ? 0 : worst.volumeMm3();
    String words =
        worst == null
            ? "Filled level by level no air stays."
            : "Filled level by level air stays at "
                + Say.place(worst.top())
                + ": "
                + Say.number(held)
                + " mm³, "
                + Say.number(worst.depthMm())
                + " mm deep, the largest of "
                + Say.count(f.pockets().size(), "pocket", "pockets")
                + Say.ending(held <= limit, forgiven);
    boolean passed = held <= limit || forgiven;
    return new ProofCheck("filling: air", passed, held, limit, "mm³", words);
  }

  private static ProofCheck mouths(Filling f, boolean forgiven) {
    double below = Math.max(0, f.topMm() - f.mouthMm());
    String words =
        below == 0
            ? "The channels end above the casting."
            : "A channel opens through the outside "
                + Say.number(below)
                + " mm below the highest place of the casting, where the liquid runs out"
                + Say.ending(false, forgiven);
    boolean passed = below == 0 || forgiven;
    return new ProofCheck("filling: mouths above the casting", passed, below, 0, "mm", words);
  }
}
