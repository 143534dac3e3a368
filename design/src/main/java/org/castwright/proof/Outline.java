package org.castwright.proof;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * Evenly spaced samples of the convex edges of a body at which its surface turns under, seen along
 * a pull: the edges next to which something that must move along the pull can be caught. Each
 * sample has the direction, across the pull, in which the body lies.
 */
final class Outline {

  private static final int SAMPLES = 6000;
  private static final double CLOSEST = 0.02;

  /**
   * Facets steeper than this (cosine between normal and pull) count as walls: one of 100 mm height
   * hides 0.01 mm, a fifth of the usual lip.
   */
  private static final double WALL = 1e-4;

  private final TriMesh mesh;
  private final double[] xyz;
  private final int[] tri;
  private final double sign;
  private final byte[] facing;
  private double[] samples = new double[5 * 1024];
  private int size;
  private double spacing;

  /**
   * Samples a mesh.
   *
   * @param local closed mesh in a frame along the pull
   * @param sign 1 if the pull is the third axis of the frame, −1 if it is its opposite
   */
  Outline(TriMesh local, double sign) {
    this.mesh = local;
    this.xyz = local.xyz();
    this.tri = local.tri();
    this.sign = sign;
    this.facing = new byte[local.triangleCount()];
    for (int f = 0; f < facing.length; f++) {
      double z = sign * local.areaVector(f).z();
      double wall = WALL * local.areaVector(f).length();
      facing[f] = (byte) (z > wall ? 1 : z < -wall ? -1 : 0);
    }
    collect();
  }

  int size() {
    return size;
  }

  /** Length of edge that one sample stands for, mm. */
  double spacing() {
    return spacing;
  }

  double u(int i) {
    return samples[5 * i];
  }

  double v(int i) {
    return samples[5 * i + 1];
  }

  double w(int i) {
    return samples[5 * i + 2];
  }

  /** The unit direction across the pull towards the body. */
  double inwardU(int i) {
    return samples[5 * i + 3];
  }

  double inwardV(int i) {
    return samples[5 * i + 4];
  }

  private void collect() {
    int[] edges = turningEdges();
    double total = 0;
    for (int h : edges) {
      total += flatLength(h);
    }
    spacing = Math.max(CLOSEST, total / SAMPLES);
    double next = spacing / 2;
    for (int h : edges) {
      double length = flatLength(h);
      while (next < length) {
        sample(h, next / length, length);
        next += spacing;
      }
      next -= length;
    }
  }

  private void sample(int h, double t, double length) {
    int p = 3 * tri[h];
    int q = 3 * tri[next(h)];
    double du = xyz[q] - xyz[p];
    double dv = xyz[q + 1] - xyz[p + 1];
    if (5 * size == samples.length) {
      samples = Arrays.copyOf(samples, 2 * samples.length);
    }
    int s = 5 * size++;
    samples[s] = xyz[p] + t * du;
    samples[s + 1] = xyz[p + 1] + t * dv;
    samples[s + 2] = xyz[p + 2] + t * (xyz[q + 2] - xyz[p + 2]);
    samples[s + 3] = sign * dv / length;
    samples[s + 4] = -sign * du / length;
  }

  private double flatLength(int h) {
    int p = 3 * tri[h];
    int q = 3 * tri[next(h)];
    return Math.hypot(xyz[q] - xyz[p], xyz[q + 1] - xyz[p + 1]);
  }

  /** Half-edges of facets that face against the pull whose neighbor does not, if convex. */
  private int[] turningEdges() {
    int[] at = new int[tri.length];
    EdgeTable table = new EdgeTable(tri);
    int n = 0;
    for (int h = 0; h < tri.length; h++) {
      int other = table.opposite(h);
      if (facing[h / 3] < 0 && other >= 0 && facing[other / 3] >= 0 && convex(h, other)) {
        at[n++] = h;
      }
    }
    return Arrays.copyOf(at, n);
  }

  private boolean convex(int h, int other) {
    int apex = 3 * tri[next(next(other))];
    int p = 3 * tri[h];
    var normal = mesh.areaVector(h / 3);
    return normal.x() * (xyz[apex] - xyz[p])
            + normal.y() * (xyz[apex + 1] - xyz[p + 1])
            + normal.z() * (xyz[apex + 2] - xyz[p + 2])
        < 0;
  }

  static int next(int h) {
    return h % 3 == 2 ? h - 2 : h + 1;
  }
}
