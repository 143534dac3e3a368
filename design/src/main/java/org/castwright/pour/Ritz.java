package org.castwright.pour;

import java.util.function.DoubleBinaryOperator;

/**
 * Bending of a thin rectangular plate by the method of Ritz with polynomials: width 1 along x,
 * {@code ratio} along y, stiffness 1; coordinates given to results run from 0 to 1 on both sides.
 * The energy holds the whole of Kirchhoff's plate, so that free edges are allowed too (Timoshenko
 * and Woinowsky-Krieger, Theory of Plates and Shells, article 82).
 */
final class Ritz {

  /** Functions a side; more change the fifth digit of edge moments only. */
  private static final int TERMS = 11;

  /** Points of Gauss-Legendre quadrature: exact for all products of the functions. */
  private static final int POINTS = 40;

  /** How the two ends of a side are held. */
  enum Ends {
    BOTH_CLAMPED,
    /** Clamped at 0, free at 1. */
    FIRST_CLAMPED
  }

  private final Ends alongX;
  private final Ends alongY;
  private final double ratio;
  private final double poisson;
  private final double[] nodes;
  private final double[] weights;

  Ritz(Ends alongX, Ends alongY, double ratio, double poisson) {
    this.alongX = alongX;
    this.alongY = alongY;
    this.ratio = ratio;
    this.poisson = poisson;
    this.nodes = new double[POINTS];
    this.weights = new double[POINTS];
    gauss();
  }

  /**
   * The bent plate under a pressure, a function of x and y from 0 to 1, the same on both halves of
   * a side that is clamped at both ends.
   */
  Bent under(DoubleBinaryOperator pressure) {
    double[][] x = table(alongX);
    double[][] y = table(alongY);
    double[][][] ix = products(x);
    double[][][] iy = products(y);
    int n = TERMS * TERMS;
    double[][] matrix = new double[n][n + 1];
    double r2 = ratio * ratio;
    for (int a = 0; a < n; a++) {
      int i = a / TERMS;
      int j = a % TERMS;
      for (int b = 0; b < n; b++) {
        int k = b / TERMS;
        int l = b % TERMS;
        // per unit of area: every derivative along y carries 1/ratio
        matrix[a][b] =
            ix[22][i][k] * iy[0][j][l]
                + ix[0][i][k] * iy[22][j][l] / (r2 * r2)
                + poisson * (ix[20][i][k] * iy[2][j][l] + ix[2][i][k] * iy[20][j][l]) / r2
                + 2 * (1 - poisson) * ix[11][i][k] * iy[11][j][l] / r2;
      }
      double load = 0;
      for (int p = 0; p < POINTS; p++) {
        for (int q = 0; q < POINTS; q++) {
          load +=
              weights[p]
                  * weights[q]
                  * pressure.applyAsDouble(nodes[p], nodes[q])
                  * x[i][3 * p]
                  * y[j][3 * q];
        }
      }
      matrix[a][n] = load;
    }
    return new Bent(solve(matrix));
  }

  /** Values, first and second derivatives of the functions at the nodes. */
  private double[][] table(Ends ends) {
    double[][] out = new double[TERMS][3 * POINTS];
    for (int i = 0; i < TERMS; i++) {
      for (int p = 0; p < POINTS; p++) {
        System.arraycopy(function(ends, i, nodes[p]), 0, out[i], 3 * p, 3);
      }
    }
    return out;
  }

  /** Integrals of products of derivatives; index {@code 10·order + order}. */
  private double[][][] products(double[][] f) {
    double[][][] out = new double[23][][];
    for (int[] d : new int[][] {{0, 0}, {1, 1}, {2, 2}, {2, 0}, {0, 2}}) {
      double[][] m = new double[TERMS][TERMS];
      for (int i = 0; i < TERMS; i++) {
        for (int k = 0; k < TERMS; k++) {
          for (int p = 0; p < POINTS; p++) {
            m[i][k] += weights[p] * f[i][3 * p + d[0]] * f[k][3 * p + d[1]];
          }
        }
      }
      out[10 * d[0] + d[1]] = m;
    }
    return out;
  }

