package org.castwright.heat;

/**
 * Tells the full skins of a printed wall from the infill between them: skin is what lies nearer to
 * the casting or to the outside than the skin is thick.
 */
final class Skin {

  private Skin() {}

  /** Turns wall cells into infill where no surface is near. */
  static void hollow(Cells cells, byte[] kind, double skinMm) {
    for (int c = 0; c < kind.length; c++) {
      if (kind[c] == Voxels.WALL) {
        kind[c] = Voxels.INFILL;
      }
    }
    int rx = reach(skinMm, cells.dx());
    int ry = reach(skinMm, cells.dy());
    int rz = reach(skinMm, cells.dz());
    for (int c = 0; c < kind.length; c++) {
      boolean wall = kind[c] != Voxels.CASTING && kind[c] != Voxels.AIR;
      if (wall || inner(cells, kind, c)) {
        continue;
      }
      int i = c % cells.nx();
      int j = c / cells.nx() % cells.ny();
      int k = c / (cells.nx() * cells.ny());
      for (int w = Math.max(0, k - rz); w <= Math.min(cells.nz() - 1, k + rz); w++) {
        for (int v = Math.max(0, j - ry); v <= Math.min(cells.ny() - 1, j + ry); v++) {
          for (int u = Math.max(0, i - rx); u <= Math.min(cells.nx() - 1, i + rx); u++) {
            int o = (w * cells.ny() + v) * cells.nx() + u;
            if (kind[o] == Voxels.INFILL && near(cells, u - i, v - j, w - k, skinMm)) {
              kind[o] = Voxels.WALL;
            }
          }
        }
      }
    }
  }

  private static int reach(double skinMm, double edge) {
    return (int) Math.floor(skinMm / edge + 0.5);
  }

  /** Middles are half a cell behind the surface. */
  private static boolean near(Cells cells, int u, int v, int w, double skinMm) {
    double x = u * cells.dx();
    double y = v * cells.dy();
    double z = w * cells.dz();
    double far = skinMm + cells.meanEdgeMm() / 2;
    return x * x + y * y + z * z <= far * far;
  }

  /** Whether no neighbor is wall or infill. */
  private static boolean inner(Cells cells, byte[] kind, int c) {
    for (int axis = 0; axis < 3; axis++) {
      int s = cells.stride(axis);
      boolean above = c + s < kind.length && kind[c + s] >= Voxels.WALL;
      boolean below = c - s >= 0 && kind[c - s] >= Voxels.WALL;
      if (above || below) {
        return false;
      }
    }
    return true;
  }
}
