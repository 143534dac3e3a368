package org.castwright.heat;

import java.util.Arrays;

/** The setting of the casting's cells: how far each is, and the heat it gives off on the way. */
final class Reaction {

  /** A drift of temperature within a step counts up to here, K: flows in thin cells soon cease. */
  private static final double LARGEST_DRIFT_K = 10;

  private final Voxels voxels;
  private final Kinetics kinetics;
  private final double heatPerM3;
  private final double riseK;
  private final double[] largest;
  private final double[] share;
  private final double[] before;

  /**
   * @param heatPerM3 heat of the whole reaction, J/m³
   * @param riseK how much it warms the casting when none leaves
   */
  Reaction(Voxels voxels, Kinetics kinetics, double heatPerM3, double riseK) {
    this.voxels = voxels;
    this.kinetics = kinetics;
    this.heatPerM3 = heatPerM3;
    this.riseK = riseK;
    this.share = new double[voxels.kind.length];
    this.before = new double[voxels.kind.length];
    this.largest = new double[voxels.cells.nz()];
  }

  /** The share set of each cell. */
  double[] share() {
    return share;
  }

  /** The share set before the last step. */
  double[] before() {
    return before;
  }

  /** Takes the last run back. */
  void back() {
    System.arraycopy(before, 0, share, 0, share.length);
  }

  /**
   * Lets the cells react for a while, each warmed by itself and warmed or cooled by its neighbors
   * as at the start, and leaves the heat they make as the source of the flow over that while. Exact
   * where a cell keeps its heat, and steady where it passes on what it makes.
   *
   * @return the largest rise of temperature that the reaction alone would make, K
   */
  double run(Diffusion diffusion, double forS, Crew crew) {
    System.arraycopy(share, 0, before, 0, share.length);
    int plane = voxels.cells.nx() * voxels.cells.ny();
    double[] celsius = diffusion.celsius();
    double[] source = diffusion.source();
    double perKelvin = heatPerM3 / riseK;
    crew.each(
        1,
        voxels.cells.nz() - 1,
        k -> {
          double most = 0;
          for (int c = k * plane; c < (k + 1) * plane; c++) {
            if (voxels.kind[c] == Voxels.CASTING) {
              double drift = diffusion.flow(c) / perKelvin * forS;
              drift = Math.max(-LARGEST_DRIFT_K, Math.min(LARGEST_DRIFT_K, drift));
              double a = kinetics.advance(before[c], celsius[c], riseK, drift / forS, forS);
              source[c] = (a - before[c]) * heatPerM3 / forS;
              most = Math.max(most, (a - before[c]) * riseK);
              share[c] = a;
            }
          }
          largest[k] = most;
        });
    return Arrays.stream(largest).max().orElse(0);
  }
}
