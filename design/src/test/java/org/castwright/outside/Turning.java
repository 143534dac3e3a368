package org.castwright.outside;

import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;

/** Rings turned about the z axis, and what facets take from the volume of a turned body. */
final class Turning {

  private Turning() {}

  /**
   * A ring with any cross-section: the polygon {@code r, z, r, z, ...}, counter-clockwise with r to
   * the right and z up, turned about the z axis in {@code sides} steps.
   */
  static TriMesh ring(double[] section, int sides) {
    int n = section.length / 2;
    MeshBuilder m = new MeshBuilder();
    for (int i = 0; i < sides; i++) {
      double a = 2 * Math.PI * i / sides;
      for (int j = 0; j < n; j++) {
        double r = section[2 * j];
        m.vertex(r * StrictMath.cos(a), r * StrictMath.sin(a), section[2 * j + 1]);
      }
    }
    for (int i = 0; i < sides; i++) {
      for (int j = 0; j < n; j++) {
        int a = i * n + j;
        int b = (i + 1) % sides * n + j;
        int c = (i + 1) % sides * n + (j + 1) % n;
        int d = i * n + (j + 1) % n;
        m.triangle(a, b, c);
        m.triangle(a, c, d);
      }
    }
    return m.build();
  }

  /**
   * Area of a regular polygon over the area of the circle round it: {@code n sin(2π/n) / 2π}. Every
   * slice across the axis of a body turned in n steps is smaller by just this, so its volume is
   * too.
   */
  static double polygonShare(int n) {
    return n / (2 * Math.PI) * Math.sin(2 * Math.PI / n);
  }
}
