package org.castwright.blocking;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The height at which the two pieces are to meet over each place of a grid: between the bounds the
 * body sets wherever a sheet that is not too steep can be, else half way between what its neighbors
 * ask for; as even as that leaves it (an obstacle problem, by over-relaxation with projection:
 * Glowinski, Numerical Methods for Nonlinear Variational Problems, 1984). Within the body it may
 * jump: only outside do pieces meet.
 */
final class SeamSheet {

  private static final int ROUNDS = 400;
  private static final float OVER = 1.7f;

  /** How firmly the sheet outside holds to the one within. */
  private static final float LOOSE = 0.02f;

  private final SeamBounds bounds;
  private final float[] s;
  private final float[] least;
  private final float[] most;
  private final int nx;

  private SeamSheet(SeamBounds bounds, double rise) {
    this.bounds = bounds;
    nx = bounds.nx;
    int n = bounds.lo.length;
    least = new float[n];
    most = new float[n];
    double sum = 0;
    int rims = 0;
    for (int o = 0; o < n; o++) {
      int p = bounds.land[o];
      least[o] = p < 0 ? Float.NEGATIVE_INFINITY : bounds.lo[p];
      most[o] = p < 0 ? Float.POSITIVE_INFINITY : bounds.hi[p];
      boolean rim = p == o && bounds.fringe(o);
      sum += rim ? (least[o] + most[o]) / 2 : 0;
      rims += rim ? 1 : 0;
    }
    Cone.upper(least, bounds.hi, nx, rise);
    Cone.lower(most, bounds.lo, nx, rise);
    s = new float[n];
    Arrays.fill(s, (float) (sum / Math.max(1, rims)));
    for (int o = 0; o < n; o++) {
      if (least[o] > most[o]) {
        least[o] = (least[o] + most[o]) / 2;
        most[o] = least[o];
      }
      s[o] = held(o, s[o]);
    }
  }

  /**
   * Lays the sheet.
   *
   * @param rise steepest along one step of the grid, mm
   */
  static float[] of(SeamBounds bounds, double rise) {
    SeamSheet sheet = new SeamSheet(bounds, rise);
    int ny = sheet.s.length / sheet.nx;
    for (int r = 0; r < ROUNDS; r++) {
      for (int color = 0; color < 2; color++) {
        int c = color;
        IntStream.range(1, ny - 1).parallel().forEach(j -> sheet.relax(j, c));
      }
    }
    return sheet.s;
  }

  private float held(int o, float v) {
    return Math.max(least[o], Math.min(most[o], v));
  }

  private void relax(int j, int color) {
    for (int i = 1 + (j + color) % 2; i + 1 < nx; i += 2) {
      int o = j * nx + i;
      float a = firm(o, o - 1);
      float b = firm(o, o + 1);
      float c = firm(o, o - nx);
      float d = firm(o, o + nx);
      float even = (a * s[o - 1] + b * s[o + 1] + c * s[o - nx] + d * s[o + nx]) / (a + b + c + d);
      s[o] = held(o, s[o] + OVER * (even - s[o]));
    }
  }

  private float firm(int o, int p) {
    return Float.isNaN(bounds.lo[o]) == Float.isNaN(bounds.lo[p]) ? 1 : LOOSE;
  }
}
