package org.castwright.heat;

import java.util.Arrays;

/** The setting of the casting's cells: how far each is, and the heat it gives off on the way. */
final class Reaction {

  private final Voxels voxels;
  private final Kinetics kinetics;
  private final double heatPerM3;
  private final double riseK;
  private final double[] largest;
  private final double[] share;
  private final double[] spare;

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
    this.spare = new double[voxels.kind.length];
    this.largest = new double[voxels.cells.nz()];
  }

  /** The share set of each cell. */
  double[] share() {
    return share;
  }

  /** The share set before the last step. */
  double[] before() {
    return spare;
  }

  /** Remembers where it stands, for {@link #back}. */
  void mark() {
    System.arraycopy(share, 0, spare, 0, share.length);
  }

  void back() {
    System.arraycopy(spare, 0, share, 0, share.length);
  }

  /**
   * Lets the cells react for a while, each for itself.
   *
   * @return the largest rise of temperature in any cell, K
   */
  double run(double[] heat, double[] celsius, double forS, Crew crew) {
    int plane = voxels.cells.nx() * voxels.cells.ny();
    crew.each(
        0,
        voxels.cells.nz(),
        k -> {
          double most = 0;
          for (int c = k * plane; c < (k + 1) * plane; c++) {
            if (voxels.kind[c] == Voxels.CASTING) {
              double a = kinetics.advance(share[c], celsius[c], riseK, forS);
              heat[c] += (a - share[c]) * heatPerM3;
              most = Math.max(most, (a - share[c]) * riseK);
              share[c] = a;
            }
          }
          largest[k] = most;
        });
    return Arrays.stream(largest).max().orElse(0);
  }
}
