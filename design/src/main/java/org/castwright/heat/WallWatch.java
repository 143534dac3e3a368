package org.castwright.heat;

import java.util.Arrays;
import org.castwright.geom.Vec3;

/**
 * Follows the temperature of the wall's surface where it touches the casting. In the first moments
 * heat has not come as far as the middle of a cell and the grid knows nothing of the surface: there
 * the closed form of two bodies in contact counts.
 */
final class WallWatch {

  private final Voxels voxels;
  private final Conductances conductances;
  private final double limitC;
  private final double settledS;
  private final int[] faces;
  private final float[] peak;

  private double nowC;
  private double peakC;
  private int peakFace = -1;
  private double peakS;
  private double overS = Double.NaN;

  /**
   * @param limitC temperature that the wall must not pass, °C
   * @param contactC temperature of the surface in the moment of contact, °C
   * @param settledS from then on the grid knows the surface, s
   */
  WallWatch(
      Voxels voxels, Conductances conductances, double limitC, double contactC, double settledS) {
    this.voxels = voxels;
    this.conductances = conductances;
    this.limitC = limitC;
    this.settledS = settledS;
    this.nowC = contactC;
    this.peakC = contactC;
    if (contactC > limitC) {
      this.overS = 0;
    }
    int n = 0;
    int[] touching = new int[voxels.faceCell.length];
    for (int q = 0; q < touching.length; q++) {
      if (voxels.kind[low(q)] != Voxels.AIR && voxels.kind[high(q)] != Voxels.AIR) {
        touching[n++] = q;
      }
    }
    faces = Arrays.copyOf(touching, n);
    peak = new float[n];
    Arrays.fill(peak, (float) contactC);
  }

  private int low(int q) {
    return voxels.faceCell[q];
  }

  private int high(int q) {
    return voxels.faceCell[q] + voxels.cells.stride(voxels.faceAxis[q]);
  }

  void look(double timeS, double[] heat, double[] celsius) {
    if (timeS < settledS) {
      return;
    }
    nowC = Double.NEGATIVE_INFINITY;
    int hottest = -1;
    for (int n = 0; n < faces.length; n++) {
      int q = faces[n];
      boolean lowIsWall = voxels.kind[low(q)] != Voxels.CASTING;
      int wall = lowIsWall ? low(q) : high(q);
      int casting = lowIsWall ? high(q) : low(q);
      // the temperature falls in proportion to resistance on the way
      double inWall = conductances.part(heat, q, wall);
      double all = conductances.resistance(heat, q);
      double t = celsius[wall] + (celsius[casting] - celsius[wall]) * inWall / all;
      peak[n] = Math.max(peak[n], (float) t);
      if (t > nowC) {
        nowC = t;
        hottest = q;
      }
    }
    if (nowC > limitC && Double.isNaN(overS)) {
      overS = timeS;
    }
    if (nowC > peakC) {
      peakC = nowC;
      peakFace = hottest;
      peakS = timeS;
    }
  }

  /** The hottest place of the wall's surface at the last look, °C. */
  double nowC() {
    return nowC;
  }

  HeatResult.Wall result(String limit) {
    double area = 0;
    double over = 0;
    for (int n = 0; n < faces.length; n++) {
      int axis = voxels.faceAxis[faces[n]];
      double facing = voxels.faceFacing[faces[n]];
      double a = facing * voxels.cells.volumeMm3() / voxels.cells.edge(axis);
      area += a;
      over += peak[n] > limitC ? a : 0;
    }
    return new HeatResult.Wall(
        peakC,
        peakFace < 0 ? null : HeatResult.Place.of(place(peakFace)),
        peakS,
        limitC,
        limit,
        peakC > limitC,
        Double.isNaN(overS) ? null : overS,
        area > 0 ? over / area : 0);
  }

  private Vec3 place(int q) {
    double way = voxels.faceShare[q];
    return voxels.cells.middle(low(q)).times(1 - way).plus(voxels.cells.middle(high(q)).times(way));
  }
}
