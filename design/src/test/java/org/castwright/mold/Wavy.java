package org.castwright.mold;

import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;

/** A disc with a rim that rises and falls: opens along z with a seam that is not flat. */
public final class Wavy {

  private static final int SIDES = 72;
  private static final int RINGS = 8;

  private Wavy() {}

  /**
   * The disc.
   *
   * @param radius of the rim seen from above, mm
   * @param wave how far the rim rises and falls, mm
   */
  public static TriMesh disc(double radius, double wave) {
    MeshBuilder m = new MeshBuilder();
    int top = m.vertex(0, 0, 8);
    int low = m.vertex(0, 0, -8);
    int[][] up = new int[RINGS + 1][SIDES];
    int[][] down = new int[RINGS + 1][SIDES];
    for (int j = 1; j <= RINGS; j++) {
      double s = (double) j / RINGS;
      for (int i = 0; i < SIDES; i++) {
        double a = 2 * Math.PI * i / SIDES;
        double x = radius * s * StrictMath.cos(a);
        double y = radius * s * StrictMath.sin(a);
        double rim = wave * StrictMath.sin(3 * a) * s * s;
        double thick = 8 * (1 - s * s);
        up[j][i] = m.vertex(x, y, rim + thick);
        down[j][i] = j == RINGS ? up[j][i] : m.vertex(x, y, rim - thick);
      }
    }
    for (int i = 0; i < SIDES; i++) {
      int k = (i + 1) % SIDES;
      m.triangle(top, up[1][i], up[1][k]);
      m.triangle(low, down[1][k], down[1][i]);
      for (int j = 1; j < RINGS; j++) {
        m.triangle(up[j][i], up[j + 1][i], up[j + 1][k]);
        m.triangle(up[j][i], up[j + 1][k], up[j][k]);
        m.triangle(down[j][i], down[j + 1][k], down[j + 1][i]);
        m.triangle(down[j][i], down[j][k], down[j + 1][k]);
      }
    }
    return m.build();
  }
}
