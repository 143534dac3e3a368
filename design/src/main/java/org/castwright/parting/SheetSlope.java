package org.castwright.parting;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * How steep a sheet is.
 *
 * @param maxDeg steepest triangle, degrees from level; needles are left out
 * @param steepShare share of the area steeper than a limit by more than a degree
 */
record SheetSlope(double maxDeg, double steepShare) {

  /** Triangles narrower than this in plan say nothing of the slope, mm. */
  private static final double NEEDLE_MM = 0.05;

  /** Slopes above the limit by less are rounding of the heights, degrees. */
  private static final double ALLOWED_DEG = 1;

  static double degrees(TriMesh sheet, int f) {
    Vec3 n = sheet.areaVector(f);
    return Math.toDegrees(Math.atan2(Math.hypot(n.x(), n.y()), Math.abs(n.z())));
  }

  /** Of the triangles whose center lies outside the shadow. */
  static SheetSlope of(TriMesh sheet, Columns casting, double limitDeg) {
    double[] v = sheet.xyz();
    int[] t = sheet.tri();
    Column c = new Column();
    double max = 0;
    double steep = 0;
    double all = 0;
    for (int f = 0; f < sheet.triangleCount(); f++) {
      int i = 3 * t[3 * f];
      int j = 3 * t[3 * f + 1];
      int k = 3 * t[3 * f + 2];
      double area = sheet.areaVector(f).length();
      if (width(v, i, j, k) < NEEDLE_MM
          || casting.at((v[i] + v[j] + v[k]) / 3, (v[i + 1] + v[j + 1] + v[k + 1]) / 3, c)) {
        continue;
      }
      double slope = degrees(sheet, f);
      all += area;
      max = Math.max(max, slope);
      steep += slope > limitDeg + ALLOWED_DEG ? area : 0;
    }
    return new SheetSlope(max, all > 0 ? steep / all : 0);
  }

  /** The least height of a triangle in plan, corners at offsets i, j, k. */
  private static double width(double[] v, int i, int j, int k) {
    double ux = v[j] - v[i];
    double uy = v[j + 1] - v[i + 1];
    double wx = v[k] - v[i];
    double wy = v[k + 1] - v[i + 1];
    double longest =
        Math.max(Math.hypot(wx - ux, wy - uy), Math.max(Math.hypot(ux, uy), Math.hypot(wx, wy)));
    return longest > 0 ? Math.abs(ux * wy - uy * wx) / longest : 0;
  }
}