  /** Value and two derivatives of a function that meets the clamped ends, at {@code t}. */
  private static double[] function(Ends ends, int order, double t) {
    double[] p = legendre(ends == Ends.BOTH_CLAMPED ? 2 * order : order, 2 * t - 1);
    // the hold: t²(1−t)² or t²
    double h = ends == Ends.BOTH_CLAMPED ? t * t * (1 - t) * (1 - t) : t * t;
    double h1 = ends == Ends.BOTH_CLAMPED ? 2 * t * (1 - t) * (1 - 2 * t) : 2 * t;
    double h2 = ends == Ends.BOTH_CLAMPED ? 2 - 12 * t + 12 * t * t : 2;
    double p1 = 2 * p[1];
    double p2 = 4 * p[2];
    return new double[] {h * p[0], h1 * p[0] + h * p1, h2 * p[0] + 2 * h1 * p1 + h * p2};
  }

  /** Legendre polynomial with two derivatives, by the usual recurrences. */
  private static double[] legendre(int n, double x) {
    double[] before = {0, 0, 0};
    double[] now = {1, 0, 0};
    for (int k = 0; k < n; k++) {
      double a = (2.0 * k + 1) / (k + 1);
      double b = (double) k / (k + 1);
      double[] next = {
        a * x * now[0] - b * before[0],
        a * (now[0] + x * now[1]) - b * before[1],
        a * (2 * now[1] + x * now[2]) - b * before[2]
      };
      before = now;
      now = next;
    }
    return now;
  }

  /** Nodes and weights on 0 to 1, by Newton's method on the Legendre polynomial. */
  private void gauss() {
    for (int i = 0; i < POINTS; i++) {
      double x = Math.cos(Math.PI * (i + 0.75) / (POINTS + 0.5));
      for (int step = 0; step < 12; step++) {
        double[] p = legendre(POINTS, x);
        x -= p[0] / p[1];
      }
      double slope = legendre(POINTS, x)[1];
      nodes[i] = (1 + x) / 2;
      weights[i] = 1 / ((1 - x * x) * slope * slope);
    }
  }

  /** Gauss elimination with pivots of a system with its right side in the last column. */
  private static double[] solve(double[][] m) {
    int n = m.length;
    for (int c = 0; c < n; c++) {
      int pivot = c;
      for (int r = c + 1; r < n; r++) {
        if (Math.abs(m[r][c]) > Math.abs(m[pivot][c])) {
          pivot = r;
        }
      }
      double[] swap = m[c];
      m[c] = m[pivot];
      m[pivot] = swap;
      for (int r = c + 1; r < n; r++) {
        double f = m[r][c] / m[c][c];
        for (int k = c; k <= n; k++) {
          m[r][k] -= f * m[c][k];
        }
      }
    }
    double[] out = new double[n];
    for (int r = n - 1; r >= 0; r--) {
      double sum = m[r][n];
      for (int k = r + 1; k < n; k++) {
        sum -= m[r][k] * out[k];
      }
      out[r] = sum / m[r][r];
    }
    return out;
  }

  /** The shape found, for a pressure of 1, a width of 1 and a stiffness of 1. */
  final class Bent {
    private final double[] share;

    private Bent(double[] share) {
      this.share = share;
    }

    double deflection(double x, double y) {
      return sum(x, y, 0, 0);
    }

    /** Moment that bends strips along x, positive when it stretches the far side. */
    double momentX(double x, double y) {
      return -(sum(x, y, 2, 0) + poisson * sum(x, y, 0, 2) / (ratio * ratio));
    }

    double momentY(double x, double y) {
      return -(sum(x, y, 0, 2) / (ratio * ratio) + poisson * sum(x, y, 2, 0));
    }

    private double sum(double x, double y, int dx, int dy) {
      double out = 0;
      for (int i = 0; i < TERMS; i++) {
        double fx = function(alongX, i, x)[dx];
        for (int j = 0; j < TERMS; j++) {
          out += share[i * TERMS + j] * fx * function(alongY, j, y)[dy];
        }
      }
      return out;
    }
  }
}
