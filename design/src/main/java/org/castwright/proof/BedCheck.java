package org.castwright.proof;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Whether a piece fits the printer: as its print file stands, or else with another axis upward,
 * turned on the bed in steps of a degree.
 */
final class BedCheck {

  private static final int DEGREES = 90;

  private BedCheck() {}

  /** Judges the piece as printed, then with an axis of the closed mold upward. */
  static ProofCheck of(String piece, TriMesh print, TriMesh mesh, ProofLimits limits) {
    Fit best = fit(print, 2, limits.bed());
    boolean asPrinted = true;
    for (int up = 0; up < 3 && best.share > 1; up++) {
      Fit fit = fit(mesh, up, limits.bed());
      if (fit.share < best.share) {
        best = fit;
        asPrinted = false;
      }
    }
    boolean passed = best.share <= 1;
    String words =
        piece
            + (passed ? " fits the printer " : " is too large for the printer, at best ")
            + (asPrinted ? "as its print file stands" : "otherwise than its print file stands")
            + (best.degrees == 0 ? "" : ", turned by " + best.degrees + "°")
            + ": "
            + Say.number(best.size.x())
            + " × "
            + Say.number(best.size.y())
            + " × "
            + Say.number(best.size.z())
            + " mm.";
    return new ProofCheck("bed: " + piece, passed, best.share, 1, "of the printer's room", words);
  }

  /** The largest share of the room that any of the three sizes takes. */
  private record Fit(double share, int degrees, Vec3 size) {}

  private static Fit fit(TriMesh mesh, int up, Vec3 bed) {
    double[] xyz = mesh.xyz();
    int x = (up + 1) % 3;
    int y = (up + 2) % 3;
    double height = extent(xyz, up, up, 0);
    Fit best = null;
    for (int a = 0; a < DEGREES; a++) {
      double w = extent(xyz, x, y, a);
      double d = extent(xyz, x, y, a + 90);
      Fit straight = share(a, new Vec3(w, d, height), bed);
      Fit crosswise = share(a + 90, new Vec3(d, w, height), bed);
      Fit better = crosswise.share < straight.share ? crosswise : straight;
      if (best == null || better.share < best.share) {
        best = better;
      }
      if (best.share <= 1) {
        break;
      }
    }
    return best;
  }

  private static Fit share(int degrees, Vec3 size, Vec3 bed) {
    double s = Math.max(size.x() / bed.x(), Math.max(size.y() / bed.y(), size.z() / bed.z()));
    return new Fit(s, degrees, size);
  }

  private static double extent(double[] xyz, int x, int y, int degrees) {
    double c = StrictMath.cos(Math.toRadians(degrees));
    double s = StrictMath.sin(Math.toRadians(degrees));
    double min = Double.POSITIVE_INFINITY;
    double max = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < xyz.length; i += 3) {
      double t = c * xyz[i + x] + s * xyz[i + y];
      min = Math.min(min, t);
      max = Math.max(max, t);
    }
    return max - min;
  }
}
