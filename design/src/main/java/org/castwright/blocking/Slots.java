package org.castwright.blocking;

import java.util.stream.IntStream;

/**
 * Narrow slots of a surface over a grid and narrow ridges: what neither a disk nor a cone that is
 * pushed down from above or up from below can fill (closing and opening: J. Serra, Image Analysis
 * and Mathematical Morphology, 1982). The disk reaches into the foot of an upright wall, the cone
 * into an open crease. What both cut off corners grows back (reconstruction: L. Vincent, IEEE
 * Transactions on Image Processing 2, 1993).
 */
final class Slots {

  /** How far cut corners grow back, places of the grid. */
  private static final int REGROWN = 2;

  private final int nx;
  private final float[][] cone;
  private final float[][] disk;

  /**
   * @param nx places in a row
   * @param radius of disk and cone, in places of the grid
   * @param fall of the cone along one step of the grid
   */
  Slots(int nx, double radius, double fall) {
    this.nx = nx;
    cone = probe(radius, fall);
    disk = probe(radius, 0);
  }

  /** How far a probe lies behind its tip: by rows from its middle, and by places of a row. */
  private static float[][] probe(double radius, double fall) {
    float[][] behind = new float[(int) radius + 1][];
    for (int j = 0; j < behind.length; j++) {
      behind[j] = new float[(int) Math.sqrt(radius * radius - j * j) + 1];
      for (int i = 0; i < behind[j].length; i++) {
        behind[j][i] = (float) (fall * Math.sqrt(i * i + j * j));
      }
    }
    return behind;
  }

  /** Heights with slots filled up that are narrower than the probes. */
  float[] filled(float[] v) {
    return without(v, 1);
  }

  /** Heights with ridges cut down that are narrower than the probes. */
  float[] leveled(float[] v) {
    return without(v, -1);
  }

  /** Takes numbers away where few places that have one hang together, by their corners too. */
  void dropSpecks(float[] v, int least) {
    Together some = new Together(nx, v.length, o -> !Float.isNaN(v[o]));
    for (int o = 0; o < v.length; o++) {
      int n = some.gather(o);
      for (int k = 0; k < n && n < least; k++) {
        v[some.places[k]] = Float.NaN;
      }
    }
  }

  /** Without slots (1) or without ridges (-1). */
  private float[] without(float[] v, int sign) {
    float[] out = swept(swept(v, sign, cone), -sign, cone);
    float[] flat = swept(swept(v, sign, disk), -sign, disk);
    for (int o = 0; o < out.length; o++) {
      out[o] = sign * Math.min(sign * out[o], sign * flat[o]);
    }
    for (int k = 0; k < REGROWN; k++) {
      out = regrown(v, out, sign);
    }
    return out;
  }

  /** Draws what was changed toward what it was, as far as neighbors go. */
  private float[] regrown(float[] v, float[] changed, int sign) {
    float[] out = changed.clone();
    for (int o = nx + 1; o + nx + 1 < v.length; o++) {
      float least = sign * changed[o];
      for (int j = -nx; j <= nx; j += nx) {
        for (int p = o + j - 1; p <= o + j + 1; p++) {
          least = Math.min(least, sign * changed[p]);
        }
      }
      out[o] = sign * Math.max(sign * v[o], least);
    }
    return out;
  }

  /** Over each place the highest (1) or lowest (-1) value about it, less what the probe falls. */
  private float[] swept(float[] v, int sign, float[][] probe) {
    float[] out = new float[v.length];
    IntStream.range(0, v.length / nx).parallel().forEach(j -> row(v, sign, probe, j, out));
    return out;
  }

  private void row(float[] v, int sign, float[][] probe, int j, float[] out) {
    int last = Math.min(v.length / nx, j + probe.length) - 1;
    for (int i = 0; i < nx; i++) {
      float best = Float.NEGATIVE_INFINITY;
      for (int k = Math.max(0, j - probe.length + 1); k <= last; k++) {
        float[] fall = probe[Math.abs(k - j)];
        int end = Math.min(nx - 1, i + fall.length - 1);
        for (int p = Math.max(0, i - fall.length + 1); p <= end; p++) {
          best = Math.max(best, sign * v[k * nx + p] - fall[Math.abs(p - i)]);
        }
      }
      out[j * nx + i] = sign * best;
    }
  }
}
