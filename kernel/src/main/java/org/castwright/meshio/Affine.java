package org.castwright.meshio;

/**
 * The placing of an object in 3MF: twelve numbers, three rows that a point's coordinates multiply
 * and a fourth that is added (3MF Core Specification 1.4.0, 3.3).
 */
final class Affine {

  static final Affine IDENTITY = new Affine(new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0});

  private static final int SIZE = 12;

  private final double[] m;

  private Affine(double[] m) {
    this.m = m;
  }

  /** The placing written as twelve numbers; null if it is not that. */
  static Affine parse(String text) {
    String[] words = text.trim().split("\\s+", -1);
    if (words.length != SIZE) {
      return null;
    }
    double[] m = new double[SIZE];
    for (int i = 0; i < SIZE; i++) {
      m[i] = XmlNumbers.decimal(words[i]);
      if (!Double.isFinite(m[i])) {
        return null;
      }
    }
    return new Affine(m);
  }

  /** This placing done first, the other one after it. */
  Affine then(Affine o) {
    double[] r = new double[SIZE];
    for (int row = 0; row < 4; row++) {
      for (int k = 0; k < 3; k++) {
        double sum = row == 3 ? o.m[9 + k] : 0;
        for (int j = 0; j < 3; j++) {
          sum += m[3 * row + j] * o.m[3 * j + k];
        }
        r[3 * row + k] = sum;
      }
    }
    return new Affine(r);
  }

  /** Below zero if the placing mirrors, zero if it flattens. */
  double determinant() {
    return m[0] * (m[4] * m[8] - m[5] * m[7])
        - m[1] * (m[3] * m[8] - m[5] * m[6])
        + m[2] * (m[3] * m[7] - m[4] * m[6]);
  }

  /** Writes the placed points to {@code out} from {@code to} on; the identity changes no bit. */
  void apply(double[] xyz, double[] out, int to) {
    if (this == IDENTITY) {
      System.arraycopy(xyz, 0, out, to, xyz.length);
      return;
    }
    for (int i = 0; i < xyz.length; i += 3) {
      double x = xyz[i];
      double y = xyz[i + 1];
      double z = xyz[i + 2];
      for (int k = 0; k < 3; k++) {
        out[to + i + k] = x * m[k] + y * m[3 + k] + z * m[6 + k] + m[9 + k];
      }
    }
  }
}
