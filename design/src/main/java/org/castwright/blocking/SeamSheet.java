package org.castwright.blocking;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The height at which the two pieces are to meet over each place of a grid: between the body's
 * lowest and highest point there wherever a sheet that is not too steep can be, else half way
 * between what its neighbors ask for; as even as that leaves it (an obstacle problem, by
 * over-relaxation with projection: Glowinski, Numerical Methods for Nonlinear Variational Problems,
 * 1984). Within the body it may jump: only outside do pieces meet.
 */
final class SeamSheet {

  private static final int ROUNDS = 400;
  private static final float OVER = 1.7f;

  /** How firmly the sheet outside holds to the one within. */
  private static final float LOOSE = 0.02f;

  private final float[] lo;
  private final float[] s;
  private final float[] least;
  private final float[] most;
  private final int nx;

  private SeamSheet(float[] lo, float[] hi, int nx, double rise) {
    this.lo = lo;
    this.nx = nx;
    least = new float[lo.length];
    most = new float[lo.length];
    double sum = 0;
    int n = 0;
    for (int o = 0; o < lo.length; o++) {
      boolean none = Float.isNaN(lo[o]);
      least[o] = none ? Float.NEGATIVE_INFINITY : lo[o];
      most[o] = none ? Float.POSITIVE_INFINITY : hi[o];
      boolean rim = !none && fringe(o);
      sum += rim ? (lo[o] + hi[o]) / 2 : 0;
      n += rim ? 1 : 0;
    }
    Cone.upper(least, hi, nx, rise);
    Cone.lower(most, lo, nx, rise);
    s = new float[lo.length];
    Arrays.fill(s, (float) (sum / Math.max(1, n)));
    for (int o = 0; o < s.length; o++) {
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
   * @param lo lowest point of the body over each place, not a number where there is none
   * @param hi highest point, likewise
   * @param rise steepest along one step of the grid, mm
   */
  static float[] of(float[] lo, float[] hi, int nx, double rise) {
    SeamSheet sheet = new SeamSheet(lo, hi, nx, rise);
    int ny = lo.length / nx;
    for (int r = 0; r < ROUNDS; r++) {
      for (int color = 0; color < 2; color++) {
        int c = color;
        IntStream.range(1, ny - 1).parallel().forEach(j -> sheet.relax(j, c));
      }
    }
    return sheet.s;
  }

  /** Whether the body ends beside a place. */
  private boolean fringe(int o) {
    return Float.isNaN(lo[o - 1])
        || Float.isNaN(lo[o + 1])
        || Float.isNaN(lo[o - nx])
        || Float.isNaN(lo[o + nx]);
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
    return Float.isNaN(lo[o]) == Float.isNaN(lo[p]) ? 1 : LOOSE;
  }
}
